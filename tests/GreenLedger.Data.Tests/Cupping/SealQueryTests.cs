using GreenLedger.Data.Cupping;
using GreenLedger.Data.Samples;
using GreenLedger.Data.Search;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Tests.Cupping;

public sealed class SealQueryTests(Ledgers ledgers)
{
    private readonly OpenTable _table = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory, EveryEngine]
    public async Task A_cupper_is_told_nothing_of_the_coffee_under_the_codes(Engine engine)
    {
        await using var ledger = await StoredAsync(engine);

        var seal = await SealAsync(ledger, _table.Cupper);

        Assert.True(seal.Covers(_table.Covered.Id.Value));
        Assert.True(seal.Covers(_table.CoveredSample.Id.Value));
        Assert.True(seal.Covers(_table.Offer.Id.Value));
        Assert.True(seal.Covers(_table.Session.Id.Value));
        Assert.False(seal.Covers(_table.Free.Id.Value));
        Assert.False(seal.Covers(_table.FreeSample.Id.Value));
    }

    [Theory, EveryEngine]
    public async Task Whoever_laid_the_table_out_knows_what_is_on_it(Engine engine)
    {
        await using var ledger = await StoredAsync(engine);

        Assert.False((await SealAsync(ledger, _table.Lead)).Covers(_table.CoveredSample.Id.Value));
    }

    [Theory, EveryEngine]
    public async Task The_session_itself_is_sealed_for_everybody_since_its_history_would_tell_the_key_unrecorded(Engine engine)
    {
        await using var ledger = await StoredAsync(engine);

        Assert.True((await SealAsync(ledger, _table.Lead)).Covers(_table.Session.Id.Value));

        await ChangeSessionAsync(ledger, session => session.OpenKey(_table.Lead.Id, DateTimeOffset.UnixEpoch));
        Assert.True((await SealAsync(ledger, _table.Lead)).Covers(_table.Session.Id.Value));
    }

    [Theory, EveryEngine]
    public async Task At_a_table_of_few_coffees_a_cupper_is_told_of_no_coffee_since_a_gap_would_name_them(Engine engine)
    {
        _table.Session.Seat(_table.Buyer, [1]);
        await using var ledger = await StoredAsync(engine);

        var seal = await SealAsync(ledger, _table.Buyer);

        Assert.True(seal.IsOfEveryCoffee);
        Assert.True(seal.Covers(_table.Free.Id.Value));
        await using var db = ledger.Open();
        Assert.Equal(0, await db.Samples.Unsealed(seal).CountAsync(Cancel));
        Assert.Empty(await new SearchQuery(db).FindAsync("Vale", 5, _ => true, seal, Cancel));
        Assert.NotEmpty(await new SearchQuery(db).FindAsync("Vale", 5, _ => true, Seal.None, Cancel));
    }

    [Theory, EveryEngine]
    public async Task Another_lead_cupper_cups_blind_until_opening_the_key(Engine engine)
    {
        await using var ledger = await StoredAsync(engine);
        var other = new Person("Aino Salo", Role.LeadCupper);
        await using (var db = ledger.Open())
        {
            db.Add(other);
            await db.SaveChangesAsync(Cancel);
        }

        Assert.True((await SealAsync(ledger, other)).Covers(_table.CoveredSample.Id.Value));

        await ChangeSessionAsync(ledger, session => session.OpenKey(other.Id, DateTimeOffset.UnixEpoch));
        Assert.False((await SealAsync(ledger, other)).Covers(_table.CoveredSample.Id.Value));
    }

    [Theory, EveryEngine]
    public async Task A_buyer_who_does_not_cup_sees_every_coffee_but_not_which_code_it_has(Engine engine)
    {
        await using var ledger = await StoredAsync(engine);

        var seal = await SealAsync(ledger, _table.Buyer);

        Assert.False(seal.Covers(_table.Covered.Id.Value));
        Assert.False(seal.Covers(_table.CoveredSample.Id.Value));
        Assert.True(seal.Covers(_table.Session.Id.Value));
    }

    [Theory, EveryEngine]
    public async Task A_viewer_is_not_told_which_code_a_coffee_has_and_after_closing_nothing_is_sealed(Engine engine)
    {
        await using var ledger = await StoredAsync(engine);
        var viewer = new Person("Vera Holm", Role.Viewer);

        Assert.True((await SealAsync(ledger, viewer)).Covers(_table.Session.Id.Value));

        await ChangeSessionAsync(ledger, session =>
        {
            session.Submit(session.Samples[0].Code, _table.Cupper, new SheetMarks([.. Enumerable.Repeat(Mark.Of(8m), 7)], [5, 5, 5], [0, 0]), DateTimeOffset.UnixEpoch);
            session.Close(_table.Lead.Id, DateTimeOffset.UnixEpoch, new ExpectedErrors(1, 0.5));
        });
        Assert.True((await SealAsync(ledger, viewer)).IsEmpty);
        Assert.True((await SealAsync(ledger, _table.Cupper)).IsEmpty);
    }

    [Theory, EveryEngine]
    public async Task On_the_panel_nobody_is_told_whatever_other_roles_they_hold(Engine engine)
    {
        var everything = new Person("Runa Berg", Role.Cupper | Role.LeadCupper | Role.Buyer | Role.Viewer | Role.Administrator);
        _table.PourTwoMore();
        _table.Session.Seat(everything, [1, 2, 3]);
        await using var ledger = await ledgers.NewAsync(engine);
        await using (var db = ledger.Open())
        {
            db.Add(everything);
            await db.SaveChangesAsync(Cancel);
        }

        await _table.StoreAsync(ledger);
        await ChangeSessionAsync(ledger, session => session.OpenKey(everything.Id, DateTimeOffset.UnixEpoch));

        var seal = await SealAsync(ledger, everything);

        Assert.True(seal.Covers(_table.Session.Id.Value));
        Assert.True(seal.Covers(_table.Covered.Id.Value));
        Assert.True(seal.Covers(_table.Offer.Id.Value));
        Assert.False(seal.Covers(_table.Free.Id.Value));
    }

    [Theory, EveryEngine]
    public async Task Whoever_laid_the_table_out_and_cups_is_not_told_which_code_a_coffee_has(Engine engine)
    {
        _table.Session.Seat(_table.Lead, [1]);
        await using var ledger = await StoredAsync(engine);

        var seal = await SealAsync(ledger, _table.Lead);

        Assert.True(seal.Covers(_table.Session.Id.Value));
        Assert.False(seal.Covers(_table.Covered.Id.Value));
    }

    private async Task<Ledger> StoredAsync(Engine engine)
    {
        var ledger = await ledgers.NewAsync(engine);
        await _table.StoreAsync(ledger);
        return ledger;
    }

    private async Task ChangeSessionAsync(Ledger ledger, Action<CuppingSession> change)
    {
        await using var db = ledger.Open();
        change(await db.CuppingSessions.Whole().SingleAsync(session => session.Id == _table.Session.Id, Cancel));
        await db.SaveChangesAsync(Cancel);
    }

    private static async Task<Seal> SealAsync(Ledger ledger, Person person)
    {
        await using var db = ledger.Open();
        return await new SealQuery(db).ForAsync(person.Id, person.Roles, Cancel);
    }
}
