using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Grading;

/// <summary>A kind of defect and how many beans of it make one full defect; 0.2 where one piece makes five.</summary>
public sealed record DefectKind(string Code, string Name, int Category, decimal BeansPerFullDefect);

/// <summary>A class of a scheme: the most full defects and quakers that it allows; what is null is not limited.</summary>
public sealed record QualityClass(
    string Name, decimal? Category1 = null, decimal? Category2 = null, decimal? Total = null, decimal? QuakersIn100Grams = null);

/// <summary>What a table of the house is called, whose it is, and for which species; null for both.</summary>
public sealed record SchemeHead(string? Name, string? Edition, string? Source, bool? IsRobusta);

/// <summary>
/// A published table of defects in one edition and one revision of the house: the sample weight that its counts refer to, and its
/// classes, the best first and the last without a limit. Schemes are data: as published they stand in
/// <c>defect-schemes.json</c> with their sources, and the house may change them by a revision or add its own.
/// </summary>
/// <param name="Code">The word for the table; its revisions share it.</param>
/// <param name="Edition">Which edition of the table this is; another edition is another scheme.</param>
/// <param name="IsRobusta">For which species it is; null for both.</param>
/// <param name="IsExportMethod">Its total is what the export targets are held against; it has no categories of quality.</param>
/// <param name="Revision">1 as published; each change by the house counts one up.</param>
public sealed record DefectScheme(
    string Code,
    string Name,
    string Edition,
    string Source,
    decimal SampleGrams,
    IReadOnlyList<DefectKind> Kinds,
    IReadOnlyList<QualityClass> Classes,
    bool? IsRobusta = null,
    bool IsExportMethod = false,
    int Revision = 1)
{
    private const char Parting = '.';

    private static readonly JsonSerializerOptions Reading = new(JsonSerializerDefaults.Web);

    /// <summary>As published, without the revisions of the house.</summary>
    public static IReadOnlyList<DefectScheme> Published { get; } = Read();

    /// <summary>Washed arabica defect poster 2018 and handbook revised 2013; handbook quality.md section 2.1.</summary>
    public static DefectScheme WashedArabica { get; } = Published.Single(scheme => scheme.Code == "washed-arabica-2018");

    /// <summary>What a grade keeps of the scheme that it was counted by: the code, and the revision where the house made one.</summary>
    public string Key => Revision == 1 ? Code : string.Create(CultureInfo.InvariantCulture, $"{Code}{Parting}{Revision}");

    /// <summary>The house added it; it is not one of those that come with the ledger.</summary>
    [JsonIgnore]
    public bool IsOfHouse => PublishedOf(Code) is null;

    /// <summary>With its revision where the house made one.</summary>
    [JsonIgnore]
    public string Title => Revision == 1 ? Name : $"{Name}, revision {Revision}";

    /// <summary>The code of the table that a key belongs to, whatever the revision; null of null.</summary>
    public static string? TableOf(string? key) => key?.Split(Parting)[0];

    /// <summary>The table of a key as it was published; null for a table that is not here.</summary>
    public static DefectScheme? PublishedOf(string? key) => Published.FirstOrDefault(scheme => scheme.Code == TableOf(key));

    /// <summary>A table of the house, in its first revision. Its kinds keep the codes of the table that it is made from; new ones get theirs from their names.</summary>
    /// <param name="head">What it is called, whose it is and for which species.</param>
    /// <param name="from">The table that it is made from; null for one from nothing.</param>
    /// <param name="sampleGrams">Weight that its counts refer to.</param>
    /// <param name="kinds">With how many beans of each make one full defect.</param>
    /// <param name="classes">The best first.</param>
    /// <param name="others">Every table that there is, whose names and codes are taken.</param>
    /// <exception cref="RuleBrokenException">Something is missing, stands twice or contradicts itself, or the name is taken.</exception>
    public static DefectScheme Add(
        SchemeHead head, DefectScheme? from, decimal sampleGrams, IReadOnlyList<DefectKind> kinds, IReadOnlyList<QualityClass> classes, IReadOnlyCollection<DefectScheme> others)
    {
        ArgumentNullException.ThrowIfNull(head);
        ArgumentNullException.ThrowIfNull(others);
        var name = Rule.Text(head.Name, "The name of the table", 80, nameof(Name));
        Rule.Require(others.All(other => !other.Name.Equals(name, StringComparison.OrdinalIgnoreCase)), $"There is a table called '{name}' already: change that one, or choose another name.", nameof(Name));
        var taken = others.Select(other => other.Code).ToHashSet(StringComparer.Ordinal);
        var empty = new DefectScheme(
            CodeOf(name, "table", taken),
            name,
            Rule.OptionalText(head.Edition, "The edition", 80, nameof(Edition)) ?? "of this house",
            Rule.OptionalText(head.Source, "The source", 200, nameof(Source)) ?? "this house",
            0m,
            from?.Kinds ?? [],
            [],
            head.IsRobusta,
            Revision: 0);
        return empty.Revise(sampleGrams, kinds, classes);
    }

    /// <summary>The same table with other numbers, kinds or classes: what was counted by an earlier revision keeps that.</summary>
    /// <exception cref="RuleBrokenException">Something is missing, stands twice or contradicts itself.</exception>
    public DefectScheme Revise(decimal sampleGrams, IReadOnlyList<DefectKind> kinds, IReadOnlyList<QualityClass> classes)
    {
        ArgumentNullException.ThrowIfNull(kinds);
        ArgumentNullException.ThrowIfNull(classes);
        Rule.Require(sampleGrams is >= 50m and <= 2000m, "Counts refer to between 50 and 2,000 g of green coffee.", nameof(SampleGrams));
        Rule.Require(kinds.All(kind => kind is not null), "A line of the defects is empty: leave it out.", nameof(Kinds));
        Rule.Require(kinds.Count > 0, "A defect table needs at least one kind of defect.", nameof(Kinds));
        Rule.Require(kinds.All(kind => kind.Category is 1 or 2), "A defect belongs to category 1 or 2.", nameof(Kinds));
        var odd = kinds.FirstOrDefault(kind => kind.BeansPerFullDefect is < 0.01m or > 100m);
        Rule.Require(odd is null, $"{odd?.Name}: between 0.01 and 100 beans make one full defect.", nameof(Kinds));
        RequireOnce([.. kinds.Select(kind => kind.Name)], "defect", nameof(Kinds));
        RequireOnce([.. kinds.Select(kind => kind.Code).Where(code => code.Length > 0)], "code", nameof(Kinds));
        var strange = kinds.FirstOrDefault(kind => kind.Code.Length > 0 && Kinds.All(known => known.Code != kind.Code));
        Rule.Require(strange is null, $"The table has no defect with the code '{strange?.Code}': leave the code of a new one empty.", nameof(Kinds));
        RequireClasses(classes);
        return this with { SampleGrams = sampleGrams, Kinds = [.. Coded(kinds)], Classes = [.. classes], Revision = Revision + 1 };
    }

    private static void RequireClasses(IReadOnlyList<QualityClass> classes)
    {
        Rule.Require(classes.All(one => one is not null), "A line of the classes is empty: leave it out.", nameof(Classes));
        Rule.Require(classes.Count > 0, "A defect table needs at least one class.", nameof(Classes));
        RequireOnce([.. classes.Select(one => one.Name)], "class", nameof(Classes));
        Rule.Require(
            classes.All(one => new[] { one.Category1, one.Category2, one.Total, one.QuakersIn100Grams }.All(most => most is null or (>= 0m and <= 10_000m))),
            "What a class allows lies between 0 and 10,000.", nameof(Classes));
        Rule.Require(
            classes[^1] == new QualityClass(classes[^1].Name), $"The last class, {classes[^1].Name}, takes whatever the others do not: leave its limits empty.", nameof(Classes));
    }

    private static void RequireOnce(IReadOnlyList<string> names, string what, string field)
    {
        Rule.Require(names.All(name => !string.IsNullOrWhiteSpace(name) && name.Length <= 80), $"Name each {what} in at most 80 letters.", field);
        var twice = names.GroupBy(name => name.Trim(), StringComparer.OrdinalIgnoreCase).FirstOrDefault(name => name.Count() > 1);
        Rule.Require(twice is null, $"The {what} '{twice?.Key}' stands there twice.", field);
    }

    /// <summary>A kind that is new gets a code from its name; one that was there keeps its code under any name.</summary>
    private static IEnumerable<DefectKind> Coded(IReadOnlyList<DefectKind> kinds)
    {
        var taken = kinds.Where(kind => kind.Code.Length > 0).Select(kind => kind.Code).ToHashSet(StringComparer.Ordinal);
        foreach (var kind in kinds)
        {
            var code = kind.Code;
            if (code.Length == 0)
            {
                code = CodeOf(kind.Name, "defect", taken);
            }

            yield return kind with { Code = code, Name = kind.Name.Trim() };
        }
    }

    /// <summary>The name as a code that nothing else has; it counts as taken from then on.</summary>
    private static string CodeOf(string name, string otherwise, HashSet<string> taken)
    {
        var plain = SearchText.Of(name).Replace(' ', '-').Replace(Parting, '-');
        plain = plain.Length == 0 ? otherwise : plain[..Math.Min(36, plain.Length)];
        return Enumerable.Range(1, taken.Count + 1).Select(number => number == 1 ? plain : FormattableString.Invariant($"{plain}-{number}")).First(taken.Add);
    }

    private static List<DefectScheme> Read()
    {
        using var file = typeof(DefectScheme).Assembly.GetManifestResourceStream("defect-schemes.json")
            ?? throw new InvalidOperationException("The defect schemes are not in this program.");
        return JsonSerializer.Deserialize<List<DefectScheme>>(file, Reading)!;
    }
}
