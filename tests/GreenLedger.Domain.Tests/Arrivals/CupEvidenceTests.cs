using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;

namespace GreenLedger.Domain.Tests.Arrivals;

public sealed class CupEvidenceTests
{
    private static readonly DateTimeOffset Noon = new(2026, 11, 24, 12, 0, 0, TimeSpan.Zero);
    private static readonly Person[] Panel = [new("Ines Talavera", Role.Cupper), new("Joost Ravelaar", Role.LeadCupper), new("Ama Serwaa", Role.Cupper)];
    private static readonly Sample Approved = NewSample(SampleKind.PreShipment, "PS1");
    private static readonly Sample Drawn = NewSample(SampleKind.Arrival, "AR1");
    private static readonly Sample Reference = NewSample(SampleKind.Offer, "REF");

    [Fact]
    public void Both_in_one_session_are_the_best_evidence()
    {
        var apart = Cup(3, (Approved, 8.25m, false));
        var together = Cup(1, (Approved, 8.25m, false), (Drawn, 8.00m, false));

        var evidence = CupEvidence.Of([apart, together, Cup(2, (Drawn, 7m, false))], Approved.Id, Drawn.Id, null);

        Assert.Equal(Meeting.OneSession, evidence.Difference!.Meeting);
        Assert.Same(together, evidence.Approved);
        // Seven attributes a quarter point lower: 7 × 0.25 (worked by hand).
        Assert.Equal(-1.75, evidence.Difference.Points, 9);
    }

    [Fact]
    public void Past_results_tell_a_difference_and_decide_nothing()
    {
        var past = Past((Approved, 86m), (Drawn, 83.5m));

        var evidence = CupEvidence.Of([past], Approved.Id, Drawn.Id, 0.5);
        var verdict = QualityVerdict.Of(evidence.Difference!, Score.Of(1m));

        Assert.Equal((Meeting.PastResults, -2.5), (evidence.Difference!.Meeting, Math.Round(evidence.Difference.Points, 9))); // worked by hand: 83.50 less 86.00
        Assert.Equal((ArrivalOutcome.Undecided, null), (verdict.Outcome, verdict.Upper));
        Assert.Contains("Past results that were taken in are compared: 86.00 the approved sample, 83.50 the arrival.", verdict.Sentences);
        Assert.Contains("Cup both blind in one session, with at least three cuppers who taste both.", verdict.Sentences);
    }

    [Fact]
    public void What_was_cupped_here_comes_before_past_results_and_one_of_them_alone_is_no_evidence()
    {
        var together = Cup(1, (Approved, 8.25m, false), (Drawn, 8.00m, false));

        Assert.Equal(Meeting.OneSession, CupEvidence.Of([Past((Approved, 86m), (Drawn, 83.5m)), together], Approved.Id, Drawn.Id, null).Difference!.Meeting);
        Assert.Equal(Meeting.PastResults, CupEvidence.Of([Past((Approved, 86m)), Cup(2, (Drawn, 8.00m, false))], Approved.Id, Drawn.Id, null).Difference!.Meeting);
        Assert.Equal("The arrival's sample was not cupped in a session that is closed.", CupEvidence.Of([Past((Drawn, 83.5m)), Cup(2, (Approved, 8.00m, false))], Approved.Id, Reference.Id, null).Missing);
    }

    /// <summary>Six attributes at 8.00, uniformity, clean cup and sweetness in full, and the seventh makes up the score.</summary>
    private static CuppingSession Past(params (Sample Sample, decimal Score)[] results)
    {
        var session = CuppingSession.OfPast("Results of before", new DateOnly(2026, 11, 10), CuppingForm.HundredPoint());
        foreach (var (at, (sample, score)) in results.Index())
        {
            session.Pour(sample, new Random(at));
            session.TakeIn(sample, new PastResult("Ines Talavera", [8m, 8m, 8m, 8m, 8m, 8m, 10m, 10m, 10m, score - 78m], [0m, 0m], null, [], null), Noon);
        }

        session.Close(Panel[1].Id, Noon, new ExpectedErrors(1.0, 0.5));
        return session;
    }

    [Fact]
    public void The_reference_holds_two_sessions_together()
    {
        var evidence = CupEvidence.Of(
            [Cup(1, (Approved, 8.25m, false), (Reference, 8.00m, true)), Cup(2, (Drawn, 8.00m, false), (Reference, 7.75m, true))], Approved.Id, Drawn.Id, null);

        // The reference fell by as much as the coffee, 7 × 0.25: nothing is left (worked by hand).
        Assert.Equal(Meeting.HeldByReference, evidence.Difference!.Meeting);
        Assert.Equal(0, evidence.Difference.Points, 9);
        Assert.Equal(-1.75, evidence.Difference.Shift!.Value, 9);
    }

    [Fact]
    public void Without_a_common_reference_the_houses_setting_stands_in()
    {
        CuppingSession[] sessions = [Cup(1, (Approved, 8.25m, false), (Reference, 8.00m, true)), Cup(2, (Drawn, 8.00m, false))];

        Assert.Equal(Meeting.HeldBySetting, CupEvidence.Of(sessions, Approved.Id, Drawn.Id, 0.5).Difference!.Meeting);
        Assert.Equal(Meeting.NotHeld, CupEvidence.Of(sessions, Approved.Id, Drawn.Id, null).Difference!.Meeting);
    }

    [Fact]
    public void What_was_not_cupped_is_said()
    {
        var evidence = CupEvidence.Of([Cup(1, (Approved, 8.25m, false))], Approved.Id, Drawn.Id, 0.5);

        Assert.Null(evidence.Difference);
        Assert.Equal("The arrival's sample was not cupped in a session that is closed.", evidence.Missing);
    }

    private static Sample NewSample(SampleKind kind, string label) => new(Id<Lot>.New(), kind, label, new DateOnly(2026, 11, 20), Weight.FromGrams(500m));

    private static CuppingSession Cup(int day, params (Sample Sample, decimal Mark, bool IsReference)[] poured)
    {
        var session = new CuppingSession($"Day {day}", new DateOnly(2026, 11, day), CuppingForm.HundredPoint(), 5, Panel[1].Id);
        foreach (var (at, (sample, mark, isReference)) in poured.Index())
        {
            session.Pour(sample, $"{401 + at}", isReference: isReference);
            foreach (var (seat, cupper) in Panel.Index())
            {
                session.Submit($"{401 + at}", cupper, new SheetMarks([.. Enumerable.Repeat(Mark.Of(mark + seat * 0.25m), 7)], [5, 5, 5], [0, 0]), Noon);
            }
        }

        session.Close(Panel[1].Id, Noon, new ExpectedErrors(1.0, 0.5));
        return session;
    }
}
