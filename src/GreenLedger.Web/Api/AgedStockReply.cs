using GreenLedger.Data.Stock;

namespace GreenLedger.Web.Api;

/// <summary>Points a month with their 95 % interval.</summary>
internal sealed record AgeTrendReply(double PointsPerMonth, double Lower, double Upper, int DegreesOfFreedom, int Lots, int Scores);

internal sealed record AgedScoreReply(DateOnly Day, double Points);

internal sealed record MoistureReply(DateOnly Day, decimal Percent);

/// <summary>A lot in stock; months count from the end of its harvest, or from when it came where that is not known.</summary>
internal sealed record AgedLotReply(
    Guid LotId, string Ref, decimal InStockKg, DateOnly? HarvestEnd, DateOnly Since, int Months, bool IsPastCrop, bool MoistureHasMoved, IReadOnlyList<AgedScoreReply> Scores, IReadOnlyList<MoistureReply> Moistures);

internal sealed record AgedStockReply(string Form, AgeTrendReply? Trend, IReadOnlyList<AgedLotReply> Lots)
{
    public static AgedStockReply Of(AgedStock stock, DateOnly today) => new(
        stock.Form,
        stock.Trend is { } trend ? new AgeTrendReply(trend.PerMonth, trend.Lower, trend.Upper, trend.Freedom, trend.Lots, trend.Scores) : null,
        [.. stock.Lots.Select(lot => new AgedLotReply(
            lot.LotId.Value, lot.Ref, lot.InStock.Kilograms, lot.HarvestEnd, lot.Since, lot.MonthsOn(today), lot.IsPastCrop(stock.Habits, today), lot.HasDrifted(stock.Habits),
            [.. lot.Scores.Select(score => new AgedScoreReply(score.On, score.Points))],
            [.. lot.Moistures.Select(one => new MoistureReply(one.On, one.Moisture.Points))]))]);
}
