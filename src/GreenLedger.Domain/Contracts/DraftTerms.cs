using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;

namespace GreenLedger.Domain.Contracts;

/// <summary>A lot that the buyer decided to buy, with the offer that it was decided on.</summary>
public sealed record BoughtLot(Decision Decision, Lot Lot, Offer Offer);

/// <summary>
/// The terms that a draft begins with, from what was decided, what the offer says and the standard form. What nobody has said
/// is left open for the buyer to fill in.
/// </summary>
public static class DraftTerms
{
    /// <summary>Most often agreed (handbook, trade 4.5; common practice).</summary>
    public const string UsualPayment = "Net cash against documents on first presentation";

    /// <param name="buyer">The house, as it calls itself.</param>
    /// <param name="supplier">Who sells.</param>
    /// <param name="bought">The lots to buy, the one that the draft is asked for first.</param>
    /// <param name="form">The standard form referred to; null where the house has none.</param>
    /// <param name="today">The day of the draft.</param>
    public static ContractTerms Of(string buyer, Supplier supplier, IReadOnlyList<BoughtLot> bought, StandardForm? form, DateOnly today)
    {
        var (decision, lot, offer) = bought[0];
        var lots = bought.Select(one => Line(one)).ToList();
        var delivery = Delivery(offer, today);
        return new ContractTerms(
            buyer,
            supplier.Name,
            lots,
            new QualityTerms(Description(lot), LeastScore(decision)),
            PriceOf(new Asking(offer.Price, offer.Differential), lots.Aggregate(Weight.Zero, (sum, line) => sum + line.Net())),
            delivery,
            new WeightTerms(WeightBasis.Shipped, form?.Franchise ?? default, form?.Tolerance ?? default),
            new ApprovalTerms(ApprovalRule.Replace, 3, delivery.ShipFrom),
            UsualPayment,
            lot.Certificates,
            FormOf(form),
            null);
    }

    public static FormTerms FormOf(StandardForm? form) => new(
        form?.Title ?? "", form?.Arbitration ?? "", form?.WeighWithinDays, form?.QualityClaimDays, form?.OtherClaimDays, form?.QualityFromClearance == true, form?.WeighFrom ?? WeighingStart.Discharge);

    /// <summary>Whole bags of the offer's, nearest to what was decided; no bags where nobody said what one holds.</summary>
    public static ContractedLot Line(BoughtLot bought)
    {
        ArgumentNullException.ThrowIfNull(bought);
        var bag = bought.Offer.BagWeight ?? bought.Lot.BagWeight ?? Weight.Zero;
        var quantity = bought.Decision.Quantity ?? Weight.Zero;
        var bags = bag == Weight.Zero ? 0 : (int)Math.Max(1m, Math.Round((decimal)quantity.Micrograms / bag.Micrograms, 0, MidpointRounding.AwayFromZero));
        return new ContractedLot(bought.Lot.Id, bought.Lot.Ref, bought.Lot.Name, bought.Lot.CropYear, bags, bag);
    }

    /// <summary>As the offer asks; a differential is fixed in the usual lots at the buyer's call.</summary>
    public static PriceTerms PriceOf(Asking asking, Weight net)
    {
        ArgumentNullException.ThrowIfNull(asking);
        if (asking.Price is { } price)
        {
            return PriceTerms.AtPrice(price);
        }

        return asking.Differential is { } differential
            ? new PriceTerms(null, differential.Month, differential.Quoted, PriceTerms.UsualLots(differential.Month.Market, net), Caller.Buyer, null, null)
            : new PriceTerms(null, null, null, null, null, null, null);
    }

    /// <summary>The month after the coffee can be had and the one that follows it.</summary>
    private static DeliveryTerms Delivery(Offer offer, DateOnly today)
    {
        var from = offer.AvailableFrom is { } available && available > today ? available : new DateOnly(today.Year, today.Month, 1).AddMonths(1);
        return new DeliveryTerms(offer.Incoterm ?? Incoterm.Fob, offer.Place ?? "", from, new DateOnly(from.Year, from.Month, 1).AddMonths(2).AddDays(-1));
    }

    /// <summary>What a lot is, in the words of a contract.</summary>
    public static string Description(Lot lot) => string.Join(", ", new[]
    {
        lot.Name, lot.Region ?? lot.CountryCode, lot.ProcessAsWritten, lot.Grade, lot.Screen is { } screen ? "screen " + screen : null,
    }.Where(part => !string.IsNullOrWhiteSpace(part)).Distinct());

    /// <summary>The lower end of our panel's interval, down to the quarter point; none where only the seller has scored it.</summary>
    private static Score? LeastScore(Decision decision) =>
        FrozenJson.Read<FiguresSnapshot>(decision.Figures) is { IsStatedScore: false, Low: { } low }
            ? Score.Of(Math.Floor(low.Points * 4m) / 4m)
            : null;
}
