using System.Globalization;

namespace GreenLedger.Domain.Grading;

/// <summary>One limit held against what was found; <see cref="Passed"/> is null where nothing was measured.</summary>
public sealed record LimitCheck(string Name, string? Found, string Limit, bool? Passed);

/// <summary>
/// Limits for green coffee, published or agreed. A value that was not measured passes nothing and fails nothing, and neither do
/// full defects that were counted by another table than the limits are for.
/// </summary>
/// <param name="Screen">The screen of the least share, where it is not the one that the grade states.</param>
/// <param name="CountedBy">The code of the defect table that the limits on full defects refer to, in whatever revision; null where they name none.</param>
/// <param name="Code">The word for the set; its revisions share it. Empty for limits that a contract or the house sets on arrivals.</param>
/// <param name="IsRobusta">For which species it is.</param>
/// <param name="Revision">1 as published; each change by the house counts one up.</param>
/// <param name="OwnTable">What the table of <paramref name="CountedBy"/> was called when the limits were set, where it is one of the house; null for a published one.</param>
public sealed record PhysicalLimits(
    string Name,
    decimal LowestMoisture,
    decimal HighestMoisture,
    decimal? WaterActivityBelow,
    decimal? Category1,
    decimal? Category2,
    int? Quakers,
    decimal? ExportDefects = null,
    bool NoForeignOdour = false,
    decimal? LeastOnStatedScreen = null,
    int? Screen = null,
    string? CountedBy = null,
    string Code = "",
    bool IsRobusta = false,
    int Revision = 1,
    string? OwnTable = null)
{
    private const int LongestName = 54;

    /// <summary>Washed arabica handbook and poster 2018: handbook quality.md sections 2.1 and 2.3.</summary>
    public static PhysicalLimits WashedSpecialty { get; } = new("Washed specialty (SCA 2018)", 10m, 12m, 0.70m, 0m, 5m, 0, NoForeignOdour: true, LeastOnStatedScreen: 95m, CountedBy: "washed-arabica-2018", Code: "washed-specialty");

    /// <summary>As published on finerobusta.coffee and read in November 2026; moisture of wet-processed robusta.</summary>
    public static PhysicalLimits FineRobusta { get; } = new("Fine robusta", 10m, 12m, null, 0m, 5m, null, NoForeignOdour: true, LeastOnStatedScreen: 95m, CountedBy: "fine-robusta", Code: "fine-robusta", IsRobusta: true);

    /// <summary>
    /// ICO Resolution 420 of 2004: moisture by ISO 6673, defects in 300 g by the New York/Brazil method; handbook
    /// quality.md section 2.4.
    /// </summary>
    public static PhysicalLimits ExportArabica { get; } = new("Export target, arabica (ICO Resolution 420)", 8m, 12.5m, null, null, null, null, 86m, CountedBy: "brazil-2003", Code: "export-arabica");

    /// <summary>The same for robusta, defects by the method of Vietnam or Indonesia, of which no table is here: they are stated.</summary>
    public static PhysicalLimits ExportRobusta { get; } = new("Export target, robusta (ICO Resolution 420)", 8m, 12.5m, null, null, null, null, 150m, CountedBy: "vietnam-or-indonesia", Code: "export-robusta", IsRobusta: true);

    /// <summary>As they come with the ledger, in the order in which they are held against a grade.</summary>
    public static IReadOnlyList<PhysicalLimits> Published { get; } = [WashedSpecialty, FineRobusta, ExportArabica, ExportRobusta];

    /// <summary>With its revision where the house made one.</summary>
    public string Title => Revision == 1 ? Name : $"{Name}, revision {Revision}";

    /// <summary>The name of the table that full defects are to be counted by; null where none is named.</summary>
    public string? Table => CountedBy is null ? null : OwnTable ?? DefectScheme.PublishedOf(CountedBy)?.Name ?? "the method of the exporting country";

    /// <summary>The same set with other figures: grades that were held against an earlier revision keep what it said.</summary>
    /// <exception cref="RuleBrokenException">A figure cannot be.</exception>
    public PhysicalLimits Revise(PhysicalLimits figures)
    {
        ArgumentNullException.ThrowIfNull(figures);
        Rule.Require(figures.LowestMoisture is >= 0m and <= 30m, "Moisture lies between 0 and 30 %.", nameof(LowestMoisture));
        Rule.Require(figures.HighestMoisture > figures.LowestMoisture && figures.HighestMoisture <= 30m, "The highest moisture lies above the lowest and at most at 30 %.", nameof(HighestMoisture));
        Rule.Require(figures.WaterActivityBelow is null or (> 0m and <= 1m), "Water activity lies above 0 and at most at 1.", nameof(WaterActivityBelow));
        Counts(figures.Category1, nameof(Category1));
        Counts(figures.Category2, nameof(Category2));
        Counts(figures.ExportDefects, nameof(ExportDefects));
        Counts(figures.Quakers, nameof(Quakers));
        Rule.Require(figures.LeastOnStatedScreen is null or (> 0m and <= 100m), "The share lies above 0 and at most at 100 %.", nameof(LeastOnStatedScreen));
        Rule.Require(figures.CountedBy is null || figures.CountedBy == CountedBy || figures.OwnTable is not null || DefectScheme.PublishedOf(figures.CountedBy) is not null, $"There is no defect table '{figures.CountedBy}' here.", nameof(CountedBy));
        return figures with { Name = Name, Code = Code, IsRobusta = IsRobusta, Screen = Screen, CountedBy = DefectScheme.TableOf(figures.CountedBy), Revision = Revision + 1 };

        static void Counts(decimal? most, string field) => Rule.Require(most is null or (>= 0m and <= 1000m), "What is counted lies between 0 and 1,000.", field);
    }

    /// <summary>Each limit of the set against the grade, in the order in which a grader works.</summary>
    public IEnumerable<LimitCheck> Check(GreenGrade grade)
    {
        ArgumentNullException.ThrowIfNull(grade);
        var moisture = grade.Moisture?.Points;
        yield return new LimitCheck("Moisture", grade.Moisture?.ToString(), $"{Text(LowestMoisture)} to {Text(HighestMoisture)} %", moisture is null ? null : moisture >= LowestMoisture && moisture <= HighestMoisture);
        if (WaterActivityBelow is { } below)
        {
            yield return new LimitCheck("Water activity", grade.WaterActivity?.ToString(), $"below {below.ToString("0.00", CultureInfo.InvariantCulture)}", grade.WaterActivity is { } activity ? activity.Ratio < below : null);
        }

        if (Category1 is { } first)
        {
            yield return Counted("Category 1 full defects", grade.Category1, first, OtherTable(grade, isExport: false));
        }

        if (Category2 is { } second)
        {
            yield return Counted("Category 2 full defects", grade.Category2, second, OtherTable(grade, isExport: false));
        }

        if (ExportDefects is { } defects)
        {
            yield return Counted("Defects in 300 g", grade.ExportDefects, defects, OtherTable(grade, isExport: true));
        }

        if (Quakers is { } quakers)
        {
            yield return new LimitCheck("Quakers in 100 g roasted", grade.QuakersIn100Grams is { } shown ? Text(shown) : null, quakers == 0 ? "none" : $"at most {quakers}", grade.QuakersIn100Grams is { } found ? found <= quakers : null);
        }

        if (NoForeignOdour)
        {
            yield return new LimitCheck("Odour", grade.HasForeignOdour switch { true => grade.Odour ?? "foreign", false => grade.Odour ?? "clean", null => null }, "none but of coffee", !grade.HasForeignOdour);
        }

        if (LeastOnStatedScreen is { } least && (Screen ?? grade.StatedScreen) is { } stated)
        {
            var retained = grade.RetainedFrom(stated)?.Points;
            yield return new LimitCheck($"Screen {stated} and above", retained is { } share ? Text(share) + " %" : null, $"at least {Text(least)} %", retained is null ? null : retained >= least);
        }
    }

    private LimitCheck Counted(string name, FullDefects? found, decimal most, string? by)
    {
        // A published set is known by its own name; what a contract agrees on names the table beside the figure.
        var limit = (most == 0m ? "none" : $"at most {Text(most)}") + (Code.Length == 0 && CountedBy is not null ? $" by {Table}" : "");
        return by is null
            ? new LimitCheck(name, found?.ToString(), limit, found is { } full ? full.Count <= most : null)
            : new LimitCheck(name, found is null ? $"counted by {by}" : $"{found} by {by}", $"{limit}; not comparable, grade again by {Short(Table)}", null);
    }

    /// <summary>A name as long as a published table's: the sentence is kept with the grade, which has room for that.</summary>
    private static string? Short(string? name) => name is { Length: > LongestName } ? name[..(LongestName - 1)] + "…" : name;

    /// <summary>The other table that was counted by; null where it is the one of these limits, or defects were stated without a table.</summary>
    private string? OtherTable(GreenGrade grade, bool isExport)
    {
        if (CountedBy is null || grade.Scheme is not { } key || DefectScheme.TableOf(key) == CountedBy)
        {
            return null;
        }

        // A table of the house counts by categories: defects for the export targets are written down beside it.
        var by = DefectScheme.PublishedOf(key);
        return isExport && by?.IsExportMethod != true ? null : by?.Name ?? "a table of this house";
    }

    private static string Text(decimal value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
