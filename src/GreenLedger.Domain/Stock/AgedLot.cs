using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Stock;

/// <summary>A moisture that was measured on a day.</summary>
public sealed record MoistureOn(DateOnly On, Percent Moisture);

/// <summary>A lot in stock, how old it is, and how it has changed.</summary>
/// <param name="HarvestEnd">The last day of its harvest, by crop and origin; null where either is not known.</param>
/// <param name="Since">When the first of it came into stock.</param>
/// <param name="Scores">Of what was drawn here, on one form, the earliest first.</param>
/// <param name="Moistures">Of what was drawn here, the earliest first.</param>
public sealed record AgedLot(
    Id<Offers.Lot> LotId, string Ref, string Name, Weight InStock, DateOnly? HarvestEnd, DateOnly Since, IReadOnlyList<AgedScore> Scores, IReadOnlyList<MoistureOn> Moistures)
{
    /// <summary>Whole months since the harvest ended, or since it came where that is not known.</summary>
    public int MonthsOn(DateOnly today)
    {
        var from = HarvestEnd ?? Since;
        var months = (today.Year - from.Year) * 12 + today.Month - from.Month;
        return Math.Max(0, today < from.AddMonths(months) ? months - 1 : months);
    }

    /// <summary>As the trade parts stock by age: 0–3, 4–6, 7–9, 10–12 and more than 12 months (handbook, trade 9.3).</summary>
    public static string BandOf(int months) => months switch
    {
        <= 3 => "0–3 months",
        <= 6 => "4–6 months",
        <= 9 => "7–9 months",
        <= 12 => "10–12 months",
        _ => "more than 12 months",
    };

    /// <summary>Whether the crop counts as past: so many months after the harvest ended (working rule of the trade, handbook 9.3). Not told where the harvest is not known.</summary>
    public bool IsPastCrop(StockHabits habits, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(habits);
        return HarvestEnd is { } end && today >= end.AddMonths(habits.PastCropMonths);
    }

    /// <summary>The newest score less the first; null with fewer than two.</summary>
    public double? Change => Scores.Count < 2 ? null : Scores[^1].Points - Scores[0].Points;

    /// <summary>The newest moisture less the first, in percentage points; null with fewer than two.</summary>
    public decimal? MoistureChange => Moistures.Count < 2 ? null : Moistures[^1].Moisture.Points - Moistures[0].Moisture.Points;

    public bool HasDrifted(StockHabits habits)
    {
        ArgumentNullException.ThrowIfNull(habits);
        return MoistureChange is { } change && Math.Abs(change) > habits.MoistureDrift.Points;
    }
}
