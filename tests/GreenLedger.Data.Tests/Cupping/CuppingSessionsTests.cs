using GreenLedger.Data.Cupping;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Tests.Cupping;

public sealed class CuppingSessionsTests(Ledgers ledgers)
{
    private static readonly DateTimeOffset Noon = new(2026, 11, 25, 12, 0, 0, TimeSpan.Zero);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory, EveryEngine]
    public async Task A_closed_session_comes_back_whole(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var id = await CuppedAsync(ledger, close: true);

        await using var db = ledger.Open();
        var session = await db.CuppingSessions.Whole().SingleAsync(session => session.Id == id, Stop);

        Assert.Equal(CuppingForm.HundredPointId, session.Form.Id);
        Assert.Equal(10, session.Form.Rules.Attributes.Count);
        Assert.Equal(0.25m, session.Form.Rules.Attributes[0].Step);
        Assert.Equal([1, 2], session.Samples.Select(sample => sample.Position));
        Assert.Equal(4, session.Sheets.Count);
        var sheet = session.Sheets.Single(sheet => sheet.CupperName == "Ines Duarte" && sheet.SampleId == session.Samples[0].SampleId);
        Assert.Equal([800, 800, 800, 800, 800, 800, 800], sheet.MarkHundredths);
        Assert.Equal([5, 5, 4], sheet.GoodCups);
        Assert.Equal(["plum", "cocoa"], sheet.Descriptors);
        Assert.Equal(Score.Of(84m), sheet.Total);
        Assert.Equal(Score.Of(84.25m), sheet.StatedTotal);
        Assert.Equal(2, session.Result!.Samples.Count);
        Assert.Equal(0, session.Result.Cuppers.Sum(cupper => cupper.Effect.Millionths));
        Assert.Single(session.Result.Samples[0].Loadings);
        Assert.Equal(Noon, session.ClosedAt);
    }

    [Theory, EveryEngine]
    public async Task What_each_cupper_counted_comes_back_with_the_result(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var id = await CuppedAsync(ledger, close: false);
        await using (var db = ledger.Open())
        {
            var open = await db.CuppingSessions.Whole().SingleAsync(session => session.Id == id, Stop);
            var ines = open.Sheets.First(sheet => sheet.CupperName == "Ines Duarte").CupperKey;
            var weights = new PanelWeights(new CupperWeights(0.50), new Dictionary<string, Repeatability> { [ines] = new(1.00, 20, 0.77, 1.44) });
            db.Add(PanelResult.Of(open, new ExpectedErrors(1, 0.5), weights));
            await db.SaveChangesAsync(Stop);
        }

        await using var again = ledger.Open();
        var session = await again.CuppingSessions.Whole().SingleAsync(session => session.Id == id, Stop);

        // (0.50 ÷ 1.00)², the rule of CupperWeights.
        Assert.Equal([0.25, 1.0], session.Result!.Cuppers.Select(cupper => cupper.Weight).Order());
        Assert.StartsWith("Counts 0.25", session.Result.Cuppers.Single(cupper => cupper.CupperName == "Ines Duarte").WeightReason, StringComparison.Ordinal);
        Assert.StartsWith("Cuppers whose repeatability", session.Result.WeightRule, StringComparison.Ordinal);
    }

    [Theory, EveryEngine]
    public async Task A_second_sheet_of_one_cupper_is_refused_by_the_database_too(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var id = await CuppedAsync(ledger, close: false);
        await using var first = ledger.Open();
        await using var second = ledger.Open();
        var (one, other) = (await LoadAsync(first, id), await LoadAsync(second, id));

        Submit(one.Session, one.Late, 7m);
        await first.SaveChangesAsync(Stop);
        Submit(other.Session, other.Late, 8m);

        await Assert.ThrowsAsync<DbUpdateException>(() => second.SaveChangesAsync(Stop));
    }

    [Theory, EveryEngine]
    public async Task A_sheet_handed_in_before_the_closing_is_in_the_result(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var id = await CuppedAsync(ledger, close: false);
        await using var cupping = ledger.Open();
        await using var turn = await cupping.TakeTurnAsync(id, Stop);
        var (session, late) = await LoadAsync(cupping, id);

        // The closing begins while the sheet is being handed in: it has to wait for its turn, however long that takes.
        var closing = Task.Run(() => CloseAsync(ledger, id), Stop);
        Submit(session, late, 7m);
        await cupping.SaveChangesAsync(Stop);
        await turn.CommitAsync(Stop);
        await closing;

        await using var db = ledger.Open();
        var closed = await db.CuppingSessions.Whole().SingleAsync(one => one.Id == id, Stop);
        Assert.Equal(5, closed.Sheets.Count);
        Assert.Equal(5, closed.Result!.Sheets);
    }

    [Theory, EveryEngine]
    public async Task A_sheet_handed_in_after_the_closing_is_refused(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var id = await CuppedAsync(ledger, close: false);
        var closing = ledger.Open();
        var turn = await closing.TakeTurnAsync(id, Stop);
        var session = await closing.CuppingSessions.Whole().SingleAsync(one => one.Id == id, Stop);

        var handingIn = Task.Run(() => HandInAsync(ledger, id), Stop);
        session.Close(session.LaidOutBy!.Value, Noon, new ExpectedErrors(1, 0.5));
        await closing.SaveChangesAsync(Stop);
        await turn.CommitAsync(Stop);
        await turn.DisposeAsync();
        await closing.DisposeAsync();

        var refused = await Assert.ThrowsAsync<RuleBrokenException>(() => handingIn);
        Assert.Contains("closed", refused.Message, StringComparison.Ordinal);
        await using var db = ledger.Open();
        Assert.Equal(4, await db.ScoreSheets.CountAsync(Stop));
    }

    [Theory, EveryEngine]
    public async Task A_correction_of_an_older_version_of_a_sheet_is_refused(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var id = await CuppedAsync(ledger, close: false);
        await using var first = ledger.Open();
        await using var second = ledger.Open();
        var (one, other) = (await LoadAsync(first, id), await LoadAsync(second, id));

        await CorrectAsync(first, one.Session, 7m);
        await first.SaveChangesAsync(Stop);
        await CorrectAsync(second, other.Session, 8.5m);

        await Assert.ThrowsAsync<DbUpdateConcurrencyException>(() => second.SaveChangesAsync(Stop));
    }

    [Theory, EveryEngine]
    public async Task Results_of_a_lot_are_found_and_sorted_in_the_database(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        await CuppedAsync(ledger, close: true);

        await using var db = ledger.Open();
        var best = await db.SampleResults
            .Where(result => result.FormId == CuppingForm.HundredPointId && result.Fitted.Millionths > 80_000_000)
            .OrderByDescending(result => result.Fitted.Millionths)
            .FirstAsync(Stop);

        // Worked by hand: 7 × 8.00 + 30 = 86.00 and 6 × 7.75 + 8.50 + 30 = 85.00 average to 85.50 for the second lot.
        Assert.Equal(Score.Of(85.5m), best.PlainMean);
    }

    [Theory, EveryEngine]
    public async Task A_new_ledger_has_the_published_forms_once(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        await using (var db = ledger.Open())
        {
            await LedgerDatabase.PrepareAsync(db, Stop);
            await LedgerDatabase.PrepareAsync(db, Stop);
        }

        await using var again = ledger.Open();
        var forms = await again.CuppingForms.OrderBy(form => form.Code).ToListAsync(Stop);

        Assert.Equal(["100-point", "affective"], forms.Select(form => form.Code));
        Assert.Equal(0.65625m, forms[1].Rules.Slope);
    }

    private static async Task<(CuppingSession Session, Person Late)> LoadAsync(LedgerContext db, Id<CuppingSession> id) => (
        await db.CuppingSessions.Whole().SingleAsync(session => session.Id == id, Stop),
        await db.People.SingleAsync(person => person.Name == "Late Guest", Stop));

    private static void Submit(CuppingSession session, Person cupper, decimal mark) =>
        session.Submit(session.Samples[0].Code, cupper, Marks(mark, 5), Noon);

    private static async Task CorrectAsync(LedgerContext db, CuppingSession session, decimal mark) =>
        Again(session, await db.People.SingleAsync(person => person.Name == "Ines Duarte", Stop), mark);

    private static void Again(CuppingSession session, Person cupper, decimal mark)
    {
        session.Reopen(session.Samples[0].Code, cupper.Id, "A slip of the pen", cupper.Id, Noon);
        session.Correct(session.Samples[0].Code, cupper, Marks(mark, 5), Noon);
    }

    private static async Task CloseAsync(Ledger ledger, Id<CuppingSession> id)
    {
        await using var db = ledger.Open();
        await using var turn = await db.TakeTurnAsync(id, Stop);
        var session = await db.CuppingSessions.Whole().SingleAsync(one => one.Id == id, Stop);
        session.Close(session.LaidOutBy!.Value, Noon, new ExpectedErrors(1, 0.5));
        await db.SaveChangesAsync(Stop);
        await turn.CommitAsync(Stop);
    }

    private static async Task HandInAsync(Ledger ledger, Id<CuppingSession> id)
    {
        await using var db = ledger.Open();
        await using var turn = await db.TakeTurnAsync(id, Stop);
        var (session, late) = await LoadAsync(db, id);
        Submit(session, late, 7m);
        await db.SaveChangesAsync(Stop);
        await turn.CommitAsync(Stop);
    }

    private static SheetMarks Marks(decimal mark, int sweet) =>
        new([.. Enumerable.Repeat(Mark.Of(mark), 7)], [5, 5, sweet], [0, 0]);

    private static async Task<Id<CuppingSession>> CuppedAsync(Ledger ledger, bool close)
    {
        await using var db = ledger.Open();
        await LedgerDatabase.PrepareAsync(db, Stop);
        var ines = new Person("Ines Duarte", Role.Cupper);
        var jonas = new Person("Jonas Weber", Role.LeadCupper);
        var lots = new[] { new Lot("A-1", "Loma Alta"), new Lot("B-2", "Kiharu AA") };
        var samples = lots.Select((lot, index) => new Sample(lot.Id, SampleKind.Offer, $"QX{index}", new DateOnly(2026, 11, 20), Weight.FromGrams(300m))).ToArray();
        db.AddRange([ines, jonas, new Person("Late Guest", Role.Cupper), .. lots, .. samples]);
        var form = await db.CuppingForms.SingleAsync(form => form.Id == CuppingForm.HundredPointId, Stop);
        var session = new CuppingSession("Tuesday table", new DateOnly(2026, 11, 24), form, 5, jonas.Id);
        foreach (var sample in samples)
        {
            session.Pour(sample, new Random(1));
        }

        session.Submit(session.Samples[0].Code, ines, Marks(8m, 4), Noon).Remark(["plum", "cocoa", "Plum"], null, 84.25m);
        session.Submit(session.Samples[0].Code, jonas, Marks(7.75m, 5), Noon);
        session.Submit(session.Samples[1].Code, ines, Marks(8m, 5), Noon);
        session.Submit(session.Samples[1].Code, jonas, new SheetMarks([.. Enumerable.Repeat(Mark.Of(7.75m), 6), Mark.Of(8.5m)], [5, 5, 5], [0, 0]), Noon);
        session.OpenKey(jonas.Id, Noon);
        if (close)
        {
            session.Close(jonas.Id, Noon, new ExpectedErrors(1, 0.5));
        }

        db.Add(session);
        await db.SaveChangesAsync(Stop);
        return session.Id;
    }
}
