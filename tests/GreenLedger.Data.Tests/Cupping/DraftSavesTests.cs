using GreenLedger.Data.Cupping;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Tests.Cupping;

public sealed class DraftSavesTests(Ledgers ledgers)
{
    private readonly OpenTable _table = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private string Code => _table.Session.Samples[0].Code;

    [Theory, EveryEngine]
    public async Task Many_changes_are_stored_at_once_and_each_has_its_answer(Engine engine)
    {
        await using var ledger = await StoredAsync(engine);

        var outcomes = await SaveAsync(
            ledger,
            Change(0, ("mark.flavor", "7.75")),
            Change(1, ("mark.acidity", "8"), ("note", "plum")),
            Change(2, ("mark.body", "7.8")),
            Change(2, ("note", "")),
            Change(0, ("mark.flavor", "8")) with { Code = "000" });

        Assert.Equal([DraftAnswer.Saved, DraftAnswer.Saved, DraftAnswer.Refused, DraftAnswer.Saved, DraftAnswer.NotFound], outcomes.Select(one => one.Answer));
        Assert.Contains("steps of 0.25", outcomes[2].Refusal, StringComparison.Ordinal);
        var draft = await DraftAsync(ledger);
        Assert.Equal(3, draft.ChangeCount);
        Assert.Equal(("7.75", "8"), (draft.Values["mark.flavor"], draft.Values["mark.acidity"]));
        Assert.False(draft.Values.ContainsKey("note"));
    }

    [Theory, EveryEngine]
    public async Task A_change_that_arrives_again_counts_once_and_has_the_first_answer(Engine engine)
    {
        await using var ledger = await StoredAsync(engine);
        var first = Change(0, ("mark.flavor", "7.75"));
        await SaveAsync(ledger, first, Change(1, ("mark.flavor", "8")));

        var again = Assert.Single(await SaveAsync(ledger, first));

        Assert.Equal((DraftAnswer.Saved, 1), (again.Answer, again.Version));
        var draft = await DraftAsync(ledger);
        Assert.Equal((2, "8"), (draft.ChangeCount, draft.Values["mark.flavor"]));
    }

    [Theory, EveryEngine]
    public async Task The_same_key_twice_in_one_batch_counts_once(Engine engine)
    {
        await using var ledger = await StoredAsync(engine);
        var change = Change(0, ("mark.flavor", "7.75"));

        var outcomes = await SaveAsync(ledger, change, change);

        Assert.All(outcomes, one => Assert.Equal((DraftAnswer.Saved, 1), (one.Answer, one.Version)));
        Assert.Equal(1, (await DraftAsync(ledger)).ChangeCount);
    }

    [Theory, EveryEngine]
    public async Task A_change_of_an_older_version_is_answered_with_the_stored_sheet(Engine engine)
    {
        await using var ledger = await StoredAsync(engine);
        await SaveAsync(ledger, Change(0, ("mark.flavor", "7.75")));

        var clash = Assert.Single(await SaveAsync(ledger, Change(0, ("mark.flavor", "8.5"))));

        Assert.Equal((DraftAnswer.Conflict, 1), (clash.Answer, clash.Version));
        Assert.Equal("7.75", clash.Values["mark.flavor"]);
        Assert.Equal("7.75", (await DraftAsync(ledger)).Values["mark.flavor"]);
    }

    [Theory, EveryEngine]
    public async Task Two_nodes_that_change_one_sheet_at_the_same_moment_lose_nothing(Engine engine)
    {
        await using var ledger = await StoredAsync(engine);

        // Both write on the sheet that nobody has begun: one is stored, the other is told of it.
        var outcomes = await Task.WhenAll(
            Task.Run(() => SaveAsync(ledger, Change(0, ("mark.flavor", "7.75"))), Stop),
            Task.Run(() => SaveAsync(ledger, Change(0, ("mark.flavor", "8.5"))), Stop));

        Assert.Equal([DraftAnswer.Saved, DraftAnswer.Conflict], outcomes.SelectMany(one => one).Select(one => one.Answer).Order());
        Assert.Equal(1, (await DraftAsync(ledger)).ChangeCount);
    }

    [Theory, EveryEngine]
    public async Task A_sheet_handed_in_takes_no_change_until_it_is_opened_again(Engine engine)
    {
        await using var ledger = await StoredAsync(engine);
        await SaveAsync(ledger, Whole(0));
        await InSessionAsync(ledger, async (db, session) => session.HandIn(await db.SheetDrafts.SingleAsync(Stop), await CupperAsync(db), DateTimeOffset.UnixEpoch));

        var closed = Assert.Single(await SaveAsync(ledger, Change(2, ("mark.flavor", "8.5"))));
        await InSessionAsync(ledger, async (db, session) =>
        {
            var sheet = session.Reopen(Code, _table.Cupper.Id, "A slip of the pen", _table.Cupper.Id, DateTimeOffset.UnixEpoch);
            await db.DraftOfAsync(session, sheet, Code, Stop);
        });
        var open = Assert.Single(await SaveAsync(ledger, Change(3, ("mark.flavor", "8.5"))));

        Assert.Equal(DraftAnswer.Refused, closed.Answer);
        Assert.Contains("handed in and closed", closed.Refusal, StringComparison.Ordinal);
        Assert.Equal(DraftAnswer.Saved, open.Answer);
        await using var db = ledger.Open();
        var sheet = (await db.CuppingSessions.Whole().SingleAsync(Stop)).Sheets.Single();
        // 7 × 8.00 + 30 as first handed in.
        Assert.Equal(Score.Of(86m), Assert.Single(sheet.EarlierSheets).Total);
        Assert.True(sheet.IsReopened);
    }

