using GreenLedger.Data.Cupping;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;

namespace GreenLedger.Data.Tests.Cupping;

public sealed class CupperRecordQueryTests(Ledgers ledgers)
{
    private static readonly DateTimeOffset Noon = new(2026, 11, 25, 12, 0, 0, TimeSpan.Zero);
    private readonly OpenTable _table = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory, EveryEngine]
    public async Task An_open_session_is_in_nobodys_record(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        Submit();
        await _table.StoreAsync(ledger);
        await using var db = ledger.Open();

        Assert.Empty(await new CupperRecordQuery(db).CuppersAsync(Cancel));
        Assert.Empty(await new CupperRecordQuery(db).FormsAsync(_table.Cupper.Id, Cancel));
    }

    [Theory, EveryEngine]
    public async Task A_closed_session_is_in_the_record_of_each_who_cupped_blind_with_the_scores_of_all(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        Submit();
        // Noor looked behind the codes and scored all the same: the session says nothing about her.
        _table.Session.OpenKey(_table.Lead.Id, Noon);
        _table.Session.Close(_table.Lead.Id, Noon, new ExpectedErrors(1.0, 0.5));
        await _table.StoreAsync(ledger);
        await using var db = ledger.Open();
        var query = new CupperRecordQuery(db);

        var form = Assert.Single(await query.FormsAsync(_table.Cupper.Id, Cancel));
        var session = Assert.Single(await query.HistoryAsync(_table.Cupper.Id, form.Id, Cancel));

        Assert.Equal((_table.Session.FormId, 1), (form.Id, form.Sessions));
        Assert.Equal(_table.Session.Id, session.Id);
        // 7 × 8.00 + 30 and 7 × 7.50 + 30, both of the one sample.
        Assert.Equal([82.5, 86.0], session.Scores.Select(score => score.Points).Order());
        Assert.Equal(86.0, session.Scores.Single(score => score.Cupper == session.Cupper).Points);
        Assert.Empty(await query.FormsAsync(_table.Lead.Id, Cancel));
        Assert.Equal(["Noor Haddad", "Tomas Vik"], (await query.CuppersAsync(Cancel)).Select(row => row.Name));
        Assert.All(await query.CuppersAsync(Cancel), row => Assert.Equal((1, 1, _table.Session.HeldOn), (row.Sessions, row.Sheets, row.LastHeldOn)));
    }

    private void Submit()
    {
        var code = _table.Session.Samples[0].Code;
        _table.Session.Submit(code, _table.Cupper, Marks(8.00m), Noon);
        _table.Session.Submit(code, _table.Lead, Marks(7.50m), Noon);
    }

    private static SheetMarks Marks(decimal mark) => new([.. Enumerable.Repeat(Mark.Of(mark), 7)], [5, 5, 5], [0, 0]);
}
