using System.Globalization;

namespace GreenLedger.Domain.Summaries;

/// <summary>The tables of a purchase summary, in the order in which they are read.</summary>
public static partial class SummaryTables
{
    public static IReadOnlyList<SummaryTable> Of(PurchaseSummary summary)
    {
        ArgumentNullException.ThrowIfNull(summary);
        return
        [
            Steps(summary), ToDecide(summary), Groups(summary), Bands(summary), Scores(summary), Judgements(summary), Arrivals(summary), Claims(summary), Landed(summary),
            Priced(summary), Unpriced(summary), Positions(summary),
        ];
    }

    private static SummaryTable Steps(PurchaseSummary summary)
    {
        var money = summary.Currency.Code;
        return new SummaryTable(
            "Summary",
            "In the period and before",
            "Contracted counts by the day of signature, shipped by the day on board, arrived by the day received; what is still to come and in stock is told as it stands. Money is at the contract's price, in stock at cost.",
            [
                new("", FigureKind.Text), new("Lots", FigureKind.Count), new("kg", FigureKind.Kilograms), new(money, FigureKind.Money), new($"{money}/kg", FigureKind.PerKilogram), new($"Provisional, {money}", FigureKind.Money),
                new("Before: kg", FigureKind.Kilograms), new($"Before: {money}", FigureKind.Money), new($"Before: {money}/kg", FigureKind.PerKilogram),
            ],
            [
                Step("Contracted", SummaryFigure.Contracted), Step("Shipped", SummaryFigure.Shipped), Step("Arrived", SummaryFigure.Arrived), Step("Still to come", SummaryFigure.ToCome), Step("In stock", SummaryFigure.InStock),
            ]);

        SummaryCell[] Step(string word, SummaryFigure figure)
        {
            var (now, before) = (summary.Total(figure), figure is SummaryFigure.ToCome or SummaryFigure.InStock ? null : summary.Total(figure, isBefore: true));
            var (rows, earlier) = (new SummaryLink(new RowFilter(figure)), new SummaryLink(new RowFilter(figure, IsBefore: true)));
            return
            [
                word, new((decimal)now.Rows, rows), new(now.Net.Kilograms, rows), new(now.Value.Amount, rows), now.PerKilogram, now.Provisional.Amount,
                new(before?.Net.Kilograms, before is null ? null : earlier), new(before?.Value.Amount, before is null ? null : earlier), before?.PerKilogram,
            ];
        }
    }

    private static SummaryTable Groups(PurchaseSummary summary)
    {
        var (cut, money) = (summary.Wish.Cut.Word(), summary.Currency.Code);
        return new SummaryTable(
            $"By {cut}",
            $"By {cut}",
            "Each lot stands in one group, so that the groups add up to the whole. The mean score is weighted by the kilograms contracted.",
            [
                new(Capital(cut), FigureKind.Text), new("Lots", FigureKind.Count, ColumnTotal.Sum), new("Contracted, kg", FigureKind.Kilograms, ColumnTotal.Sum), new($"Contracted, {money}", FigureKind.Money, ColumnTotal.Sum),
                new("Valued, kg", FigureKind.Kilograms, ColumnTotal.Sum), new($"{money}/kg", FigureKind.PerKilogram, ColumnTotal.Ratio(3, 4)), new("Mean score, points", FigureKind.Points),
                new("Shipped, kg", FigureKind.Kilograms, ColumnTotal.Sum), new("Arrived, kg", FigureKind.Kilograms, ColumnTotal.Sum), new("Still to come, kg", FigureKind.Kilograms, ColumnTotal.Sum),
                new("In stock, kg", FigureKind.Kilograms, ColumnTotal.Sum),
            ],
            [
                .. summary.Groups().Select(group => new SummaryCell[]
                {
                    new(group.Name, new SummaryLink(Group: group.Name)), new((decimal)group.Contracted.Rows, Behind(SummaryFigure.Contracted, group)),
                    new(group.Contracted.Net.Kilograms, Behind(SummaryFigure.Contracted, group)), new(group.Contracted.Value.Amount, Behind(SummaryFigure.Contracted, group)),
                    group.Contracted.Valued.Kilograms, group.Contracted.PerKilogram, group.Score, new(group.Shipped.Net.Kilograms, Behind(SummaryFigure.Shipped, group)),
                    new(group.Arrived.Net.Kilograms, Behind(SummaryFigure.Arrived, group)), new(group.ToCome.Net.Kilograms, Behind(SummaryFigure.ToCome, group)),
                    new(group.InStock.Net.Kilograms, Behind(SummaryFigure.InStock, group)),
                }),
            ]).Totalled();

        static SummaryLink Behind(SummaryFigure figure, CutGroup group) => new(new RowFilter(figure), group.Name);
    }