    [Theory, EveryEngine]
    public async Task Nobody_writes_at_a_closed_session_or_at_a_table_of_others(Engine engine)
    {
        _table.Session.Seat(_table.Cupper, [1]);
        await using var ledger = await StoredAsync(engine);

        var stranger = Assert.Single(await SaveAsync(ledger, Change(0, ("mark.flavor", "8")) with { CupperId = _table.Buyer.Id }));
        await SaveAsync(ledger, Whole(0));
        await InSessionAsync(ledger, async (db, session) =>
        {
            session.HandIn(await db.SheetDrafts.SingleAsync(Stop), await CupperAsync(db), DateTimeOffset.UnixEpoch);
            session.Close(_table.Lead.Id, DateTimeOffset.UnixEpoch, new ExpectedErrors(1, 0.5));
        });
        var late = Assert.Single(await SaveAsync(ledger, Change(2, ("mark.flavor", "8"))));

        Assert.Contains("latecomer", stranger.Refusal, StringComparison.Ordinal);
        Assert.Contains("session is closed", late.Refusal, StringComparison.Ordinal);
    }

    [Theory, EveryEngine]
    public async Task A_table_with_its_people_flights_and_duplicates_comes_back_as_it_was_laid_out(Engine engine)
    {
        _table.Session.Pour(_table.CoveredSample, "678", flight: 2, isDuplicate: true);
        _table.Session.Pour(_table.FreeSample, "912", flight: 2, isReference: true);
        _table.Session.Seat(_table.Cupper, [1, 3, 2]);
        _table.Session.LetPour(_table.Lead);
        _table.Session.Prepare(new TablePlan(200, Weight.FromGrams(11m), "filtered"), null, null, Blinding.ByKey);
        _table.Session.PourFlight(2, DateTimeOffset.UnixEpoch);
        await using var ledger = await StoredAsync(engine);

        await using var db = ledger.Open();
        var session = await db.CuppingSessions.Whole().SingleAsync(Stop);

        Assert.Equal(["678", "912"], session.Samples.Where(sample => sample.Flight == 2).Select(sample => sample.Code));
        Assert.Equal((true, false), (session.Poured("678").IsDuplicate, session.Poured("678").IsReference));
        Assert.Equal([1, 3, 2], session.MemberOf(_table.Cupper.Id)!.ServingOrder);
        Assert.False(session.MemberOf(_table.Lead.Id)!.Cups);
        Assert.Equal(new TablePlan(200, Weight.FromGrams(11m), "filtered"), session.Plan);
        Assert.Equal(DateTimeOffset.UnixEpoch, session.Flights.Single().PouredAt);
    }

    private DraftSave Change(int basedOn, params (string Field, string Value)[] values) => new(
        _table.Session.Id, _table.Cupper.Id, Code, Guid.NewGuid(), basedOn, values.ToDictionary(pair => pair.Field, pair => pair.Value));

    private DraftSave Whole(int basedOn) => Change(basedOn, [.. _table.Session.Form.Rules.Scales.Select(line => ("mark." + line.Key, "8"))]);

    private async Task<Person> CupperAsync(LedgerContext db) => (await db.People.FindAsync([_table.Cupper.Id], Stop))!;

    private async Task<Ledger> StoredAsync(Engine engine)
    {
        var ledger = await ledgers.NewAsync(engine);
        await _table.StoreAsync(ledger);
        return ledger;
    }

    private static async Task<IReadOnlyList<DraftOutcome>> SaveAsync(Ledger ledger, params DraftSave[] changes)
    {
        await using var db = ledger.Open();
        return await db.SaveDraftsAsync(changes, DateTimeOffset.UnixEpoch, Stop);
    }

    private static async Task<SheetDraft> DraftAsync(Ledger ledger)
    {
        await using var db = ledger.Open();
        return await db.SheetDrafts.SingleAsync(Stop);
    }

    private async Task InSessionAsync(Ledger ledger, Func<LedgerContext, CuppingSession, Task> act)
    {
        await using var db = ledger.Open();
        await act(db, await db.CuppingSessions.Whole().SingleAsync(session => session.Id == _table.Session.Id, Stop));
        await db.SaveChangesAsync(Stop);
    }
}
