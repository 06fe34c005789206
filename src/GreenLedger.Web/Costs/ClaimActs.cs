using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Costs;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Costs;

/// <summary>What page and API do alike when the outcome of a claim is entered or taken back. Whoever calls saves.</summary>
public sealed class ClaimActs(LedgerContext db, PostingActs postings, TimeProvider clock)
{
    /// <summary>Lets the cost of the lot follow the outcome: what stood of the claim is withdrawn, and what it brings now is posted.</summary>
    public async Task PostAsync(Claim claim, Id<Person> by, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(claim);
        var standing = await db.CostPostings.Where(one => one.ClaimId == claim.Id && one.WithdrawnAt == null).ToListAsync(cancellationToken);
        ClaimPosting.Withdraw(claim, standing, by, clock.GetUtcNow());
        if (claim is { Settled: { } settled, SettledOn: { } on })
        {
            var (house, conversion) = await postings.ToHouseAsync(settled.Currency, on, cancellationToken);
            db.Add(ClaimPosting.Of(claim, conversion, house, by, clock.GetUtcNow()));
        }
    }
}
