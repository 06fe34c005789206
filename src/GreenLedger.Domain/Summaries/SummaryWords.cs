using System.Globalization;

namespace GreenLedger.Domain.Summaries;

/// <summary>What a summary says of itself in words.</summary>
public static class SummaryWords
{
    /// <summary><c>1 Jan 2026 to 31 Dec 2026, origin Colombia</c>.</summary>
    public static string Scope(SummaryWish wish)
    {
        ArgumentNullException.ThrowIfNull(wish);
        return Span(wish.Period) + (wish.Group is null ? ", all purchases" : $", {wish.Cut.Word()} {wish.Group}");
    }

    public static string Span(Period period)
    {
        ArgumentNullException.ThrowIfNull(period);
        return $"{Day(period.From)} to {Day(period.Until)}";
    }

    /// <summary>What a figure's rows are called: <c>Contracted, excellent</c>.</summary>
    public static string Title(RowFilter filter)
    {
        ArgumentNullException.ThrowIfNull(filter);
        var figure = filter.Figure switch
        {
            SummaryFigure.Contracted => "Contracted",
            SummaryFigure.Shipped => "Shipped",
            SummaryFigure.Arrived => "Arrived",
            SummaryFigure.ToCome => "Still to come",
            SummaryFigure.Open => "Open contracts",
            SummaryFigure.InStock => "In stock",
            SummaryFigure.Landed => "Arrived, at landed cost",
            _ => throw new ArgumentOutOfRangeException(nameof(filter)),
        };
        var narrowed = new[]
        {
            filter.Band, filter.Score is { } score ? $"{score} points" : null,
            filter.Month is { } month ? $"shipment {month.ToString("MMM yyyy", CultureInfo.InvariantCulture)}" : null,
            filter.Futures is { } futures ? $"against {futures}" : null, filter.IsBefore ? "the period before" : null,
        };
        return string.Join(", ", narrowed.OfType<string>().Prepend(figure));
    }

    /// <summary>What the figures mean and from when the rates are, each with the name of what it explains.</summary>
    public static IReadOnlyList<(string Of, string Says)> Notes(PurchaseSummary summary)
    {
        ArgumentNullException.ThrowIfNull(summary);
        var without = summary.Total(SummaryFigure.Contracted).WithoutValue;
        return
        [
            ("Period", $"{Span(summary.Wish.Period)}; the period before is {Span(summary.Wish.Period.Before)}."),
            ("As it stands", $"What is open, still to come, in stock or needs a decision is told as of {Day(summary.AsOf)}."),
            ("Purchases", "Lots of signed contracts by the terms that hold. Drafts and cancelled contracts are left out."),
            ("Weights", "Net, in kilograms: as contracted, by the shipping papers, as landed. Where a contract shipped or arrived without papers here, the contracted weight stands."),
            ("Money", $"In {summary.Currency}, each row rounded to the smallest unit of the currency and then added. The contract's price at its delivery rule, unless a table says landed cost or stock."),
            ("Rates", $"Market rates of the day on which each contract was signed, or the last before it; they do not change later. The newest rate here is {(summary.NewestRate is { } newest ? $"of {Day(newest)}" : "none")}."),
            ("Provisional", $"What is not fixed is taken at the last quote of its futures month up to {Day(summary.AsOf)} and changes until it is fixed."),
            ("Not known", without == 0 ? "Every lot contracted in the period has a value." : $"Lots contracted in the period without a value, since a quote or a rate is missing: {without}. They count in kilograms and not in money."),
            ("In stock", "As weighed in the warehouses, whatever it was bought on, at cost by the house's way of valuing: without finance and storage after receipt. Where coffee is valued in pools, a pool's cost is shared over its lots by kilograms."),
            ("Landed cost", "All that was billed for a lot so far, shared over what landed of it, times the kilograms that arrived: late bills change it."),
            ("Scores", "Our panel's, on one cupping form: the newest when the contract was signed, or the first later one. Bands of quality are settings of the house, held against unrounded scores."),
            ("Futures", "The mean of the days' closing quotes of the nearest month in New York, each at the rate of its own day."),
        ];
    }

    private static string Day(DateOnly day) => day.ToString("d MMM yyyy", CultureInfo.InvariantCulture);
}
