using System.Globalization;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Arrivals;

/// <summary>One line of a claimed amount with its arithmetic, so that the seller can check it by hand.</summary>
public sealed record ClaimLine(string What, string Arithmetic, Money Amount)
{
    /// <summary>
    /// The lines of an amount: lost weight by the weight verdict, the allowance on quality over the landed weight, and what else
    /// is claimed. A share is taken of the price of the landed weight, which is money and rounded as such.
    /// </summary>
    /// <exception cref="RuleBrokenException">A price is missing or in another currency, or the allowance cannot be.</exception>
    public static IReadOnlyList<ClaimLine> Of(ClaimBasis basis, ClaimOrder order)
    {
        ArgumentNullException.ThrowIfNull(basis);
        ArgumentNullException.ThrowIfNull(order);
        Require(basis, order);
        return [.. new[] { LostWeight(basis, order), Quality(basis, order), Others(order) }.OfType<ClaimLine>()];
    }

    /// <summary>The lines of an amount for goods that did not come: the difference to the price of the day, what was paid for them, and what else is claimed.</summary>
    /// <exception cref="RuleBrokenException">A price is missing or in another currency, or there is no difference to claim.</exception>
    public static IReadOnlyList<ClaimLine> Of(MissingGoods goods, MissingOrder order)
    {
        ArgumentNullException.ThrowIfNull(goods);
        ArgumentNullException.ThrowIfNull(order);
        return MissingCase.Lines(goods, order);
    }

    private static void Require(ClaimBasis basis, ClaimOrder order)
    {
        Rule.Require(order.ProvisionalPrice is null || basis.Weight.Price is null, "The contract's price is known: leave the provisional price out.", nameof(order.ProvisionalPrice));
        Rule.Require(order.ProvisionalPrice is null or { Amount: > 0m }, "The provisional price lies above 0.", nameof(order.ProvisionalPrice));
        Rule.Require(order.Allowance is null || order.Share is null, "Give the allowance for a unit of weight or as a share of the price, not both.", nameof(order.Share));
        Rule.Require(
            (order.Allowance is null && order.Share is null) || order.Grounds.Any(ground => ground != ClaimGround.Weight),
            "An allowance on the whole lot needs a ground besides weight: name it, or leave the allowance out.", nameof(order.Grounds));
        Rule.Require(order.Allowance is null or { Amount: > 0m }, "The allowance lies above 0.", nameof(order.Allowance));
        Rule.Require(order.Share is null or { Points: > 0m and <= 100m }, "The share lies above 0 and at most at 100 %.", nameof(order.Share));
        Rule.Require(order.Other is null or { MinorUnits: > 0 }, "What else is claimed lies above 0.", nameof(order.Other));
        Rule.Require(order.Other is null == string.IsNullOrWhiteSpace(order.OtherWords), "Give what else is claimed with its amount, or leave both out.", order.Other is null ? nameof(order.Other) : nameof(order.OtherWords));
        foreach (var (currency, field) in new[] { (order.Allowance?.Currency, nameof(order.Allowance)), (order.ProvisionalPrice?.Currency, nameof(order.ProvisionalPrice)), (order.Other?.Currency, nameof(order.Other)) })
        {
            Rule.Require(currency is null || currency == basis.Currency, $"This contract is paid in {basis.Currency}: claim in it.", field);
        }

        Rule.Require(order.Allowance is not { } allowance || Price(basis, order) is not { } price || allowance <= price, "The allowance is more than the price: please check the figure and its unit.", nameof(order.Allowance));
    }

    private static ClaimLine? LostWeight(ClaimBasis basis, ClaimOrder order)
    {
        if (!order.Grounds.Contains(ClaimGround.Weight))
        {
            return null;
        }

        var (verdict, price) = (basis.Weight, RequiredPrice(basis, order));
        var beyond = verdict.Franchise.Points > 0m ? $"{Kg(verdict.Loss)} lost less the franchise of {Kg(verdict.FranchiseWeight)} is {Kg(verdict.Refunded)}" : $"{Kg(verdict.Loss)} lost";
        return new ClaimLine("Lost weight", $"{beyond}, at {PriceWords(basis, price)}", price * verdict.Refunded);
    }

    private static ClaimLine? Quality(ClaimBasis basis, ClaimOrder order)
    {
        var landed = basis.Arrival.Landed;
        if (order.Allowance is { } allowance)
        {
            return new ClaimLine("Allowance on quality", $"{Kg(landed)} landed, at {allowance.AsQuoted()}", allowance * landed);
        }

        if (order.Share is not { } share)
        {
            return null;
        }

        var price = RequiredPrice(basis, order);
        var value = price * landed;
        return new ClaimLine("Allowance on quality", $"{share} of {Said(value)}, the price of {Kg(landed)} landed at {PriceWords(basis, price)}", Money.Of(value.Amount * share.Fraction, value.Currency));
    }

    private static ClaimLine? Others(ClaimOrder order) => order.Other is { } other
        ? new ClaimLine(Rule.Text(order.OtherWords, "What else is claimed", 200, nameof(order.OtherWords)), "as stated", other)
        : null;

    private static PricePerWeight? Price(ClaimBasis basis, ClaimOrder order) => basis.Weight.Price ?? order.ProvisionalPrice;

    private static PricePerWeight RequiredPrice(ClaimBasis basis, ClaimOrder order)
    {
        Rule.Require(Price(basis, order) is not null, "The contract's price is not fixed yet: state a provisional price to count by.", nameof(order.ProvisionalPrice));
        return Price(basis, order)!.Value;
    }

    private static string PriceWords(ClaimBasis basis, PricePerWeight price) => basis.Weight.Price is null ? $"{price.AsQuoted()}, provisional until the price is fixed" : price.AsQuoted();

    internal static string Kg(Weight weight) => weight.Kilograms.ToString("#,0.#########", CultureInfo.InvariantCulture) + " kg";

    internal static string Said(Money money) => money.Amount.ToString("N" + money.Currency.Decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture) + " " + money.Currency;
}
