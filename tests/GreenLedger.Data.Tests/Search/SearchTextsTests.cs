using GreenLedger.Data.Cupping;
using GreenLedger.Data.Offers;
using GreenLedger.Data.Tests.Offers;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Tests.Search;

public sealed class SearchTextsTests(Ledgers ledgers)
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory, EveryEngine]
    public async Task Sessions_and_lists_are_found_without_regard_to_accents_and_capitals(Engine engine)
    {
        await using var ledger = await StoredAsync(engine);

        Assert.Equal((1, 1), (await SessionsAsync(ledger, "ébène"), await SessionsAsync(ledger, "EBENE and")));
        Assert.Equal((1, 1), (await ListsAsync(ledger, "órgânico.csv"), await ListsAsync(ledger, "cafe org")));
        Assert.Equal((0, 0), (await SessionsAsync(ledger, "oak"), await ListsAsync(ledger, "oak")));
    }

    [Theory, EveryEngine]
    public async Task What_an_older_ledger_stored_is_found_after_it_was_brought_up_to_date(Engine engine)
    {
        await using var ledger = await StoredAsync(engine);
        await using (var older = ledger.Open())
        {
            // The migration adds the columns empty.
            await older.People.ExecuteUpdateAsync(set => set.SetProperty(person => person.SearchText, ""), Stop);
            await older.OfferLists.ExecuteUpdateAsync(set => set.SetProperty(list => list.SearchText, ""), Stop);
            await older.CuppingSessions.ExecuteUpdateAsync(set => set.SetProperty(session => session.SearchText, ""), Stop);
        }

        Assert.Equal((0, 0), (await SessionsAsync(ledger, "ebene"), await ListsAsync(ledger, "cafe")));
        await using (var starting = ledger.Open())
        {
            await LedgerDatabase.PrepareAsync(starting, Stop);
        }

        Assert.Equal((1, 1), (await SessionsAsync(ledger, "ebene"), await ListsAsync(ledger, "cafe")));
        await using var db = ledger.Open();
        Assert.Equal("tilda brand", (await db.People.SingleAsync(Stop)).SearchText);
        Assert.Equal(3, await db.Changes.CountAsync(
            change => change.RecordKind == nameof(Person) || change.RecordKind == nameof(OfferList) || change.RecordKind == nameof(CuppingSession), Stop));
    }

    private async Task<Ledger> StoredAsync(Engine engine)
    {
        var ledger = await ListHouse.NewAsync(ledgers, engine);
        await ListHouse.LoadAsync(ledger, ListHouse.List, fileName: "CAFÉ ÓRGÂNICO.csv");
        await using var db = ledger.Open();
        await CuppingReference.FillAsync(db, Stop);
        var form = await db.CuppingForms.FirstAsync(Stop);
        db.Add(new CuppingSession("ÉBÈNE and oranges", ListHouse.Today, form, 5, ListHouse.Buyer.Id));
        await db.SaveChangesAsync(Stop);
        return ledger;
    }

    private static async Task<int> SessionsAsync(Ledger ledger, string typed)
    {
        await using var db = ledger.Open();
        return await new SessionQuery(db).CountAsync(new SessionFilter(typed), Stop);
    }

    private static async Task<int> ListsAsync(Ledger ledger, string typed)
    {
        await using var db = ledger.Open();
        return await new OfferListQuery(db).CountAsync(new OfferListFilter(typed), Stop);
    }
}