    private static SummaryTable Bands(PurchaseSummary summary)
    {
        var money = summary.Currency.Code;
        return new SummaryTable(
            "Quality",
            "By band of quality",
            "Average price per kg, weighted, of what was contracted, as the contracts name it at their delivery rules: it is not the landed cost. " + FuturesNote(summary),
            [
                new("Band", FigureKind.Text), new("Lots", FigureKind.Count, ColumnTotal.Sum), new("kg", FigureKind.Kilograms, ColumnTotal.Sum), new(money, FigureKind.Money, ColumnTotal.Sum),
                new("Valued, kg", FigureKind.Kilograms, ColumnTotal.Sum), new($"{money}/kg", FigureKind.PerKilogram, ColumnTotal.Ratio(3, 4)), new($"Before: {money}/kg", FigureKind.PerKilogram),
                new("Change", FigureKind.Share), new($"Above futures, {money}/kg", FigureKind.PerKilogram), new($"{money}/kg and point", FigureKind.PerPoint),
            ],
            [
                .. summary.BandLines().Select(line => new SummaryCell[]
                {
                    line.Band, new((decimal)line.Now.Rows, Behind(line)), new(line.Now.Net.Kilograms, Behind(line)), new(line.Now.Value.Amount, Behind(line)), line.Now.Valued.Kilograms,
                    line.Now.PerKilogram, new(line.Before.PerKilogram, new SummaryLink(new RowFilter(SummaryFigure.Contracted, line.Band, IsBefore: true))),
                    line.Now.PerKilogram / line.Before.PerKilogram - 1m, line.Now.PerKilogram - summary.Futures?.PerKilogram, line.PerPoint,
                }),
            ]).Totalled();

        static SummaryLink Behind(BandLine line) => new(new RowFilter(SummaryFigure.Contracted, line.Band));
    }

    private static string FuturesNote(PurchaseSummary summary) => summary.Futures is { } futures
        ? string.Create(CultureInfo.InvariantCulture, $"Futures averaged {futures.Quoted:0.00} US cents/lb or {futures.PerKilogram:0.00} {summary.Currency}/kg over {futures.Days} days of the period (nearest month, New York)")
            + (summary.FuturesBefore is { } before ? string.Create(CultureInfo.InvariantCulture, $", {before.PerKilogram:0.00} {summary.Currency}/kg before.") : ".")
        : "No futures quotes are known for the period.";

    private static SummaryTable Scores(PurchaseSummary summary) => new SummaryTable(
        "Scores",
        "Scores, bought against offered",
        "Lots first offered in the period that our panel cupped, beside lots contracted in it, by whole points: 86 holds 86.00 to 86.99.",
        [
            new("Points", FigureKind.Text), new("Offered and cupped, lots", FigureKind.Count, ColumnTotal.Sum), new("Contracted, lots", FigureKind.Count, ColumnTotal.Sum), new("Contracted, kg", FigureKind.Kilograms, ColumnTotal.Sum),
        ],
        [
            .. summary.ScoreLines().Select(line => new SummaryCell[]
            {
                line.From.ToString(CultureInfo.InvariantCulture), (decimal)line.Offered,
                new((decimal)line.Bought, new SummaryLink(new RowFilter(SummaryFigure.Contracted, Score: line.From))), new(line.BoughtNet.Kilograms, new SummaryLink(new RowFilter(SummaryFigure.Contracted, Score: line.From))),
            }),
        ]).Totalled();

