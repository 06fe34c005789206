using System.Globalization;

namespace GreenLedger.Domain.Summaries;

/// <summary>The charts of a purchase summary, each beside the table that has its figures; empty ones are left out.</summary>
public static class SummaryCharts
{
    /// <summary>More groups than this are drawn as one.</summary>
    public const int MostGroups = 10;

    /// <summary>By the name of the table that a chart belongs to.</summary>
    public static IReadOnlyDictionary<string, ChartSpec> Of(PurchaseSummary summary)
    {
        ArgumentNullException.ThrowIfNull(summary);
        return new (string Table, ChartSpec Chart)[]
        {
            ($"By {summary.Wish.Cut.Word()}", Groups(summary)), ("Quality", Bands(summary)), ("Scores", Scores(summary)), ("Priced", Priced(summary)),
        }.Where(one => !one.Chart.IsEmpty).ToDictionary(one => one.Table, one => one.Chart);
    }

    private static ChartSpec Groups(PurchaseSummary summary)
    {
        var groups = summary.Groups().Where(group => group.Contracted.Value.MinorUnits > 0 || group.Contracted.Rows > 0).ToList();
        var (named, others) = (groups.Take(MostGroups).ToList(), groups.Skip(MostGroups).ToList());
        var before = summary.Rows(new RowFilter(SummaryFigure.Contracted, IsBefore: true)).ToLookup(row => summary.Wish.Cut.GroupOf(row.Lot), row => row.Value?.Amount ?? 0m);
        var names = named.ConvertAll(group => group.Name);
        List<decimal?> now = named.ConvertAll(group => (decimal?)group.Contracted.Value.Amount);
        List<decimal?> then = names.ConvertAll(name => (decimal?)before[name].Sum());
        if (others.Count > 0)
        {
            names.Add(string.Create(CultureInfo.InvariantCulture, $"{others.Count} others"));
            now.Add(others.Sum(group => group.Contracted.Value.Amount));
            then.Add(others.Sum(group => before[group.Name].Sum()));
        }

        return new ChartSpec($"Contracted by {summary.Wish.Cut.Word()}", summary.Currency.Code, ChartForm.Bars, names, [new("the period", now), new("the period before", then)], 0);
    }

    private static ChartSpec Bands(PurchaseSummary summary)
    {
        var lines = summary.BandLines();
        return new ChartSpec(
            "Average price by band of quality", $"{summary.Currency}/kg", ChartForm.Bars, [.. lines.Select(line => line.Band)],
            [new("the period", [.. lines.Select(line => line.Now.PerKilogram)]), new("the period before", [.. lines.Select(line => line.Before.PerKilogram)])], 2,
            summary.Futures is { } futures ? new ChartMark("Futures average", futures.PerKilogram) : null);
    }

    private static ChartSpec Scores(PurchaseSummary summary)
    {
        var lines = summary.ScoreLines();
        return new ChartSpec(
            "Scores, bought against offered", "lots", ChartForm.Bars, [.. lines.Select(line => line.From.ToString(CultureInfo.InvariantCulture) + " points")],
            [new("offered and cupped", [.. lines.Select(line => (decimal?)line.Offered)]), new("contracted", [.. lines.Select(line => (decimal?)line.Bought)])], 0);
    }

    private static ChartSpec Priced(PurchaseSummary summary)
    {
        var months = summary.PricedMonths();
        return new ChartSpec(
            "Priced and unpriced", "kg", ChartForm.Bars, [.. months.Select(month => month.Month.ToString("MMM yyyy", CultureInfo.InvariantCulture))],
            [new("priced", [.. months.Select(month => (decimal?)month.Priced.Kilograms)]), new("unpriced", [.. months.Select(month => (decimal?)month.Unpriced.Kilograms)])], 0);
    }
}
