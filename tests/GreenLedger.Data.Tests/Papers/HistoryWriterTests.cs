using System.Text.Json.Nodes;
using GreenLedger.Data.People;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Tests.Papers;

public sealed class HistoryWriterTests(Ledgers ledgers)
{
    private static readonly DateTimeOffset Morning = new(2026, 11, 25, 9, 30, 0, TimeSpan.Zero);
    private static readonly DateOnly Today = new(2026, 11, 25);
    private static readonly Packing TwentyBags = new(20, Weight.FromKilograms(70), null);
    private static readonly Terms Fob = new(Incoterm.Fob, "Santos", null);

    private readonly StoppedClock _clock = new(Morning);
    private readonly Person _buyer = new("Ilse Brandt", Role.Buyer);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory, EveryEngine]
    public async Task A_record_that_is_added_leaves_who_when_and_what(Engine engine)
    {
        await using var ledger = await NewLedgerAsync(engine);
        var lot = new Lot("AA-1", "Vale Fundo");
        lot.Pack(TwentyBags);

        await SaveAsync(ledger, db => db.Add(lot));

        var line = Assert.Single(await LinesAsync(ledger, nameof(Lot)));
        Assert.Equal(("Vale Fundo", ChangeAct.Added, _buyer.Id, Morning), (line.RecordName, line.Act, line.By!.Value, line.At));
        Assert.Equal(lot.Id.ToString(), line.RecordId);
        Assert.Null(line.Before);
        var after = Json(line.After);
        Assert.Equal(1_400_000_000_000, (long?)after["netWeightMicrograms"]); // worked by hand: 20 × 70 kg, in millionths of a gram
        Assert.Equal("AA-1", (string?)after["ref"]);
        Assert.False(after.ContainsKey("searchText"));
    }

    [Theory, EveryEngine]
    public async Task Only_the_members_that_changed_stand_before_and_after(Engine engine)
    {
        await using var ledger = await NewLedgerAsync(engine);
        var lot = new Lot("AA-1", "Vale Fundo");
        await SaveAsync(ledger, db => db.Add(lot));

        await SaveAsync(ledger, db => db.Set<Lot>().Single(one => one.Id == lot.Id).Rename("AA-1", "Vale Claro"));

        var line = (await LinesAsync(ledger, nameof(Lot)))[1];
        Assert.Equal(ChangeAct.Changed, line.Act);
        Assert.Equal("""{"name":"Vale Fundo"}""", line.Before);
        Assert.Equal("""{"name":"Vale Claro"}""", line.After);
    }

    [Theory, EveryEngine]
    public async Task A_value_that_is_given_for_the_first_time_stands_against_nothing(Engine engine)
    {
        await using var ledger = await NewLedgerAsync(engine);
        var lot = new Lot("AA-1", "Vale Fundo");
        await SaveAsync(ledger, db => db.Add(lot));

        await SaveAsync(ledger, db => db.Set<Lot>().Single(one => one.Id == lot.Id).Prepare(null, null, null, Percent.Of(11.2m)));

        var line = (await LinesAsync(ledger, nameof(Lot)))[1];
        Assert.Equal("""{"statedMoistureTenThousandths":null}""", line.Before);
        Assert.Equal("""{"statedMoistureTenThousandths":112000}""", line.After); // worked by hand: 11.2 points × 10,000
    }

    [Theory, EveryEngine]
    public async Task A_price_that_changes_stands_whole_and_its_history_within_the_offers_line(Engine engine)
    {
        await using var ledger = await NewLedgerAsync(engine);
        var (_, offer) = await AddOfferAsync(ledger);

        await SaveAsync(ledger, db => db.Set<Offer>().Include(one => one.Prices).Single(one => one.Id == offer.Id)
            .Revise(TwentyBags, Asking.Outright(Cents(390m)), Fob, OfferState.OnOffer, null, Today));

        var line = (await LinesAsync(ledger, nameof(Offer)))[1];
        var (before, after) = (Json(line.Before), Json(line.After));
        Assert.Equal(("USD", 4_125_000L), ((string?)before["priceCurrency"], (long?)before["priceMillionths"])); // by hand: 4.125 USD
        Assert.Equal(("USD", 3_900_000L), ((string?)after["priceCurrency"], (long?)after["priceMillionths"]));
        Assert.Single(after, member => member.Key.StartsWith("offerPrice|", StringComparison.Ordinal));
        Assert.DoesNotContain(await LinesAsync(ledger), other => other.RecordKind == nameof(OfferPrice));
    }

    [Theory, EveryEngine]
    public async Task A_record_that_is_removed_leaves_what_it_was(Engine engine)
    {
        await using var ledger = await NewLedgerAsync(engine);
        var lot = new Lot("AA-1", "Vale Fundo");
        await SaveAsync(ledger, db => db.Add(lot));

        await SaveAsync(ledger, db => db.Remove(db.Set<Lot>().Single(one => one.Id == lot.Id)));

        var line = (await LinesAsync(ledger, nameof(Lot)))[1];
        Assert.Equal(ChangeAct.Removed, line.Act);
        Assert.Equal("Vale Fundo", (string?)Json(line.Before)["name"]);
        Assert.Null(line.After);
    }

    [Theory, EveryEngine]
    public async Task Saving_without_a_change_leaves_no_line(Engine engine)
    {
        await using var ledger = await NewLedgerAsync(engine);
        var lot = new Lot("AA-1", "Vale Fundo");
        await SaveAsync(ledger, db => db.Add(lot));

        await SaveAsync(ledger, db => db.Set<Lot>().Single(one => one.Id == lot.Id).Rename("AA-1", "Vale Fundo"));

        Assert.Single(await LinesAsync(ledger, nameof(Lot)));
    }

    [Theory, EveryEngine]
    public async Task A_refused_save_leaves_no_line_and_the_next_one_leaves_one(Engine engine)
    {
        await using var ledger = await NewLedgerAsync(engine);
        await SaveAsync(ledger, db => db.Add(new Supplier("Porto Alto", SupplierKind.Exporter, null)));
        await using var db = ledger.Open(Who(), _clock);
        var twin = new Supplier("Porto Alto", SupplierKind.Exporter, null);
        db.Add(twin);
        await Assert.ThrowsAsync<DbUpdateException>(() => db.SaveChangesAsync(Cancel));

        twin.Describe("Porto Baixo", SupplierKind.Exporter, null, null, null);
        await db.SaveChangesAsync(Cancel);

        Assert.Equal(["Porto Alto", "Porto Baixo"], (await LinesAsync(ledger, nameof(Supplier))).Select(line => line.RecordName));
    }

    [Theory, EveryEngine]
    public async Task The_hash_of_a_token_is_never_written(Engine engine)
    {
        await using var ledger = await NewLedgerAsync(engine);

        await SaveAsync(ledger, db => db.Add(new ApiToken(_buyer.Id, "Nightly prices", "5e884898da28", Morning)));

        var line = Assert.Single(await LinesAsync(ledger, nameof(ApiToken)));
        Assert.Contains("Nightly prices", line.After, StringComparison.Ordinal);
        Assert.DoesNotContain("5e884898da28", line.After, StringComparison.Ordinal);
    }

    [Theory, EveryEngine]
    public async Task Files_and_the_work_of_nodes_have_no_line(Engine engine)
    {
        await using var ledger = await NewLedgerAsync(engine);

        await SaveAsync(ledger, db =>
        {
            db.Add(new StoredFile("list.csv", "text/csv", [1, 2, 3], _buyer.Id, Morning));
            db.Add(new Job("import", "{}", _buyer.Id, Morning));
        });

        Assert.DoesNotContain(await LinesAsync(ledger), line => line.RecordKind != nameof(Person));
    }

    private Who Who() => new(() => _buyer.Id);

    private async Task<Ledger> NewLedgerAsync(Engine engine)
    {
        var ledger = await ledgers.NewAsync(engine);
        await SaveAsync(ledger, db => db.Add(_buyer));
        return ledger;
    }

    private async Task<(Lot Lot, Offer Offer)> AddOfferAsync(Ledger ledger)
    {
        var supplier = new Supplier("Porto Alto", SupplierKind.Exporter, null);
        var lot = new Lot("AA-1", "Vale Fundo", supplier.Id);
        var offer = new Offer(supplier.Id, lot, TwentyBags, Asking.Outright(Cents(412.50m)), Fob, OfferState.OnOffer, Today);
        await SaveAsync(ledger, db => db.AddRange(supplier, lot, offer));
        return (lot, offer);
    }

    private static PricePerWeight Cents(decimal cents) => PricePerWeight.FromCentsPerPound(cents);

    private async Task SaveAsync(Ledger ledger, Action<LedgerContext> change)
    {
        await using var db = ledger.Open(Who(), _clock);
        change(db);
        await db.SaveChangesAsync(Cancel);
    }

    private static async Task<List<Change>> LinesAsync(Ledger ledger, string? kind = null)
    {
        await using var db = ledger.Open();
        return await db.Changes.Where(line => kind == null || line.RecordKind == kind).OrderBy(line => line.Id).ToListAsync(Cancel);
    }

    private static JsonObject Json(string? text) => Assert.IsType<JsonObject>(JsonNode.Parse(text!));
}
