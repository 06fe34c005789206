using GreenLedger.Data;
using GreenLedger.Data.Choosing;
using GreenLedger.Domain;
using GreenLedger.Domain.Choosing;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Choosing;

/// <summary>The offers of a day as an address wished them ranked, or the sentence that says why they are not.</summary>
/// <param name="Rules">Null when there are none, or none of the name that was asked for.</param>
/// <param name="Trouble">Why the rules cannot rank; null where they do.</param>
public sealed record Ranking(BuyingRules? Rules, Shortlist? Shortlist, string? Trouble)
{
    public static async Task<Ranking> OfAsync(
        RankingWish wish, LedgerContext db, ShortlistQuery query, DateOnly on, CancellationToken cancellationToken)
    {
        var rules = await db.BuyingRules.InUse().Whole().AsNoTracking().NamedAsync(wish.Rules, cancellationToken);
        if (rules is null)
        {
            return new Ranking(null, null, null);
        }

        try
        {
            return new Ranking(rules, await query.RankAsync(wish.TermsOf(rules), on, new ShortlistFilter(wish.Search), cancellationToken), null);
        }
        catch (RuleBrokenException broken)
        {
            // A weight in the address is typed by hand, and the house's currency may have changed since the rules were
            // written: the sentence stands in place of the list.
            return new Ranking(rules, null, broken.Message);
        }
    }
}
