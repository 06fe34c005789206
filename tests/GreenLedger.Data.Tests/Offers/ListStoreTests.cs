using GreenLedger.Data.Offers;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Offers.Reading;
using GreenLedger.Domain.Origins;
using Microsoft.EntityFrameworkCore;
using static GreenLedger.Data.Tests.Offers.ListHouse;

namespace GreenLedger.Data.Tests.Offers;

public sealed class ListStoreTests(Ledgers ledgers)
{
    [Theory, EveryEngine]
    public async Task A_list_is_stored_with_its_lots_offers_prices_producers_and_set_aside_rows(Engine engine)
    {
        await using var ledger = await NewAsync(ledgers, engine);

        await LoadAsync(ledger, List);

        await using var db = ledger.Open();
        var offer = await db.Offers.Include(one => one.Prices).SingleAsync(one => one.Ref == "A-1");
        var lot = await db.Lots.SingleAsync(one => one.Id == offer.LotId);
        Assert.Equal(Weight.FromKilograms(2400), offer.Quantity);
        Assert.Equal(PricePerWeight.Of(9.85m, Currency.Usd, PriceUnit.Kilogram), offer.Price);
        Assert.Equal(Score.Of(87.5m), offer.StatedScore);
        Assert.Null(offer.Differential);
        Assert.Equal(offer.Price, Assert.Single(offer.Prices).Price);
        Assert.Equal(("KE", "Kiamati"), (lot.CountryCode, (await db.Producers.SingleAsync(one => one.Id == lot.ProducerId)).Name));
        Assert.Equal(["fairtrade", "organic"], lot.Certificates);
        Assert.Equal("washed", (await db.ProcessMethods.SingleAsync(method => method.Id == lot.ProcessMethodId)).Name);
        Assert.Equal(2, await db.Producers.CountAsync());
        var list = await db.OfferLists.Include(one => one.SetAside).SingleAsync();
        Assert.Equal((3, 0, 0, 1), (list.Accepted, list.Revised, list.Unchanged, list.SetAsideCount));
        Assert.Equal("186", Assert.Single(list.SetAside).Line[4].Text);
        Assert.False((await db.StoredFiles.SingleAsync()).IsParked);
    }

    [Theory, EveryEngine]
    public async Task An_unknown_process_word_is_kept_as_written(Engine engine)
    {
        await using var ledger = await NewAsync(ledgers, engine);

        await LoadAsync(ledger, List);

        await using var db = ledger.Open();
        var lot = await db.Lots.SingleAsync(one => one.Ref == "A-3");
        Assert.Equal((null, "moon dried"), (lot.ProcessMethodId, lot.ProcessAsWritten));
    }

    [Theory, EveryEngine]
    public async Task The_same_file_twice_leaves_every_table_equal(Engine engine)
    {
        await using var ledger = await NewAsync(ledgers, engine);
        await LoadAsync(ledger, List);
        var before = await RowsAsync(ledger);

        var (outcome, stored) = await LoadAsync(ledger, List);

        Assert.False(stored);
        Assert.Equal((0, 0, 3), (outcome.Accepted.Count, outcome.Revised.Count, outcome.Unchanged.Count));
        Assert.Equal(before, await RowsAsync(ledger));
    }

    [Theory, EveryEngine]
    public async Task A_newer_list_revises_an_offer_and_keeps_the_older_price(Engine engine)
    {
        await using var ledger = await NewAsync(ledgers, engine);
        await LoadAsync(ledger, List);
        var newer = List.Select(row => row.ToArray()).ToArray();
        newer[1][7] = "9.60";

        var (outcome, _) = await LoadAsync(ledger, newer, Today.AddDays(7));

        Assert.Equal((0, 1, 2), (outcome.Accepted.Count, outcome.Revised.Count, outcome.Unchanged.Count));
        await using var db = ledger.Open();
        var offer = await db.Offers.Include(one => one.Prices).SingleAsync(one => one.Ref == "A-1");
        Assert.Equal(9.60m, offer.Price!.Value.Amount);
        Assert.Equal([9.85m, 9.60m], offer.Prices.OrderBy(price => price.On).Select(price => price.Price!.Value.Amount));
        Assert.Equal(3, await db.Offers.CountAsync());
    }

