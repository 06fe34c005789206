using GreenLedger.Data.Pricing;
using GreenLedger.Domain;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Cupping;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Choosing;

/// <summary>Ranks the offers of the day: loads their facts in a few statements and leaves the rest to Domain.</summary>
public sealed class ShortlistQuery(LedgerContext db, LandedCostsQuery costsQuery, CandidateQuery candidateQuery)
{
    /// <summary>With chances drawn and prices compared. Null while no house is set up.</summary>
    /// <exception cref="RuleBrokenException">The terms contradict themselves or are in another currency than the house.</exception>
    public async Task<Shortlist?> RankAsync(RuleTerms terms, DateOnly on, ShortlistFilter filter, CancellationToken cancellationToken)
    {
        var costs = await costsQuery.FindAsync(on, cancellationToken);
        if (costs is null)
        {
            return null;
        }

        var offers = await candidateQuery.ListAsync(terms, costs, filter, cancellationToken);
        var shortlist = Shortlist.Rank(offers.Candidates, terms, costs.House);
        await DrawAsync(shortlist, cancellationToken);
        shortlist.ComparePrices(PriceModel.Of(offers.Past, terms.LeastOffersPerGroup));
        return shortlist;
    }

    private async Task DrawAsync(Shortlist shortlist, CancellationToken cancellationToken)
    {
        var errors = new Dictionary<Id<SampleResult>, SharedErrors>();
        await LoadAsync(errors, shortlist.Leaders, cancellationToken);
        var contenders = shortlist.Contenders(errors);
        await LoadAsync(errors, contenders.Entries, cancellationToken);
        shortlist.DrawChances(contenders, errors);
    }

    /// <summary>How the errors of these lots' results go together: only the few that are drawn need it.</summary>
    private async Task LoadAsync(
        Dictionary<Id<SampleResult>, SharedErrors> errors, IEnumerable<ShortlistEntry> entries, CancellationToken cancellationToken)
    {
        var wanted = entries.SelectMany(entry => entry.Candidate.Results).Select(result => result.ResultId)
            .Distinct().Where(id => !errors.ContainsKey(id)).ToList();
        if (wanted.Count == 0)
        {
            return;
        }

        var found = await db.SampleResults.AsNoTracking().Where(result => wanted.Contains(result.Id)).ToListAsync(cancellationToken);
        foreach (var result in found)
        {
            errors[result.Id] = SharedErrors.Of(result);
        }
    }
}
