using System.Globalization;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Web.Display;

namespace GreenLedger.Web.Contracts;

/// <summary>How a contract's figures are written for a person.</summary>
internal static class ContractFigures
{
    private static readonly CultureInfo Reader = CultureInfo.InvariantCulture;

    /// <summary>As agreed: <c>412.50 ¢/lb</c> or <c>KCK27 +35 ¢/lb</c>.</summary>
    public static string Price(PriceTerms price) => price switch
    {
        { Outright: { } outright } => Figures.Price(outright),
        { Month: { } month, Differential: { } differential } => Figures.Differential(Domain.Measures.Differential.Of(month, differential)),
        { IsNotKnown: true } => "not known",
        _ => "–",
    };

    /// <summary>A figure as the market quotes it, with its unit: <c>286.65 ¢/lb</c>.</summary>
    public static string Quoted(FuturesMarket market, decimal quoted) => Quoted(quoted) + Unit(market);

    public static string Quoted(decimal quoted) => quoted.ToString("#,0.00##", Reader);

    /// <summary>With its sign: <c>+35.00 ¢/lb</c>.</summary>
    public static string Signed(FuturesMarket market, decimal quoted) => quoted.ToString("+#,0.00##;−#,0.00##;±0.00", Reader) + Unit(market);

    /// <summary>Does not break before the unit.</summary>
    public static string Unit(FuturesMarket market) => market == FuturesMarket.Robusta ? "\u00a0USD/t" : "\u00a0¢/lb";

    /// <summary>In lots of the market, to the hundredth: <c>1.13 lots</c>.</summary>
    public static string Lots(decimal lots) => lots.ToString("#,0.##", Reader) + (lots == 1m ? " lot" : " lots");

    public static string Delivery(DeliveryTerms delivery) => $"{delivery.Incoterm.Word()} {delivery.Place}";

    public static string Period(DateOnly from, DateOnly until) => $"{Figures.Day(from)} to {Figures.Day(until)}";

    public static string Lot(ContractedLot lot) => lot.Ref == lot.Name ? lot.Name : $"{lot.Name} · {lot.Ref}";

    public static string Bags(ContractedLot lot) => $"{Figures.Count(lot.Bags, "bag", "bags")} × {lot.BagWeight.Kilograms.ToString("#,0.###", Reader)} kg";

    public static string Approval(ApprovalTerms approval) => approval.Rule switch
    {
        ApprovalRule.None => "no approval of a sample is asked for",
        ApprovalRule.Replace => $"subject to approval of the pre-shipment sample; after a refusal the seller may send a replacement sample, {approval.MostSamples} samples of a lot in all",
        ApprovalRule.Cancel => "subject to approval of the pre-shipment sample; no approval, no sale",
        _ => throw new ArgumentOutOfRangeException(nameof(approval)),
    };

    public static string Call(Caller? call) => call == Caller.Seller ? "seller’s call" : "buyer’s call";

    /// <summary>The tag's colour beside the word.</summary>
    public static string? Tag(GoodsState state) => state switch
    {
        GoodsState.Cancelled => "tag-stop",
        GoodsState.Drafted or GoodsState.AwaitingApproval or GoodsState.PartShipped => "tag-caution",
        GoodsState.Arrived or GoodsState.Closed => "tag-good",
        _ => null,
    };

    public static string? Tag(PriceState state) => state.IsKnown() ? "tag-good" : "tag-caution";

    /// <summary><c>12 days left</c>, <c>today</c>, <c>3 days past</c>.</summary>
    public static string DaysLeft(int days) => days switch
    {
        0 => "today",
        > 0 => Figures.Count(days, "day left", "days left"),
        _ => Figures.Count(-days, "day past", "days past"),
    };
}
