using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Stock;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Stock;

/// <summary>What page and API do alike with purposes. Whoever calls saves.</summary>
public sealed class PurposeActs(LedgerContext db)
{
    /// <summary>Names a new purpose, or says a known one anew.</summary>
    public async Task<Purpose> StateAsync(Purpose? known, PurposeTerms terms, CancellationToken cancellationToken)
    {
        var purpose = known ?? new Purpose(terms);
        purpose.State(terms);
        Rule.Require(
            !await db.Purposes.AnyAsync(other => other.Id != purpose.Id && other.SearchText == purpose.SearchText, cancellationToken),
            "There is a purpose of that name already: choose another name.",
            nameof(Purpose.Name));
        if (known is null)
        {
            db.Add(purpose);
        }

        return purpose;
    }

    /// <summary>Lets a lot, by its reference, serve a purpose.</summary>
    public async Task<Lot> ServeAsync(Purpose purpose, string? lotRef, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(purpose);
        var wanted = Rule.Text(lotRef, "The lot", 200, nameof(PurposeLot.LotId));
        var found = await db.Lots.AsNoTracking().Where(lot => lot.Ref == wanted).OrderBy(lot => lot.Id).Take(2).ToListAsync(cancellationToken);
        Rule.Require(found.Count > 0, $"No lot has the reference {wanted}: write it as it stands in the ledger.", nameof(PurposeLot.LotId));
        var lot = found.Count == 1 ? found[0] : await OnlyInStockAsync(wanted, cancellationToken);
        purpose.Serve(lot.Id);
        return lot;
    }

    /// <summary>Of several sellers' lots of one reference, the one that the house has.</summary>
    private async Task<Lot> OnlyInStockAsync(string wanted, CancellationToken cancellationToken)
    {
        var held = await db.Lots.AsNoTracking().Where(lot => lot.Ref == wanted && db.Holdings.Any(holding => holding.LotId == lot.Id)).OrderBy(lot => lot.Id).Take(2).ToListAsync(cancellationToken);
        Rule.Require(held.Count == 1, $"Several lots have the reference {wanted}: let it serve from the page of the lot’s stock.", nameof(PurposeLot.LotId));
        return held[0];
    }
}
