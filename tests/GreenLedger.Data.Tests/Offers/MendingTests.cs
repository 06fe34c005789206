using GreenLedger.Data.Offers;
using GreenLedger.Data.People;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Offers.Reading;
using Microsoft.EntityFrameworkCore;
using static GreenLedger.Data.Tests.Offers.ListHouse;

namespace GreenLedger.Data.Tests.Offers;

/// <summary>Row A-4 of the list is set aside, since no form gives 186 points.</summary>
public sealed class MendingTests(Ledgers ledgers)
{
    [Theory, EveryEngine]
    public async Task A_mended_row_becomes_an_offer_of_its_list(Engine engine)
    {
        await using var ledger = await NewAsync(ledgers, engine);
        await LoadAsync(ledger, List);

        var taken = await MendAsync(ledger, cells => cells[4] = Cell.Of("86"));

        await using var db = ledger.Open();
        var offer = await db.Offers.Include(one => one.Prices).SingleAsync(one => one.Ref == "A-4");
        var row = await db.SetAsideRows.SingleAsync();
        Assert.True(taken.IsNew);
        Assert.Equal(Score.Of(86m), offer.StatedScore);
        Assert.Equal(Weight.FromKilograms(828m), offer.Quantity); // worked by hand: 12 bags of 69 kg
        Assert.Equal(row.ListId, Assert.Single(offer.Prices).ListId);
        Assert.Equal((Buyer.Id, offer.Id, "86"), (row.MendedBy, row.OfferId, row.Line[4].Text));
        Assert.Equal(2, await db.Producers.CountAsync());
    }

    [Theory, EveryEngine]
    public async Task A_mended_row_of_a_known_reference_revises_its_offer_and_the_history_says_from_what(Engine engine)
    {
        await using var ledger = await NewAsync(ledgers, engine);
        await LoadAsync(ledger, List);

        var taken = await MendAsync(ledger, cells => (cells[0], cells[4], cells[7]) = (Cell.Of("A-3"), Cell.Of("85.25"), Cell.Of("6.90")));

        await using var db = ledger.Open();
        var offer = await db.Offers.Include(one => one.Prices).SingleAsync(one => one.Ref == "A-3");
        Assert.True(taken.IsRevised);
        Assert.Equal(6.90m, offer.Price!.Value.Amount);
        Assert.Equal(2, offer.Prices.Count);
        Assert.Equal(3, await db.Offers.CountAsync());
        var change = await db.Changes.SingleAsync(one => one.RecordKind == nameof(Offer));
        Assert.Contains("7100000", change.Before, StringComparison.Ordinal);
    }

    [Theory, EveryEngine]
    public async Task A_row_is_taken_in_once(Engine engine)
    {
        await using var ledger = await NewAsync(ledgers, engine);
        await LoadAsync(ledger, List);
        await MendAsync(ledger, cells => cells[4] = Cell.Of("86"));

        var again = await Assert.ThrowsAsync<RuleBrokenException>(() => MendAsync(ledger, cells => cells[4] = Cell.Of("87")));

        await using var db = ledger.Open();
        Assert.Contains("already", again.Message, StringComparison.Ordinal);
        Assert.Equal(Score.Of(86m), (await db.Offers.SingleAsync(one => one.Ref == "A-4")).StatedScore);
    }

    [Theory, EveryEngine]
    public async Task The_same_file_after_mending_leaves_every_table_equal(Engine engine)
    {
        await using var ledger = await NewAsync(ledgers, engine);
        await LoadAsync(ledger, List);
        await MendAsync(ledger, cells => cells[4] = Cell.Of("86"));
        var before = await RowsAsync(ledger);

        var (_, stored) = await LoadAsync(ledger, List);

        Assert.False(stored);
        Assert.Equal(before, await RowsAsync(ledger));
    }

    private static async Task<MendedRow> MendAsync(Ledger ledger, Action<Cell[]> change)
    {
        await using var db = ledger.Open(new Who(() => Buyer.Id));
        var store = new ListStore(db);
        var mending = new Mending(db, store);
        var set = (await mending.FindAsync((await db.SetAsideRows.SingleAsync()).Id, default))!;
        var cells = set.Row.Line.Cells.ToArray();
        change(cells);
        var (row, problems) = ListReading.Mend(set.Row.Line with { Cells = cells }, set.Mapping, await store.ReferenceAsync(Today, default));
        Assert.Empty(problems);
        return await mending.TakeInAsync(set, cells, row!, Buyer.Id, Now, default);
    }
}
