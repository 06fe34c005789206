using GreenLedger.Data;
using GreenLedger.Data.Choosing;
using GreenLedger.Documents.Choosing;
using GreenLedger.Web.Display;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Choosing;

/// <summary>Gathers what a shortlist's documents print: the ranking an address asks for, its landed costs leg by leg, and for whom.</summary>
public sealed class ShortlistPapers(LedgerContext db, ShortlistQuery query, CandidateQuery candidates, HouseZone zone, TimeProvider clock)
{
    /// <summary>Null where there are no such rules, or they cannot rank.</summary>
    public async Task<ShortlistReport?> FindAsync(RankingWish wish, string madeBy, CancellationToken cancellationToken)
    {
        var on = zone.Today;
        if (await Ranking.OfAsync(wish, db, query, on, cancellationToken) is not { Rules: { } rules, Shortlist: { } shortlist })
        {
            return null;
        }

        var house = await db.Houses.AsNoTracking().Select(row => row.Name).FirstAsync(cancellationToken);
        var form = await db.CuppingForms.Where(row => row.Id == rules.Terms.FormId).Select(row => row.Name).FirstAsync(cancellationToken);
        var offers = shortlist.Ranked.Take(ShortlistWorkbook.MostLots).Select(entry => entry.Candidate.OfferId).ToList();
        var costs = await candidates.CostsAsync(offers, on, cancellationToken);
        return new ShortlistReport(
            house,
            rules.Name,
            rules.Revision,
            wish.TermsOf(rules).Weights != rules.Terms.Weights,
            form,
            string.IsNullOrWhiteSpace(wish.Search) ? null : wish.Search.Trim(),
            madeBy,
            clock.GetUtcNow(),
            zone.Zone,
            on,
            shortlist,
            costs);
    }
}
