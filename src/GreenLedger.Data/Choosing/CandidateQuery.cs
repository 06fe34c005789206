using GreenLedger.Data.Pricing;
using GreenLedger.Domain;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Pricing;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Choosing;

/// <summary>Offers with every fact that a ranking asks about them.</summary>
/// <param name="Candidates">On offer on the day, and not past their validity.</param>
/// <param name="Past">Every scored and costed offer of the year before the day, as the price fit reads them.</param>
public sealed record OffersOfTheYear(IReadOnlyList<Candidate> Candidates, IReadOnlyList<PastOffer> Past);

/// <summary>Gathers the facts of offers from the rooms before: one statement for each room, whatever the number of offers.</summary>
public sealed class CandidateQuery(LedgerContext db, LandedCostsQuery costsQuery)
{
    /// <summary>One offer's landed cost with its arithmetic; null when there is no such offer, or no house yet.</summary>
    public async Task<LandedCost?> CostAsync(Id<Offer> id, DateOnly on, CancellationToken cancellationToken)
    {
        var offer = await db.Offers.AsNoTracking().FirstOrDefaultAsync(row => row.Id == id, cancellationToken);
        if (offer is null || await costsQuery.FindAsync(on, cancellationToken) is not { } costs)
        {
            return null;
        }

        var country = await db.Lots.Where(lot => lot.Id == offer.LotId).Select(lot => lot.CountryCode).SingleAsync(cancellationToken);
        return costs.Of(Parcel.Of(offer, country));
    }

    /// <summary>The landed costs of these offers with their arithmetic; empty while no house is set up.</summary>
    public async Task<IReadOnlyDictionary<Id<Offer>, LandedCost>> CostsAsync(
        IReadOnlyCollection<Id<Offer>> ids, DateOnly on, CancellationToken cancellationToken)
    {
        if (await costsQuery.FindAsync(on, cancellationToken) is not { } costs)
        {
            return new Dictionary<Id<Offer>, LandedCost>();
        }

        var rows = await (from offer in db.Offers.AsNoTracking()
                          join lot in db.Lots.AsNoTracking() on offer.LotId equals lot.Id
                          where ids.Contains(offer.Id)
                          select new { Offer = offer, lot.CountryCode }).ToListAsync(cancellationToken);
        return rows.ToDictionary(row => row.Offer.Id, row => costs.Of(Parcel.Of(row.Offer, row.CountryCode)));
    }

    /// <summary>The least and the highest landed cost of a kilogram among open offers; null while none has one.</summary>
    public async Task<(decimal Least, decimal Highest)?> CostRangeAsync(DateOnly on, CancellationToken cancellationToken)
    {
        if (await costsQuery.FindAsync(on, cancellationToken) is not { } costs)
        {
            return null;
        }

        (decimal Least, decimal Highest)? range = null;
        await foreach (var (offer, lot) in OffersAsync(on).WithCancellation(cancellationToken))
        {
            if (IsOpen(offer, on) && costs.Of(Parcel.Of(offer, lot.CountryCode)).PerKilogram is { } cost)
            {
                range = range is var (least, highest) ? (Math.Min(least, cost), Math.Max(highest, cost)) : (cost, cost);
            }
        }

        return range;
    }

    /// <param name="terms">Whose form says which score counts, and whose screen is asked for.</param>
    /// <param name="costs">What landed costs of the day are reckoned from.</param>
    /// <param name="filter">Which of the offers of the day; the past year is always whole.</param>
    /// <param name="cancellationToken">Stops the reading.</param>
    public async Task<OffersOfTheYear> ListAsync(
        RuleTerms terms, LandedCosts costs, ShortlistFilter filter, CancellationToken cancellationToken)
    {
        var facts = await FactsAsync(terms, cancellationToken);
        var wanted = SearchText.Of(filter.Text);
        var year = costs.On.AddYears(-1);
        var (candidates, past) = (new List<Candidate>(), new List<PastOffer>());
        await foreach (var (offer, lot) in OffersAsync(year).WithCancellation(cancellationToken))
        {
            var candidate = facts.CandidateOf(offer, lot, costs.Of(Parcel.Of(offer, lot.CountryCode)));
            if (offer.RevisedOn >= year && PastOf(candidate, terms) is { } known)
            {
                past.Add(known);
            }

            if (IsOpen(offer, costs.On) && (wanted.Length == 0 || Matches(wanted, offer, lot, candidate.Supplier)))
            {
                candidates.Add(candidate);
            }
        }

        return new OffersOfTheYear(candidates, past);
    }

