using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Stock;

/// <summary>How long stock lasts and when to buy again (handbook, trade 9.3).</summary>
public static class StockCover
{
    /// <summary>Weeks that the available weight lasts at a weekly use; null where nothing is used, since it lasts for ever.</summary>
    public static decimal? Weeks(Weight available, Weight weeklyUse) =>
        weeklyUse > Weight.Zero ? available.Kilograms / weeklyUse.Kilograms : null;

    /// <summary>
    /// The position at which to order: use over the lead time, and a safety stock for the spread of use and of lead time,
    /// z·√(L·σd² + d²·σL²), textbook formula (handbook, trade 9.3, from memory).
    /// </summary>
    /// <param name="weeklyUse">Mean use a week.</param>
    /// <param name="useSpread">Standard deviation of the use of a week.</param>
    /// <param name="leadWeeks">Mean lead time in weeks.</param>
    /// <param name="leadSpread">Standard deviation of the lead time in weeks.</param>
    /// <param name="z">How many standard deviations are guarded against: 1.645 for 95 %.</param>
    public static ReorderPoint Reorder(Weight weeklyUse, Weight useSpread, decimal leadWeeks, decimal leadSpread, decimal z)
    {
        Rule.Require(weeklyUse >= Weight.Zero && weeklyUse.Kilograms <= 1_000_000m, "The use of a week lies between 0 and 1,000,000 kg.", nameof(weeklyUse));
        Rule.Require(useSpread >= Weight.Zero && useSpread.Kilograms <= 1_000_000m, "The spread of use lies between 0 and 1,000,000 kg.", nameof(useSpread));
        Rule.Require(leadWeeks is >= 0 and <= 520, "The lead time lies between 0 and 520 weeks.", nameof(leadWeeks));
        Rule.Require(leadSpread is >= 0 and <= 520, "The spread of the lead time lies between 0 and 520 weeks.", nameof(leadSpread));
        Rule.Require(z is >= 0 and <= 6, "The safety factor lies between 0 and 6.", nameof(z));
        var (use, spread, lead) = ((double)weeklyUse.Kilograms, (double)useSpread.Kilograms, (double)leadWeeks);
        var safety = (double)z * Math.Sqrt((lead * spread * spread) + (use * use * (double)leadSpread * (double)leadSpread));
        return new ReorderPoint(Weight.FromKilograms((decimal)(use * lead)), Weight.FromKilograms((decimal)safety));
    }
}

/// <summary>When the position (on hand, afloat and contracted, less reserved) falls to the point, it is time to buy.</summary>
public sealed record ReorderPoint(Weight LeadTimeUse, Weight SafetyStock)
{
    public Weight Point => LeadTimeUse + SafetyStock;

    /// <summary>Whole bags that hold at least the point.</summary>
    public long Bags(Weight bag) => decimal.ToInt64(Math.Ceiling(Point.Kilograms / bag.Kilograms));
}