    private static SummaryTable Judgements(PurchaseSummary summary)
    {
        var counts = summary.Approvals();
        var shares = counts.Lots == 0
            ? "No sample was judged in the period."
            : string.Create(CultureInfo.InvariantCulture, $"Approved at the first sample: {counts.FirstTime} of {counts.Lots} lots ({counts.FirstTimeShare * 100m:0.0} %); with a replacement sample {counts.Later} more ({counts.ApprovedShare * 100m:0.0} % in all); refused {counts.Refused}.");
        return new SummaryTable(
            "Samples judged",
            "Approvals and refusals",
            shares,
            [new("Contract", FigureKind.Text), new("Lot", FigureKind.Text), new("Supplier", FigureKind.Text), new("Day", FigureKind.Day), new("Sample", FigureKind.Text), new("Verdict", FigureKind.Text), new("Remarks", FigureKind.Text)],
            [
                .. summary.Judgements().Select(one => new SummaryCell[]
                {
                    Contract(one.Purchase), LotOf(one.Purchase.Lot), one.Purchase.Lot.Supplier, one.Judged.On,
                    one.Judged.Round == 1 ? "first" : $"replacement {one.Judged.Round - 1}", Contracts.ApprovalVerdicts.Word(one.Judged.Verdict), one.Judged.Remarks,
                }),
            ]);
    }

    private static SummaryTable Arrivals(PurchaseSummary summary) => new SummaryTable(
        "Arrivals",
        "Arrival against approved sample",
        "Received in the period. Scores are those of each sample's own panel; whether a difference is more than the panels' error, the arrival's page says.",
        [
            new("Contract", FigureKind.Text), new("Lot", FigureKind.Text), new("Received", FigureKind.Day), new("Shipped, kg", FigureKind.Kilograms, ColumnTotal.Sum), new("Landed, kg", FigureKind.Kilograms, ColumnTotal.Sum),
            new("Difference", FigureKind.Share), new("Approved, points", FigureKind.Points), new("Arrival, points", FigureKind.Points), new("Difference, points", FigureKind.Points),
        ],
        [
            .. summary.Comparisons().Select(one => new SummaryCell[]
            {
                Contract(one.Purchase), new(LotOf(one.Purchase.Lot).Value, new SummaryLink(Arrival: one.Compared.ArrivalId)), one.Compared.On, one.Compared.Shipped.Kilograms, one.Compared.Landed.Kilograms,
                one.Compared.WeightDifference.Fraction, one.Compared.Approved?.Points, one.Compared.Arrived?.Points, one.Compared.Points,
            }),
        ]).Totalled();

    private static SummaryTable Claims(PurchaseSummary summary) => new SummaryTable(
        "Claims",
        "Claims, open and settled",
        "Made in the period, and older ones that are still open; amounts at the rate of their day. A claim without an amount is still to be put into figures.",
        [
            new("Claim", FigureKind.Text), new("Contract", FigureKind.Text), new("Lot", FigureKind.Text), new("Supplier", FigureKind.Text), new("Day", FigureKind.Day),
            new($"Claimed, {summary.Currency}", FigureKind.Money, ColumnTotal.Sum), new("State", FigureKind.Text), new($"Settled, {summary.Currency}", FigureKind.Money, ColumnTotal.Sum),
        ],
        [
            .. summary.Claims().Select(one => new SummaryCell[]
            {
                new(one.Claim.Ref, new SummaryLink(Claim: one.Claim.ClaimId)), Contract(one.Purchase), LotOf(one.Purchase.Lot), one.Purchase.Lot.Supplier, one.Claim.On,
                one.Claim.Amount?.Amount, one.Claim.State, one.Claim.Settled?.Amount,
            }),
        ]).Totalled();

    private static SummaryTable Landed(PurchaseSummary summary)
    {
        var money = summary.Currency.Code;
        return new SummaryTable(
            "Landed cost",
            "What arrived, at its cost in the warehouse",
            "Weighted average of all that was billed so far for what arrived: coffee, freight, insurance, duty, haulage, finance and storage, less claims settled. What is not billed yet is left out of the money and of the average.",
            [
                new("Band", FigureKind.Text), new("Arrivals", FigureKind.Count, ColumnTotal.Sum), new("kg", FigureKind.Kilograms, ColumnTotal.Sum), new(money, FigureKind.Money, ColumnTotal.Sum),
                new("Billed, kg", FigureKind.Kilograms, ColumnTotal.Sum), new($"{money}/kg", FigureKind.PerKilogram, ColumnTotal.Ratio(3, 4)), new($"Before: {money}/kg", FigureKind.PerKilogram), new("Change", FigureKind.Share),
            ],
            [
                .. summary.LandedLines().Select(line => new SummaryCell[]
                {
                    line.Band, new((decimal)line.Now.Rows, Behind(line)), new(line.Now.Net.Kilograms, Behind(line)), new(line.Now.Value.Amount, Behind(line)), line.Now.Valued.Kilograms,
                    line.Now.PerKilogram, new(line.Before.PerKilogram, new SummaryLink(new RowFilter(SummaryFigure.Landed, line.Band, IsBefore: true))), (line.Now.PerKilogram / line.Before.PerKilogram) - 1m,
                }),
            ]).Totalled();

        static SummaryLink Behind(LandedLine line) => new(new RowFilter(SummaryFigure.Landed, line.Band));
    }

