using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Search;

/// <summary>The folded text of rows that were stored before their table kept one: no database folds as the ledger does.</summary>
internal static class SearchTexts
{
    private const string Folded = nameof(Person.SearchText);

    public static async Task FillAsync(LedgerContext db, CancellationToken cancellationToken)
    {
        await FoldAsync<Person>(db, person => person.Name, cancellationToken);
        await FoldAsync<OfferList>(db, list => list.FileName, cancellationToken);
        await FoldAsync<CuppingSession>(db, session => session.Title, cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
    }

    private static async Task FoldAsync<T>(LedgerContext db, Func<T, string> text, CancellationToken cancellationToken)
        where T : class
    {
        foreach (var row in await db.Set<T>().Where(row => EF.Property<string>(row, Folded) == "").ToListAsync(cancellationToken))
        {
            db.Entry(row).Property(Folded).CurrentValue = SearchText.Of(text(row));
        }
    }
}
