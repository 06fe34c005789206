using GreenLedger.Data.Cupping;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Tests.Cupping;

public sealed class ResultQueryTests(Ledgers ledgers)
{
    private static readonly DateTimeOffset Noon = new(2026, 11, 25, 12, 0, 0, TimeSpan.Zero);
    private readonly OpenTable _table = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory, EveryEngine]
    public async Task An_open_session_has_no_result(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        await _table.StoreAsync(ledger);
        await using var db = ledger.Open();

        Assert.Null(await new ResultQuery(db, new SessionQuery(db)).FindAsync(_table.Session.Id, Cancel));
    }

    [Theory, EveryEngine]
    public async Task Weights_discussed_scores_and_who_opened_the_key_are_read_as_they_were_stored(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        _table.Session.OpenKey(_table.Cupper.Id, Noon);
        _table.Session.Submit(_table.Session.Samples[0].Code, _table.Cupper, new SheetMarks([.. Enumerable.Repeat(Mark.Of(8.00m), 7)], [5, 5, 5], [0, 0]), Noon);
        var rule = new CupperWeights(0.75);
        _table.Session.Close(_table.Lead.Id, Noon, new ExpectedErrors(1.0, 0.5), weights: new PanelWeights(
            rule, new Dictionary<string, Repeatability> { [_table.Cupper.Id.ToString()] = new(1.5, 12, 1.1, 2.5) }));
        await _table.StoreAsync(ledger);
        await using (var discussing = ledger.Open())
        {
            var session = await discussing.CuppingSessions.Whole().SingleAsync(session => session.Id == _table.Session.Id, Cancel);
            session.Result!.Discuss(_table.CoveredSample.Id, 85.25m, "One cup was cold", _table.Lead.Id, Noon.AddHours(1));
            await discussing.SaveChangesAsync(Cancel);
        }

        await using var db = ledger.Open();
        var found = await new ResultQuery(db, new SessionQuery(db)).FindAsync(_table.Session.Id, Cancel);

        var discussed = Assert.Single(found!.Discussed);
        Assert.Equal((85.25m, "One cup was cold", "Noor Haddad", Noon.AddHours(1)), (discussed.Score.Points.Points, discussed.Score.Reason, discussed.By, discussed.Score.At));
        Assert.Equal(rule.Rule, found.Session.Result!.WeightRule);
        // (0.75 ÷ 1.50)².
        Assert.Equal((0.25, "Counts 0.25: repeats within 1.50 points (12 repeats)."), (found.Session.Result.Cuppers[0].Weight, found.Session.Result.Cuppers[0].WeightReason));
        Assert.Equal("Tomas Vik", Assert.Single(found.NotBlind).Value);
        Assert.Equal("ACDEF", Assert.Single(found.Key).LabelCode);
    }
}
