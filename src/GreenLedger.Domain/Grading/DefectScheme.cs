namespace GreenLedger.Domain.Grading;

/// <summary>A kind of defect and how many beans of it make one full defect.</summary>
public sealed record DefectKind(string Code, string Name, int Category, int BeansPerFullDefect);

/// <summary>A published table of defects, with the sample weight that its counts refer to.</summary>
public sealed record DefectScheme(string Code, string Name, decimal SampleGrams, IReadOnlyList<DefectKind> Kinds)
{
    /// <summary>Washed arabica defect poster 2018 and handbook revised 2013; handbook quality.md section 2.1.</summary>
    public static DefectScheme WashedArabica { get; } = new(
        "washed-arabica-2018",
        "Washed arabica, two categories (2018)",
        350m,
        [
            new("full-black", "Full black", 1, 1),
            new("full-sour", "Full sour", 1, 1),
            new("dried-cherry", "Dried cherry or pod", 1, 1),
            new("fungus", "Fungus damaged", 1, 1),
            new("foreign-matter", "Foreign matter", 1, 1),
            new("severe-insect", "Severe insect damage (3 holes or more)", 1, 5),
            new("partial-black", "Partial black", 2, 3),
            new("partial-sour", "Partial sour", 2, 3),
            new("parchment", "Parchment", 2, 5),
            new("floater", "Floater", 2, 5),
            new("immature", "Immature or unripe", 2, 5),
            new("withered", "Withered", 2, 5),
            new("shell", "Shell", 2, 5),
            new("broken", "Broken, chipped or cut", 2, 5),
            new("hull", "Hull or husk", 2, 5),
            new("slight-insect", "Slight insect damage (under 3 holes)", 2, 10),
        ]);

    public static IReadOnlyList<DefectScheme> Published { get; } = [WashedArabica];

    public static DefectScheme? Find(string? code) => Published.FirstOrDefault(scheme => scheme.Code == code);
}
