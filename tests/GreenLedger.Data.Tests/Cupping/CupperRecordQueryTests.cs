using GreenLedger.Data.Cupping;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;

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

    [Theory, EveryEngine]
    public async Task Who_repeats_worse_than_stated_counts_less_by_the_record_of_closed_sessions(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        Submit();
        await _table.StoreAsync(ledger);
        await using var db = ledger.Open();
        db.AttachRange(_table.Cupper, _table.Lead, _table.CoveredSample, _table.Session.Form);
        // Ten sessions with one repeat each, 1.75 points apart (7 × 0.25): s = 1.75 ÷ √2; stated half of it, so that (1/2)² counts.
        db.AddRange(Enumerable.Range(1, CupperWeights.LeastRepeats).Select(day => Repeated(new DateOnly(2026, 1, day))));
        await db.SaveChangesAsync(Cancel);

        var weights = await new CupperRecordQuery(db).WeightsAsync(_table.Session, new CupperWeights(1.75 / Math.Sqrt(2) / 2), Cancel);

        Assert.Equal(0.25, weights.Of(_table.Cupper.Id.ToString()).Weight, 9);
        Assert.Equal(1, weights.Of(_table.Lead.Id.ToString()).Weight);
    }

    private CuppingSession Repeated(DateOnly day)
    {
        var session = new CuppingSession($"Table of {day:d MMMM}", day, _table.Session.Form, 5, _table.Lead.Id);
        session.Pour(_table.CoveredSample, "401");
        session.Pour(_table.CoveredSample, "402", isDuplicate: true);
        session.Submit("401", _table.Cupper, Marks(8.00m), Noon);
        session.Submit("402", _table.Cupper, Marks(8.25m), Noon);
        session.Close(_table.Lead.Id, Noon, new ExpectedErrors(1.0, 0.5));
        return session;
    }

    private void Submit()
    {
        var code = _table.Session.Samples[0].Code;
        _table.Session.Submit(code, _table.Cupper, Marks(8.00m), Noon);
        _table.Session.Submit(code, _table.Lead, Marks(7.50m), Noon);
    }

    private static SheetMarks Marks(decimal mark) => new([.. Enumerable.Repeat(Mark.Of(mark), 7)], [5, 5, 5], [0, 0]);
}
