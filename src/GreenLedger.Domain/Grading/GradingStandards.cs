namespace GreenLedger.Domain.Grading;

/// <summary>The defect schemes and the physical limits that this house grades by, every revision of them.</summary>
public sealed class GradingStandards
{
    private static readonly string[] RobustaWords = ["robusta", "canephora", "conilon"];

    private readonly IReadOnlyList<PhysicalLimits> _limits;

    public GradingStandards(IEnumerable<DefectScheme> schemes, IEnumerable<PhysicalLimits> limits)
    {
        ArgumentNullException.ThrowIfNull(schemes);
        ArgumentNullException.ThrowIfNull(limits);
        All = [.. InOrder(schemes, DefectScheme.Published.Select(one => one.Code), one => one.Code)];
        Newest = [.. All.GroupBy(scheme => scheme.Code).Select(revisions => revisions.MaxBy(scheme => scheme.Revision)!)];
        _limits = [.. InOrder(limits, PhysicalLimits.Published.Select(one => one.Code), one => one.Code).GroupBy(one => one.Code).Select(revisions => revisions.MaxBy(one => one.Revision)!)];
    }

    /// <summary>As they come with the ledger.</summary>
    public static GradingStandards Published { get; } = new(DefectScheme.Published, PhysicalLimits.Published);

    /// <summary>Every revision of every table.</summary>
    public IReadOnlyList<DefectScheme> All { get; }

    /// <summary>The newest revision of each table, which is what is counted by from now on.</summary>
    public IReadOnlyList<DefectScheme> Newest { get; }

    /// <summary>Whether varieties of this name are robusta; arabica is the rule.</summary>
    public static bool IsRobusta(string? varieties) =>
        RobustaWords.Any(word => varieties?.Contains(word, StringComparison.OrdinalIgnoreCase) == true);

    /// <summary>The scheme of a key, in the very revision; null where there is none.</summary>
    public DefectScheme? Find(string? key) => All.FirstOrDefault(scheme => scheme.Key == key);

    /// <summary>What a table of the house is called, by its code; null for a published one, for one that is not here, and for none.</summary>
    public string? OwnNameOf(string? code) => Newest.FirstOrDefault(scheme => scheme.IsOfHouse && scheme.Code == code)?.Name;

    /// <summary>The scheme that a coffee of these varieties is usually counted by: a published one, in the newest revision.</summary>
    public DefectScheme For(string? varieties)
    {
        var isRobusta = IsRobusta(varieties);
        return Newest.First(scheme => isRobusta ? scheme is { IsRobusta: true, IsOfHouse: false } : scheme.Code == DefectScheme.WashedArabica.Code);
    }

    /// <summary>The newest limits that a lot of these varieties is held against: those of arabica unless they say robusta.</summary>
    public IEnumerable<PhysicalLimits> Limits(string? varieties)
    {
        var isRobusta = IsRobusta(varieties);
        return _limits.Where(limits => limits.IsRobusta == isRobusta);
    }

    /// <summary>As published, those of the house behind them: whatever order a database reads them in, the screens and the usual table are the same.</summary>
    private static IOrderedEnumerable<T> InOrder<T>(IEnumerable<T> all, IEnumerable<string> published, Func<T, string> code)
    {
        var places = published.Distinct().Index().ToDictionary(one => one.Item, one => one.Index);
        return all.OrderBy(one => places.GetValueOrDefault(code(one), int.MaxValue)).ThenBy(code, StringComparer.Ordinal);
    }
}