    /// <summary>One after the other: of a hundred thousand offers only what a ranking asks about stays in memory.</summary>
    private IAsyncEnumerable<(Offer Offer, Lot Lot)> OffersAsync(DateOnly year) =>
        (from offer in db.Offers.AsNoTracking()
         join lot in db.Lots.AsNoTracking() on offer.LotId equals lot.Id
         where offer.State == OfferState.OnOffer || offer.RevisedOn >= year
         select new ValueTuple<Offer, Lot>(offer, lot)).AsAsyncEnumerable();

    private async Task<CandidateFacts> FactsAsync(RuleTerms terms, CancellationToken cancellationToken) => new(
        await db.Suppliers.AsNoTracking().Select(row => new { row.Id, row.Name }).ToDictionaryAsync(row => row.Id, row => row.Name, cancellationToken),
        await db.ProcessMethods.AsNoTracking().ToDictionaryAsync(row => row.Id, row => row.Name, cancellationToken),
        await ResultsAsync(cancellationToken),
        await GradesAsync(terms.Gates.Screen, cancellationToken));

    private static PastOffer? PastOf(Candidate candidate, RuleTerms terms) =>
        candidate.CostPerKilogram is { } paid && LotScore.Of(candidate, terms) is { Origin: ScoreOrigin.Cupped } score
            ? new PastOffer((double)score.Score.Points, candidate.Process, candidate.Origin, (double)paid)
            : null;

    private static bool IsOpen(Offer offer, DateOnly on) =>
        offer.State == OfferState.OnOffer && (offer.ValidUntil is null || offer.ValidUntil >= on);

    private static bool Matches(string wanted, Offer offer, Lot lot, string? supplier) =>
        offer.SearchText.Contains(wanted, StringComparison.Ordinal)
        || lot.SearchText.Contains(wanted, StringComparison.Ordinal)
        || SearchText.Of(supplier).Contains(wanted, StringComparison.Ordinal);

    /// <summary>Panel results as they are stored: no sheet is read, and no error shared with others.</summary>
    private async Task<Dictionary<Id<Lot>, CupScore[]>> ResultsAsync(CancellationToken cancellationToken)
    {
        var rows = db.SampleResults.AsNoTracking().Select(result => new
        {
            result.Id,
            result.SessionId,
            result.Part,
            result.FormId,
            result.HeldOn,
            result.LotId,
            result.Fitted,
            result.StandardError,
            result.AnyCupperError,
            result.DegreesOfFreedom,
            result.Low,
            result.High,
            result.HoldsFor,
        });
        var results = new Dictionary<Id<Lot>, CupScore[]>();
        await foreach (var row in rows.AsAsyncEnumerable().WithCancellation(cancellationToken))
        {
            var score = new CupScore(
                row.Id,
                row.SessionId,
                row.Part,
                row.FormId,
                row.HeldOn,
                row.Fitted,
                (double)row.StandardError.Points,
                (double)row.AnyCupperError.Points,
                row.DegreesOfFreedom,
                row.Low,
                row.High,
                row.HoldsFor);
            results[row.LotId] = results.TryGetValue(row.LotId, out var before) ? [.. before, score] : [score];
        }

        return results;
    }

    /// <summary>Oldest first, so that of each figure the newest stays.</summary>
    private async Task<Dictionary<Id<Lot>, GreenFacts>> GradesAsync(int? screen, CancellationToken cancellationToken)
    {
        var grades = db.GreenGrades.AsNoTracking();
        var rows = (screen is null ? grades : grades.Include(grade => grade.Screens))
            .OrderBy(grade => grade.LotId).ThenBy(grade => grade.GradedOn).ThenBy(grade => grade.Id);
        var facts = new Dictionary<Id<Lot>, GreenFacts>();
        await foreach (var grade in rows.AsAsyncEnumerable().WithCancellation(cancellationToken))
        {
            facts[grade.LotId] = (facts.GetValueOrDefault(grade.LotId) ?? GreenFacts.None).And(grade, screen);
        }

        return facts;
    }
}
