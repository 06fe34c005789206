using GreenLedger.Domain;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Choosing;

/// <summary>Which decisions a list shows; null or empty asks nothing.</summary>
/// <param name="Text">Part of a lot's reference or name.</param>
/// <param name="IsWithdrawn">Only withdrawn ones, or only those that stand.</param>
public sealed record DecisionFilter(string? Text = null, Outcome? Outcome = null, bool? IsWithdrawn = null, Id<Offer>? Offer = null);

/// <summary>A decision with the names of its people and the figures as they stood.</summary>
public sealed record DecisionRow(Decision Decision, string By, string? WithdrawnBy, FiguresSnapshot Figures)
{
    public RulesSnapshot Rules => FrozenJson.Read<RulesSnapshot>(Decision.Rules);
}

/// <summary>Decisions as lists, their own page and scripts show them.</summary>
public sealed class DecisionQuery(LedgerContext db)
{
    public Task<int> CountAsync(DecisionFilter filter, CancellationToken cancellationToken) => Filtered(filter).CountAsync(cancellationToken);

    /// <summary>The newest first.</summary>
    /// <param name="filter">Which decisions.</param>
    /// <param name="skip">Rows to leave out at the start.</param>
    /// <param name="take">Rows at the most; null for all of them.</param>
    /// <param name="cancellationToken">Stops the reading.</param>
    public async Task<IReadOnlyList<DecisionRow>> ListAsync(DecisionFilter filter, int skip, int? take, CancellationToken cancellationToken)
    {
        var sorted = Filtered(filter).NewestFirst().Skip(skip);
        return await RowsAsync(take is { } most ? sorted.Take(most) : sorted, cancellationToken);
    }

    /// <summary>Null when there is no such decision.</summary>
    public async Task<DecisionRow?> FindAsync(Id<Decision> id, CancellationToken cancellationToken) =>
        (await RowsAsync(db.Decisions.AsNoTracking().Where(decision => decision.Id == id), cancellationToken)).SingleOrDefault();

    private IQueryable<Decision> Filtered(DecisionFilter filter)
    {
        var found = db.Decisions.AsNoTracking();
        if (SearchText.Of(filter.Text) is { Length: > 0 } words)
        {
            found = found.Where(decision => db.Lots.Any(lot => lot.Id == decision.LotId && lot.SearchText.Contains(words)));
        }

        found = filter.Outcome is { } outcome ? found.Where(decision => decision.Outcome == outcome) : found;
        found = filter.Offer is { } offer ? found.Where(decision => decision.OfferId == offer) : found;
        return filter.IsWithdrawn is { } withdrawn ? found.Where(decision => decision.WithdrawnAt != null == withdrawn) : found;
    }

    private async Task<IReadOnlyList<DecisionRow>> RowsAsync(IQueryable<Decision> decisions, CancellationToken cancellationToken)
    {
        var found = await decisions.ToListAsync(cancellationToken);
        var ids = found.SelectMany(decision => new[] { decision.By, decision.WithdrawnBy ?? decision.By }).Distinct().ToList();
        var names = await db.People.Where(person => ids.Contains(person.Id))
            .Select(person => new { person.Id, person.Name }).ToDictionaryAsync(person => person.Id, person => person.Name, cancellationToken);
        return found.ConvertAll(decision => new DecisionRow(
            decision,
            names[decision.By],
            decision.WithdrawnBy is { } by ? names[by] : null,
            FrozenJson.Read<FiguresSnapshot>(decision.Figures)));
    }
}