    [Theory, EveryEngine]
    public async Task A_least_lot_is_kept_by_a_list_that_does_not_say_it_and_changed_by_one_that_does(Engine engine)
    {
        await using var ledger = await NewAsync(ledgers, engine);
        await LoadAsync(ledger, List);
        await using (var db = ledger.Open())
        {
            (await db.Offers.SingleAsync(one => one.Ref == "A-1")).SellFrom(7);
            await db.SaveChangesAsync();
        }

        var newer = List.Select(row => row.ToArray()).ToArray();
        newer[1][7] = "9.60";
        await LoadAsync(ledger, newer, Today.AddDays(7));
        await using var read = ledger.Open();
        Assert.Equal((9.60m, 7), await read.Offers.Where(one => one.Ref == "A-1").Select(one => ValueTuple.Create(one.Price!.Value.Amount, one.LeastBags!.Value)).SingleAsync());

        string[][] said = [[.. newer[0], "Minimum lot"], .. newer.Skip(1).Select((row, at) => (string[])[.. row, at == 0 ? "10" : ""])];
        var (outcome, _) = await LoadAsync(ledger, said, Today.AddDays(14));
        Assert.Equal((0, 1, 2), (outcome.Accepted.Count, outcome.Revised.Count, outcome.Unchanged.Count));
        Assert.Equal(10, await read.Offers.Where(one => one.Ref == "A-1").Select(one => one.LeastBags).SingleAsync());
    }

    [Theory, EveryEngine]
    public async Task An_older_list_cannot_undo_a_newer_one(Engine engine)
    {
        await using var ledger = await NewAsync(ledgers, engine);
        await LoadAsync(ledger, List, Today);
        var older = List.Select(row => row.ToArray()).ToArray();
        older[1][7] = "12.00";

        var (outcome, _) = await LoadAsync(ledger, older, Today.AddDays(-30));

        Assert.Equal((0, 0, 3), (outcome.Accepted.Count, outcome.Revised.Count, outcome.Unchanged.Count));
    }

    [Theory, EveryEngine]
    public async Task History_has_one_line_for_a_list_and_none_for_its_rows(Engine engine)
    {
        await using var ledger = await NewAsync(ledgers, engine);

        await LoadAsync(ledger, List);

        await using var db = ledger.Open();
        Assert.Equal(1, await db.Changes.CountAsync(change => change.RecordKind == nameof(OfferList)));
        Assert.Equal(0, await db.Changes.CountAsync(change => change.RecordKind == nameof(Lot) || change.RecordKind == nameof(Offer) || change.RecordKind == nameof(Producer)));
    }

    [Theory, EveryEngine]
    public async Task The_columns_confirmed_for_a_supplier_are_proposed_for_its_next_list(Engine engine)
    {
        await using var ledger = await NewAsync(ledgers, engine);
        await LoadAsync(ledger, List, change: mapping => mapping with
        {
            Columns = [.. mapping.Columns.Select(column => column.Meaning == ColumnMeaning.Certificates ? column with { Meaning = ColumnMeaning.Notes } : column)],
        });
        await using var db = ledger.Open();
        var store = new ListStore(db);
        var look = ListLook.Of(Lines(List), "next.csv");

        var sender = await store.SenderAsync(null, look, await store.ReferenceAsync(Today, default), default);
        var mapping = await store.MappingAsync(sender, look, await store.ReferenceAsync(Today, default), default);

        Assert.Equal("Nordhafen Rohkaffee", sender.Supplier.Name);
        Assert.Equal(ColumnMeaning.Notes, mapping.Columns[^1].Meaning);
    }
}
