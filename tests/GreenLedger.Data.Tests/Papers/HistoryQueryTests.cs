using GreenLedger.Data.Cupping;
using GreenLedger.Data.Papers;
using GreenLedger.Data.People;
using GreenLedger.Data.Tests.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Tests.Papers;

public sealed class HistoryQueryTests(Ledgers ledgers)
{
    /// <summary>An hour after the table is stored, which is just now.</summary>
    private readonly DateTimeOffset _later = DateTimeOffset.UtcNow.AddHours(1);
    private readonly OpenTable _table = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory, EveryEngine]
    public async Task Members_come_back_as_the_values_they_are(Engine engine)
    {
        await using var ledger = await StoredAsync(engine);
        await ChangeLotAsync(ledger, lot => lot.Pack(new Packing(10, Weight.FromKilograms(60), null)));

        var row = (await OfLotAsync(ledger))[0];

        Assert.Equal("Ilse Brandt", row.By);
        Assert.Contains(new HistoryMember(null, "bags", null, 10), row.Members);
        Assert.Contains(new HistoryMember(null, "net weight", null, Weight.FromKilograms(600)), row.Members);
    }

    [Theory, EveryEngine]
    public async Task A_price_comes_back_whole(Engine engine)
    {
        await using var ledger = await StoredAsync(engine);
        var asked = PricePerWeight.FromCentsPerPound(412.50m);
        await using (var db = ledger.Open())
        {
            var offer = await db.Offers.Include(one => one.Prices).SingleAsync(Cancel);
            offer.Revise(new Packing(20, Weight.FromKilograms(60), null), Asking.Outright(asked), new Terms(Incoterm.Fob, "Santos", null), OfferState.OnOffer, null, offer.RevisedOn);
            await db.SaveChangesAsync(Cancel);
        }

        await using var read = ledger.Open();
        var row = (await new HistoryQuery(read).OfAsync(nameof(Offer), _table.Offer.Id.ToString(), _ => true, Seal.None, Cancel))[0];

        Assert.Contains(new HistoryMember(null, "price", null, asked), row.Members);
        Assert.Contains(row.Members, member => member.Part?.StartsWith("offer price", StringComparison.Ordinal) == true);
    }

    [Theory, EveryEngine]
    public async Task What_a_member_points_to_is_called_by_its_name(Engine engine)
    {
        await using var ledger = await StoredAsync(engine);

        var added = Assert.Single(await OfLotAsync(ledger));

        Assert.Contains(new HistoryMember(null, "supplier", null, "Porto Alto"), added.Members);
    }

    [Theory, EveryEngine]
    public async Task A_reader_of_the_samples_alone_learns_no_lots_name(Engine engine)
    {
        await using var ledger = await StoredAsync(engine);
        await using var db = ledger.Open();

        var added = Assert.Single(await new HistoryQuery(db).OfAsync(
            nameof(Sample), _table.FreeSample.Id.ToString(), room => room == "Samples", Seal.None, Cancel));

        Assert.Contains(new HistoryMember(null, "lot", null, "another lot"), added.Members);
    }

    [Theory, EveryEngine]
    public async Task Nothing_sealed_is_shown_to_a_cupper(Engine engine)
    {
        await using var ledger = await StoredAsync(engine);
        await using var db = ledger.Open();
        var seal = await new SealQuery(db).ForAsync(_table.Cupper.Id, _table.Cupper.Roles, Cancel);
        var history = new HistoryQuery(db);

        Assert.Empty(await history.OfAsync(nameof(Sample), _table.CoveredSample.Id.ToString(), _ => true, seal, Cancel));
        Assert.Empty(await history.OfAsync(nameof(Domain.Cupping.CuppingSession), _table.Session.Id.ToString(), _ => true, seal, Cancel));
        Assert.Single(await history.OfAsync(nameof(Sample), _table.FreeSample.Id.ToString(), _ => true, seal, Cancel));
        var all = await history.ListAsync(new HistoryFilter(), 0, 100, _ => true, seal, Cancel);
        var shown = all.Where(row => row.Change is not null).ToList();
        Assert.NotEmpty(shown);
        Assert.All(shown, row => Assert.NotEqual("Vale Fundo", row.Change!.RecordName));
        Assert.DoesNotContain(shown.SelectMany(row => row.Members), member => Equals(member.After, "Vale Fundo"));
    }

    [Theory, EveryEngine]
    public async Task Lines_are_found_by_person_kind_and_day(Engine engine)
    {
        await using var ledger = await StoredAsync(engine);
        await ChangeLotAsync(ledger, lot => lot.Rename("VF-1", "Vale Fundo Alto"));
        await using var db = ledger.Open();
        var history = new HistoryQuery(db);
        var day = DateOnly.FromDateTime(_later.UtcDateTime);

        var rows = await history.ListAsync(new HistoryFilter(_table.Buyer.Id, nameof(Lot), day, day), 0, 50, _ => true, Seal.None, Cancel);

        Assert.Equal("Vale Fundo Alto", Assert.Single(rows).Change!.RecordName);
        Assert.Equal(0, await history.CountAsync(new HistoryFilter(_table.Lead.Id), Cancel));
        Assert.Equal(0, await history.CountAsync(new HistoryFilter(_table.Buyer.Id, To: day.AddDays(-1)), Cancel));
    }

    private async Task<Ledger> StoredAsync(Engine engine)
    {
        var ledger = await ledgers.NewAsync(engine);
        await _table.StoreAsync(ledger);
        return ledger;
    }

    private async Task ChangeLotAsync(Ledger ledger, Action<Lot> change)
    {
        await using var db = ledger.Open(new Who(() => _table.Buyer.Id), new StoppedClock(_later));
        change(await db.Lots.SingleAsync(lot => lot.Id == _table.Covered.Id, Cancel));
        await db.SaveChangesAsync(Cancel);
    }

    private async Task<IReadOnlyList<HistoryRow>> OfLotAsync(Ledger ledger)
    {
        await using var db = ledger.Open();
        return await new HistoryQuery(db).OfAsync(nameof(Lot), _table.Covered.Id.ToString(), _ => true, Seal.None, Cancel);
    }
}
