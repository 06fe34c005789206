using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Summaries;

/// <summary>One row behind a figure: a quantity of a lot on a day.</summary>
/// <param name="Purchase">The lot of a contract; null for stock, which is told by lot whatever it was bought on.</param>
public sealed record SummaryRow(LotFacts Lot, DateOnly On, Weight Net, Money? Value, PurchasedLot? Purchase)
{
    /// <summary>Part of its money is taken from a settlement.</summary>
    public bool IsProvisional { get; init; }

    internal static SummaryRow Of(PurchasedLot purchase, DateOnly on, Weight net, Money? value) =>
        new(purchase.Lot, on, net, value, purchase) { IsProvisional = purchase.IsProvisional };
}

/// <summary>
/// What rows add up to. Money is the sum of the rows that have a value, each rounded on its own, so that rows and total agree
/// to the cent; how many have none is said beside it.
/// </summary>
/// <param name="WithoutValue">Rows whose price or rate is not known.</param>
/// <param name="Provisional">The part of the money that rests on a settlement and changes until it is fixed.</param>
public sealed record Total(int Rows, Weight Net, Money Value, Weight Valued, int WithoutValue, Money Provisional)
{
    /// <summary>House currency per kg, weighted, unrounded; null where nothing has a value.</summary>
    public decimal? PerKilogram => Valued > Weight.Zero ? Value.Amount / Valued.Kilograms : null;

    public static Total Of(IEnumerable<SummaryRow> rows, Currency currency)
    {
        var (count, net, valued, without) = (0, Weight.Zero, Weight.Zero, 0);
        var (value, provisional) = (Money.Zero(currency), Money.Zero(currency));
        foreach (var row in rows)
        {
            (count, net) = (count + 1, net + row.Net);
            if (row.Value is { } money)
            {
                (value, valued) = (value + money, valued + row.Net);
                provisional = row.IsProvisional ? provisional + money : provisional;
            }
            else
            {
                without++;
            }
        }

        return new Total(count, net, value, valued, without, provisional);
    }
}

/// <summary>One group of a cut in a period.</summary>
/// <param name="Score">Mean of what was contracted, weighted by kilograms; null where nothing was cupped.</param>
public sealed record CutGroup(string Name, Total Contracted, Total Shipped, Total Arrived, Total ToCome, Total InStock, decimal? Score);

/// <summary>What was contracted in one band of quality, beside the period before.</summary>
/// <param name="Band">The name of the band; <see cref="PurchaseSummary.NotCupped"/> where our panel has no score.</param>
/// <param name="PerPoint">House currency per kg and point: the money divided by the sum of kilograms times points; null without scores.</param>
public sealed record BandLine(string Band, Total Now, Total Before, decimal? PerPoint);

/// <summary>What the coffee of one band of quality that arrived truly cost in the warehouse, beside the period before.</summary>
public sealed record LandedLine(string Band, Total Now, Total Before);

/// <summary>How many lots of one whole point were offered and cupped, and bought.</summary>
/// <param name="From">The lower end: 86 holds 86.00 to 86.99.</param>
public sealed record ScoreLine(int From, int Offered, int Bought, Weight BoughtNet);

/// <summary>What ships in one month: priced and not.</summary>
/// <param name="Month">Its first day, by the last day of the contract's shipment period.</param>
public sealed record PricedMonth(DateOnly Month, int Rows, Weight Priced, Weight Unpriced);

/// <summary>What stands open against one futures month.</summary>
public sealed record UnpricedMonth(FuturesMonth Month, int Rows, Weight Net);

/// <summary>What became of the lots whose samples were judged in a period.</summary>
/// <param name="FirstTime">Approved at the first sample.</param>
/// <param name="Later">Approved with a replacement sample.</param>
/// <param name="Refused">The last verdict is a refusal.</param>
public sealed record ApprovalCounts(int FirstTime, int Later, int Refused)
{
    public int Lots => FirstTime + Later + Refused;

    /// <summary>Approved at the first sample, of all lots; null where none was judged.</summary>
    public decimal? FirstTimeShare => Lots == 0 ? null : (decimal)FirstTime / Lots;

    public decimal? ApprovedShare => Lots == 0 ? null : (decimal)(FirstTime + Later) / Lots;
}
