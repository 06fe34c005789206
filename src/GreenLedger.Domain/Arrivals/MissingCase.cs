using System.Globalization;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Papers;

namespace GreenLedger.Domain.Arrivals;

/// <summary>Gathers the case of a claim on goods that did not come.</summary>
internal static class MissingCase
{
    /// <summary>Beyond this many times the contract's price a figure is taken for a slip: cents for dollars. Common practice, no source.</summary>
    private const decimal MostTimes = 5m;

    /// <exception cref="RuleBrokenException">Nothing is missing, or the amount cannot be.</exception>
    internal static ClaimCase Of(MissingGoods goods, MissingOrder order)
    {
        var finding = goods.Finding(order.On);
        Rule.Require(finding.IsShown, finding.Sentence, "Part");
        Rule.Require(
            goods.IsOverdue(order.On) || !string.IsNullOrWhiteSpace(order.Words),
            "By what is written down the ship is still on its way: say what is known of the loss, in what the seller is to read.", nameof(order.Words));
        var (contract, terms) = (goods.Contract, goods.Contract.Terms);
        var version = contract.InForce!;
        return new ClaimCase(
            new ClaimParties(terms.Buyer, terms.Seller, contract.Ref, version.Number, version.SignedOn, terms.Form.Name, terms.Form.Arbitration),
            GoodsOf(goods),
            null,
            [finding],
            [],
            null,
            [],
            Times(goods, order.On),
            [.. goods.Papers.Select(paper => new ClaimPaper(paper.About.Word(), paper.FileName, paper.Sha256))],
            Lines(goods, order),
            goods.Currency,
            goods.Price ?? order.ProvisionalPrice,
            goods.Price is null,
            Weight.Zero,
            Rule.OptionalText(order.Words, "What the seller is to read", 4000, nameof(order.Words)),
            Agreed(goods));
    }

    /// <summary>
    /// The lines of an amount: what such coffee costs now less the contract's price, over the weight that did not come; what was
    /// paid for it already; and what else is claimed. Each value is money and rounded as such.
    /// </summary>
    /// <exception cref="RuleBrokenException">A price is missing or in another currency, or there is no difference to claim.</exception>
    internal static IReadOnlyList<ClaimLine> Lines(MissingGoods goods, MissingOrder order)
    {
        Require(goods, order);
        return [.. new[] { Cover(goods, order), Paid(goods, order), Others(order) }.OfType<ClaimLine>()];
    }

    private static void Require(MissingGoods goods, MissingOrder order)
    {
        Rule.Require(order.ProvisionalPrice is null || goods.Price is null, "The contract's price is known: leave the provisional price out.", nameof(order.ProvisionalPrice));
        Rule.Require(order.ProvisionalPrice is null or { Amount: > 0m }, "The provisional price lies above 0.", nameof(order.ProvisionalPrice));
        Rule.Require(order.Market is null or { Amount: > 0m }, "The price of the day lies above 0.", nameof(order.Market));
        Rule.Require(order.Paid is null or { MinorUnits: > 0 }, "What was paid lies above 0; leave it out where nothing was.", nameof(order.Paid));
        Rule.Require(order.Other is null or { MinorUnits: > 0 }, "What else is claimed lies above 0.", nameof(order.Other));
        Rule.Require(order.Other is null == string.IsNullOrWhiteSpace(order.OtherWords), "Give what else is claimed with its amount, or leave both out.", order.Other is null ? nameof(order.Other) : nameof(order.OtherWords));
        foreach (var (currency, field) in new[]
        {
            (order.Market?.Currency, nameof(order.Market)), (order.ProvisionalPrice?.Currency, nameof(order.ProvisionalPrice)),
            (order.Paid?.Currency, nameof(order.Paid)), (order.Other?.Currency, nameof(order.Other)),
        })
        {
            Rule.Require(currency is null || currency == goods.Currency, $"This contract is paid in {goods.Currency}: claim in it.", field);
        }
    }

    private static ClaimLine? Cover(MissingGoods goods, MissingOrder order)
    {
        if (order.Market is not { } market)
        {
            return null;
        }

        Rule.Require((goods.Price ?? order.ProvisionalPrice) is not null, "The contract's price is not fixed yet: state a provisional price to count by.", nameof(order.ProvisionalPrice));
        var price = (goods.Price ?? order.ProvisionalPrice)!.Value;
        var (now, agreed) = (market * goods.Weight, price * goods.Weight);
        Rule.Require(now > agreed, "Such coffee costs no more that day than the contract's price: there is no difference to claim, so leave the price of the day out.", nameof(order.Market));
        Rule.Require(now.Amount <= agreed.Amount * MostTimes, $"This is more than five times the contract's price: please check the figure and its unit, {goods.Currency} and not cents.", nameof(order.Market));
        var provisional = goods.Price is null ? ", provisional until the price is fixed" : "";
        return new ClaimLine(
            "Difference to the price of the day",
            $"{ClaimLine.Kg(goods.Weight)} at {market.AsQuoted()} cost {ClaimLine.Said(now)}; at the contract's {price.AsQuoted()}{provisional} they cost {ClaimLine.Said(agreed)}",
            now - agreed);
    }

    private static ClaimLine? Paid(MissingGoods goods, MissingOrder order) => order.Paid is { } paid
        ? new ClaimLine("Paid already", $"as paid for {ClaimLine.Kg(goods.Weight)} that did not come", paid)
        : null;

    private static ClaimLine? Others(MissingOrder order) => order.Other is { } other
        ? new ClaimLine(Rule.Text(order.OtherWords, "What else is claimed", 200, nameof(order.OtherWords)), "as stated", other)
        : null;

    private static List<ClaimTime> Times(MissingGoods goods, DateOnly on) => goods.Deadline() is { } deadline
        ? [new ClaimTime(deadline.Rule.What, deadline.Rule.Days, deadline.Start, deadline.LastDay, on, deadline.Rule.IsFromDischarge ? null : deadline.Rule.From)]
        : [];

    private static ClaimGoods GoodsOf(MissingGoods goods)
    {
        var (lot, shipment, until) = (goods.Lot, goods.Shipment, goods.Contract.Terms.Delivery.ShipUntil);
        return shipment is null
            ? new ClaimGoods(lot.Ref, lot.Name, null, null, null, null, null, until, null, null, [])
            : ClaimCase.GoodsOf(lot.Ref, lot.Name, shipment, until);
    }

    private static ClaimMissing Agreed(MissingGoods goods)
    {
        var delivery = goods.Contract.Terms.Delivery;
        return new ClaimMissing(
            goods.Line.Lot.Bags,
            goods.Line.Lot.Net,
            goods.Bags,
            goods.Weight,
            $"{delivery.Incoterm.Word()} {delivery.Place}",
            delivery.ShipFrom,
            delivery.ShipUntil,
            [.. goods.Contract.Versions.Where(version => version.IsSigned).OrderBy(version => version.Number)
                .Select(version => string.Create(CultureInfo.InvariantCulture, $"Version {version.Number}, signed {MissingGoods.Said(version.SignedOn!.Value)}{(version.Reason is { } reason ? $": {reason}" : "")}"))],
            [.. goods.Notes.Select(note => $"{MissingGoods.Said(note.On)}, on the {note.About.Word()}: {note.Text}")]);
    }
}
