using System.Text.Json;

namespace GreenLedger.Domain.Grading;

/// <summary>A kind of defect and how many beans of it make one full defect; 0.2 where one piece makes five.</summary>
public sealed record DefectKind(string Code, string Name, int Category, decimal BeansPerFullDefect);

/// <summary>A class of a scheme: the most full defects and quakers that it allows; what is null is not limited.</summary>
public sealed record QualityClass(
    string Name, decimal? Category1 = null, decimal? Category2 = null, decimal? Total = null, decimal? QuakersIn100Grams = null);

/// <summary>
/// A published table of defects in one edition: the sample weight that its counts refer to, and its classes, the best
/// first and the last without a limit. Schemes are data: they stand in <c>defect-schemes.json</c> with their sources.
/// </summary>
/// <param name="Edition">Which edition of the table this is; another edition is another scheme.</param>
/// <param name="IsRobusta">For which species it is; null for both.</param>
/// <param name="IsExportMethod">Its total is what the export targets are held against; it has no categories of quality.</param>
public sealed record DefectScheme(
    string Code,
    string Name,
    string Edition,
    string Source,
    decimal SampleGrams,
    IReadOnlyList<DefectKind> Kinds,
    IReadOnlyList<QualityClass> Classes,
    bool? IsRobusta = null,
    bool IsExportMethod = false)
{
    private static readonly JsonSerializerOptions Reading = new(JsonSerializerDefaults.Web);

    public static IReadOnlyList<DefectScheme> Published { get; } = Read();

    /// <summary>Washed arabica defect poster 2018 and handbook revised 2013; handbook quality.md section 2.1.</summary>
    public static DefectScheme WashedArabica { get; } = Find("washed-arabica-2018")!;

    public static DefectScheme? Find(string? code) => Published.FirstOrDefault(scheme => scheme.Code == code);

    /// <summary>The scheme that a coffee of this species is usually counted by.</summary>
    public static DefectScheme For(bool isRobusta) =>
        isRobusta ? Published.First(scheme => scheme.IsRobusta == true) : WashedArabica;

    private static List<DefectScheme> Read()
    {
        using var file = typeof(DefectScheme).Assembly.GetManifestResourceStream("defect-schemes.json")
            ?? throw new InvalidOperationException("The defect schemes are not in this program.");
        return JsonSerializer.Deserialize<List<DefectScheme>>(file, Reading)!;
    }
}
