using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Pricing;

namespace GreenLedger.Domain.Costs;

/// <summary>
/// A settled claim in the cost of its lot: what the seller pays or credits is a credit on the coffee, of the day of the
/// settlement (handbook, trade 8 and 9.1: cost is the price less discounts).
/// </summary>
public static class ClaimPosting
{
    private const int LongestSender = 120;

    /// <param name="toHouse">Into the house currency, of the day of the settlement.</param>
    /// <exception cref="RuleBrokenException">The claim brought no money, or the rate does not fit.</exception>
    public static CostPosting Of(Claim claim, Conversion toHouse, Currency house, Id<Person> by, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(claim);
        Rule.Require(claim is { Settled: not null, SettledOn: not null }, $"Claim {claim.Ref} brought no money: there is nothing to post.");
        var seller = claim.Case.Parties.Seller;
        var from = seller.Length <= LongestSender ? seller : seller[..LongestSender];
        var invoice = new Invoice(null, -claim.Settled!.Value, toHouse, claim.SettledOn!.Value, $"Claim {claim.Ref}", from, CostPosting.UsualBasis(null));
        return new CostPosting(new PostedOn(null, null, claim.LotId), invoice, house, by, at) { ClaimId = claim.Id };
    }

    /// <summary>Withdraws what stands of a claim before its new outcome is posted, so that it never counts twice.</summary>
    /// <param name="standing">Its postings that count.</param>
    public static void Withdraw(Claim claim, IEnumerable<CostPosting> standing, Id<Person> by, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(claim);
        ArgumentNullException.ThrowIfNull(standing);
        var reason = claim.IsOpen ? $"The outcome of claim {claim.Ref} was taken back." : $"Claim {claim.Ref} was settled, and that posts its amount.";
        foreach (var posting in standing)
        {
            posting.Withdraw(reason, by, at);
        }
    }
}
