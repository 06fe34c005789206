using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Grading;

namespace GreenLedger.Domain.Summaries;

/// <summary>Which goods an arrival report is about, and how they came.</summary>
public sealed record ArrivedGoods(
    string LotRef, string LotName, string? CropYear, string ContractRef, string ShipmentRef, string? BillOfLading, string? Vessel, DateOnly? ShippedOn, DateOnly? DischargedOn,
    DateOnly ReceivedOn, int ShippedBags, int Bags, ReceiptCondition Condition);

/// <summary>The two samples that were cupped, by the codes of their bags, and the days of their sessions.</summary>
/// <param name="ArrivalOn">The same day where both were cupped in one session.</param>
public sealed record CuppedPair(string ApprovedCode, string ArrivalCode, DateOnly ApprovedOn, DateOnly ArrivalOn);

/// <summary>What a physical limit is about.</summary>
public enum LimitKind
{
    Moisture = 0,
    WaterActivity = 1,
    Category1 = 2,
    Category2 = 3,
    Screen = 4,
}

/// <summary>A physical limit with its figures: shares in per cent, water activity as a ratio, defects counted.</summary>
/// <param name="Screen">For a screen: its number.</param>
/// <param name="Approved">On the approved sample; null where it was not measured.</param>
/// <param name="Found">On the arrival; null where it was not measured.</param>
/// <param name="Least">Null where nothing is too little.</param>
/// <param name="Most">Null where nothing is too much; water activity lies below it.</param>
/// <param name="Passed">Null where it was not measured, or not by the table that the limit is for.</param>
public sealed record ReportedLimit(LimitKind Kind, int? Screen, decimal? Approved, decimal? Found, decimal? Least, decimal? Most, bool? Passed, bool IsAgreed)
{
    /// <summary>The limits of a verdict with the figures behind its sentences.</summary>
    /// <param name="verdict">What was said of each.</param>
    /// <param name="limits">That they were held against.</param>
    /// <param name="approved">The approved sample's grade; null where it was not graded.</param>
    /// <param name="arrival">The arrival's; null where it was not graded.</param>
    public static IReadOnlyList<ReportedLimit> Of(IReadOnlyList<LimitVerdict> verdict, PhysicalLimits limits, GreenGrade? approved, GreenGrade? arrival)
    {
        ArgumentNullException.ThrowIfNull(limits);
        var screen = limits.Screen ?? arrival?.StatedScreen;
        return [.. verdict.Select(one => (Verdict: one, Kind: KindOf(one.Name))).Where(one => one.Kind is not null).Select(one =>
        {
            var (kind, (least, most)) = (one.Kind!.Value, Range(one.Kind!.Value, limits));
            return new ReportedLimit(kind, kind == LimitKind.Screen ? screen : null, Figure(kind, approved, screen), Figure(kind, arrival, screen), least, most, one.Verdict.Passed, one.Verdict.IsAgreed);
        })];
    }

    /// <summary>By the names that <see cref="PhysicalLimits.Check"/> gives.</summary>
    private static LimitKind? KindOf(string name) => name switch
    {
        "Moisture" => LimitKind.Moisture,
        "Water activity" => LimitKind.WaterActivity,
        "Category 1 full defects" => LimitKind.Category1,
        "Category 2 full defects" => LimitKind.Category2,
        _ => name.StartsWith("Screen ", StringComparison.Ordinal) ? LimitKind.Screen : null,
    };

    private static (decimal? Least, decimal? Most) Range(LimitKind kind, PhysicalLimits limits) => kind switch
    {
        LimitKind.Moisture => (limits.LowestMoisture, limits.HighestMoisture),
        LimitKind.WaterActivity => (null, limits.WaterActivityBelow),
        LimitKind.Category1 => (null, limits.Category1),
        LimitKind.Category2 => (null, limits.Category2),
        _ => (limits.LeastOnStatedScreen, null),
    };

    private static decimal? Figure(LimitKind kind, GreenGrade? grade, int? screen) => (kind, grade) switch
    {
        (_, null) => null,
        (LimitKind.Moisture, _) => grade.Moisture?.Points,
        (LimitKind.WaterActivity, _) => grade.WaterActivity?.Ratio,
        (LimitKind.Category1, _) => grade.Category1?.Count,
        (LimitKind.Category2, _) => grade.Category2?.Count,
        _ => screen is { } number ? grade.RetainedFrom(number)?.Points : null,
    };
}

/// <summary>What a supplier hears of an arrival: how it came, the weights, both panels and the verdict with its figures. Nothing in it is of anybody else.</summary>
/// <param name="Language">ISO 639-1: en, es, pt or fr; another is answered in English.</param>
/// <param name="Message">What the buyer adds, in the reader's language; null for nothing.</param>
/// <param name="Pair">Null where the two samples were not cupped.</param>
public sealed record ArrivalReport(
    string House, string Supplier, string? Language, DateOnly On, string By, string? Message, ArrivedGoods Goods, WeightVerdict Weight, ArrivalVerdict Quality, CuppedPair? Pair, IReadOnlyList<ReportedLimit> Limits)
{
    /// <summary>For the file, without the ending.</summary>
    public string FileName => FormattableString.Invariant($"arrival-{Goods.ContractRef}-{Goods.ReceivedOn:yyyy-MM-dd}");
}