    private static SummaryTable Priced(PurchaseSummary summary) => new SummaryTable(
        "Priced",
        "Priced and unpriced, by month of shipment",
        "Every open contract as it stands, by the month in which its shipment period ends. Unpriced is the share that is not fixed yet.",
        [new("Shipment", FigureKind.Text), new("Lots", FigureKind.Count, ColumnTotal.Sum), new("Priced, kg", FigureKind.Kilograms, ColumnTotal.Sum), new("Unpriced, kg", FigureKind.Kilograms, ColumnTotal.Sum)],
        [
            .. summary.PricedMonths().Select(month => new SummaryCell[]
            {
                new(month.Month.ToString("MMM yyyy", CultureInfo.InvariantCulture), new SummaryLink(new RowFilter(SummaryFigure.Open, Month: month.Month))), (decimal)month.Rows, month.Priced.Kilograms, month.Unpriced.Kilograms,
            }),
        ]).Totalled();

    private static SummaryTable Unpriced(PurchaseSummary summary) => new SummaryTable(
        "Unpriced",
        "Unpriced, by futures month",
        "What the unpriced part of open contracts stands against.",
        [new("Futures month", FigureKind.Text), new("Lots", FigureKind.Count, ColumnTotal.Sum), new("Unpriced, kg", FigureKind.Kilograms, ColumnTotal.Sum)],
        [
            .. summary.UnpricedMonths().Select(month => new SummaryCell[]
            {
                new(month.Month.ToString(), new SummaryLink(new RowFilter(SummaryFigure.Open, Futures: month.Month))), (decimal)month.Rows, month.Net.Kilograms,
            }),
        ]).Totalled();

    private static SummaryTable Positions(PurchaseSummary summary) => new SummaryTable(
        "Positions",
        "The ten largest positions",
        "What was contracted and has not arrived, the largest by value; the total is that of the rows shown.",
        [
            new("Contract", FigureKind.Text), new("Lot", FigureKind.Text), new("Supplier", FigureKind.Text), new("Goods", FigureKind.Text), new("Ship until", FigureKind.Day),
            new("kg", FigureKind.Kilograms, ColumnTotal.Sum), new(summary.Currency.Code, FigureKind.Money, ColumnTotal.Sum), new("Price", FigureKind.Text),
        ],
        [
            .. summary.Positions().Select(row => new SummaryCell[]
            {
                Contract(row.Purchase!), LotOf(row.Lot), row.Lot.Supplier, Contracts.GoodsStates.Word(row.Purchase!.Goods), row.On, row.Net.Kilograms, row.Value?.Amount,
                MoneyWord(SummaryFigure.ToCome, row),
            }),
        ]).Totalled();

    private static SummaryTable ToDecide(PurchaseSummary summary) => new(
        "To decide",
        "What needs a decision",
        "Departures from the plan on open contracts, the oldest day first.",
        [new("Contract", FigureKind.Text), new("What", FigureKind.Text), new("Day", FigureKind.Day)],
        [.. summary.ToDecide.Select(one => new SummaryCell[] { new(one.ContractRef, new SummaryLink(Contract: one.ContractId)), one.What, one.Since })]);

    private static SummaryCell Contract(PurchasedLot purchase) => new(purchase.ContractRef, new SummaryLink(Contract: purchase.ContractId));

    private static SummaryCell LotOf(LotFacts lot) => $"{lot.Ref} {lot.Name}";

    private static string Capital(string word) => char.ToUpperInvariant(word[0]) + word[1..];
}
