using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Pricing;

namespace GreenLedger.Domain.Costs;

/// <summary>What a lot was reckoned to cost, with what its bills are held against.</summary>
/// <param name="Cost">The landed cost of the day of the decision; it is known.</param>
/// <param name="Rates">Exchange rates that held on that day.</param>
/// <param name="Billed">The net weight, as shipped, of what landed, for which the bills came.</param>
public sealed record ReckonedCost(LandedCost Cost, ExchangeRates Rates, Weight Billed);

/// <summary>
/// Where the difference between estimated and billed comes from, each in the house currency per kilogram landed; together the
/// difference. The order of the split: first the price, or the amount of a charge, per kilogram shipped, at the rates and the
/// weights that were reckoned; then the rates of exchange; last the weight, so that it takes what two causes share (common
/// practice, no source). What settled claims brought stands apart.
/// </summary>
/// <param name="Price">The price, or the amount of a charge, against what was reckoned.</param>
/// <param name="Rate">The rate of the day of each invoice against that of the day of the estimate.</param>
/// <param name="Weight">What landed of the shipped kilograms against what was reckoned to land.</param>
/// <param name="Claims">Settled claims: below zero.</param>
public sealed record CostDifference(decimal Price, decimal Rate, decimal Weight, decimal Claims)
{
    private const decimal Scale = 10_000m;

    public decimal Total => Price + Rate + Weight + Claims;

    /// <summary>To four decimals, dealt by the largest remainder, so that the parts add to the total as it is shown (docs/decisions/0007).</summary>
    public CostDifference Shown()
    {
        var exact = new[] { Price, Rate, Weight, Claims }.Select(part => part * Scale).ToList();
        var units = exact.ConvertAll(Math.Floor);
        var left = (int)(Math.Round(Total * Scale, MidpointRounding.AwayFromZero) - units.Sum());
        foreach (var at in Enumerable.Range(0, units.Count).OrderByDescending(at => exact[at] - units[at]).Take(left))
        {
            units[at]++;
        }

        return new CostDifference(units[0] / Scale, units[1] / Scale, units[2] / Scale, units[3] / Scale);
    }

    /// <param name="parts">What was billed of a stage, or of all.</param>
    /// <param name="landed">What landed; above zero.</param>
    /// <param name="estimated">What was reckoned for it per kilogram landed.</param>
    public static CostDifference Of(IReadOnlyList<CostPart> parts, Weight landed, decimal estimated, ReckonedCost reckoned)
    {
        ArgumentNullException.ThrowIfNull(parts);
        ArgumentNullException.ThrowIfNull(reckoned);
        var invoices = parts.Where(part => part.Posting.ClaimId is null).ToList();
        var billed = invoices.Sum(part => part.Landed.Amount);
        var atReckoned = invoices.Sum(part => part.Landed.Amount * (RateThen(part.Posting, reckoned) / RateOf(part.Posting)));
        var weight = reckoned.Billed > Measures.Weight.Zero ? reckoned.Billed : landed;
        var reckonedLanded = weight.Kilograms * reckoned.Cost.Landed.Kilograms / reckoned.Cost.Shipped.Kilograms;
        var price = (atReckoned / reckonedLanded) - estimated;
        var rate = (billed - atReckoned) / reckonedLanded;
        return new CostDifference(
            price,
            rate,
            (billed / landed.Kilograms) - estimated - price - rate,
            parts.Where(part => part.Posting.ClaimId is not null).Sum(part => part.Landed.Amount) / landed.Kilograms);
    }

    /// <summary>House currency for one of the billed currency, as it was booked.</summary>
    private static decimal RateOf(CostPosting posting) => posting.House.MinorUnits == 0 ? 1m : posting.House.Amount / posting.Amount.Amount;

    /// <summary>The same on the day of the estimate; as it was booked where no rate of that day is known.</summary>
    private static decimal RateThen(CostPosting posting, ReckonedCost reckoned) =>
        posting.Amount.Currency == posting.House.Currency ? RateOf(posting)
        : reckoned.Rates.Find(posting.Amount.Currency, posting.House.Currency, reckoned.Cost.On)?.Rate ?? RateOf(posting);
}
