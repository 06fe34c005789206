using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;

namespace GreenLedger.Domain.Tests.Cupping;

public class CuppingSessionTests
{
    private static readonly DateTimeOffset Noon = new(2026, 11, 25, 12, 0, 0, TimeSpan.Zero);
    private static readonly ExpectedErrors House = new(1.0, 0.5);
    private readonly Person _ines = new("Ines Duarte", Role.Cupper);
    private readonly Person _jonas = new("Jonas Weber", Role.LeadCupper);

    [Fact]
    public void Every_sample_has_a_three_digit_code_of_its_own()
    {
        var session = Table(60);

        var codes = session.Samples.Select(sample => sample.Code).ToList();

        Assert.Equal(60, codes.Distinct().Count());
        Assert.All(codes, code => Assert.Matches("^[1-9][0-9]{2}$", code));
        Assert.Equal(Enumerable.Range(1, 60), session.Samples.Select(sample => sample.Position));
    }

    [Fact]
    public void A_sample_stands_on_a_table_once()
    {
        var session = Table(0);
        var sample = NewSample(1);
        session.Pour(sample, new Random(1));

        Assert.Throws<RuleBrokenException>(() => session.Pour(sample, new Random(1)));
    }

    [Fact]
    public void A_second_sheet_from_the_same_cupper_is_refused()
    {
        var session = Table(1);
        session.Submit(session.Samples[0].Code, _ines, Marks(7.5m), Noon);

        var refused = Assert.Throws<RuleBrokenException>(() => session.Submit(session.Samples[0].Code, _ines, Marks(8m), Noon));

        Assert.Contains("already handed in", refused.Message, StringComparison.Ordinal);
        Assert.Single(session.Sheets);
    }

    [Fact]
    public void A_sheet_handed_in_is_closed_and_opens_again_with_a_reason_that_keeps_the_first()
    {
        var session = Table(1);
        var code = session.Samples[0].Code;
        var strengths = new SheetDescription(new Dictionary<string, int> { ["acidity"] = 9 }, new Dictionary<string, IReadOnlyList<string>>());
        session.Submit(code, _ines, Marks(7.5m), Noon).Remark(["plum"], "Thin", 82.5m).Describe("phenolic", strengths);

        Assert.Throws<RuleBrokenException>(() => session.Correct(code, _ines, Marks(8m), Noon));
        Assert.Throws<RuleBrokenException>(() => session.Reopen(code, _ines.Id, " ", _ines.Id, Noon));
        session.Reopen(code, _ines.Id, "Mixed up two cups", _ines.Id, Noon);
        session.Correct(code, _ines, Marks(8m), Noon).Remark([], null, null).Describe(null, null);
        session.Close(_jonas.Id, Noon, House);

        // Worked by hand: 7 × 8 + 30.
        Assert.Equal(Score.Of(86m), session.Sheets.Single().Total);
        // 7 × 7.50 + 30, as it was first handed in.
        var first = Assert.Single(session.Sheets.Single().EarlierSheets);
        Assert.Equal((Score.Of(82.5m), "Mixed up two cups"), (first.Total, first.Reason));
        Assert.Equal((Score.Of(82.5m), "Thin", "phenolic", strengths), (first.StatedTotal!.Value, first.Note, first.DefectName, first.Description));
        Assert.Equal(["plum"], first.Descriptors);
        Assert.Throws<RuleBrokenException>(() => session.Correct(code, _ines, Marks(9m), Noon));
        Assert.Throws<RuleBrokenException>(() => session.Submit(code, _jonas, Marks(9m), Noon));
        Assert.Throws<RuleBrokenException>(() => session.Close(_jonas.Id, Noon, House));
    }

    [Fact]
    public void A_sheet_for_a_code_that_is_not_on_the_table_is_refused()
    {
        var session = Table(1);

        Assert.Throws<RuleBrokenException>(() => session.Submit("000", _ines, Marks(8m), Noon));
    }

    [Fact]
    public void A_session_without_a_sheet_is_not_closed()
    {
        Assert.Throws<RuleBrokenException>(() => Table(2).Close(_jonas.Id, Noon, House));
    }

    [Fact]
    public void With_one_cupper_the_result_is_the_sheet_and_the_houses_error()
    {
        var session = Table(2);
        session.Submit(session.Samples[0].Code, _ines, Marks(7.5m), Noon);
        session.Submit(session.Samples[1].Code, _ines, Marks(8m), Noon);

        var result = session.Close(_jonas.Id, Noon, House);

        var first = result.Samples[0];
        Assert.Equal(Score.Of(82.5m), first.Fitted);
        Assert.Equal(Score.Of(82.5m), first.PlainMean);
        Assert.Equal(ErrorSource.HouseSetting, first.ErrorFrom);
        Assert.Equal(HoldsFor.AnyCupper, first.HoldsFor);
        Assert.Null(first.DegreesOfFreedom);
        // House settings: between cuppers 1.00, one cupper 0.50; normal 95 % is 1.959964.
        Assert.Equal(Score.Of(1m), first.StandardError);
        Assert.Equal(Score.Of(0.5m), first.TheseCuppersError);
        Assert.Equal(Score.Of(82.5m - 1.959964m), first.Low);
        Assert.Equal(Score.Of(82.5m + 1.959964m), first.High);
        // A cupper's level moves both samples together: 1² − 0.5².
        Assert.Equal(0.75, first.LevelVariance, 10);
        Assert.Equal(0.25, first.OwnVariance, 10);
        Assert.Empty(first.Loadings);
    }

    [Fact]
    public void Two_cuppers_on_two_samples_are_too_few_to_show_their_own_error()
    {
        var session = Table(2);
        foreach (var sample in session.Samples)
        {
            session.Submit(sample.Code, _ines, Marks(7.5m), Noon);
            session.Submit(sample.Code, _jonas, Marks(8m), Noon);
        }

        var result = session.Close(_jonas.Id, Noon, House);

        Assert.Equal(ErrorSource.HouseSetting, result.ErrorFrom);
        // Worked by hand: reproducibility 1.00 over √2 cuppers.
        Assert.Equal(Score.Of(0.707107m), result.Samples[0].StandardError);
        Assert.Equal((Score.Of(1m), Score.Of(0.5m)), (result.Reproducibility!.Value, result.Repeatability!.Value));
        Assert.Equal([Score.Of(-1.75m), Score.Of(1.75m)], result.Cuppers.Select(cupper => cupper.Effect));
    }

    [Fact]
    public void The_handbooks_table_gives_its_intervals_from_its_own_residual()
    {
        var session = HandbookSession();

        var result = session.Close(_jonas.Id, Noon, House);

        // Handbook quality.md section 4.6; t(6, 0.975) = 2.446912 (R qt).
        Assert.Equal([84.093414m, 85.176747m, 86.098057m, 82.713893m, 86.597324m], result.Samples.Select(sample => sample.Fitted.Points));
        Assert.Equal([0.146842m, 0.146842m, 0.146354m, 0.187268m, 0.144880m], result.Samples.Select(sample => sample.StandardError.Points));
        Assert.Equal(86.666667m, result.Samples[2].PlainMean.Points);
        var last = result.Samples[4];
        Assert.Equal(2.446912 * 0.144880, (double)(last.Fitted.Points - last.Low.Points), 5);
        Assert.Equal(HoldsFor.TheseCuppers, last.HoldsFor);
        Assert.Equal(6, last.DegreesOfFreedom);
        Assert.True(last.AnyCupperError > last.StandardError);
        // T − R: SE 0.208833 in the handbook.
        var difference = Math.Sqrt(PanelResult.Covariance(last, last) + PanelResult.Covariance(result.Samples[2], result.Samples[2]) - 2 * PanelResult.Covariance(last, result.Samples[2]));
        Assert.Equal(0.208833, difference, 6);
    }

    [Fact]
    public void For_any_cupper_a_complete_table_adds_the_cuppers_variance()
    {
        // Handbook quality.md section 4.3, first replicates only: 3 samples by 4 cuppers.
        double[][] table = [[84.00, 82.50, 85.25, 83.75], [86.00, 84.25, 87.50, 84.75], [83.25, 82.75, 84.00, 82.00]];
        var scores = table.SelectMany((row, sample) => row.Select((points, cupper) => new PanelScore(sample, cupper, points))).ToList();
        var fit = AdditiveFit.Of(scores, 3, 4);

        var errors = PanelErrors.Of(fit, House);

        // Worked by hand from the sums of squares: (MS_c − MS_e) ÷ samples, then ÷ cuppers.
        var two = TwoWayTable.Of([.. table.Select(row => (IReadOnlyList<IReadOnlyList<double>>)[.. row.Select(points => (IReadOnlyList<double>)[points])])]);
        var between = (two.CupperSquares / 3 - two.InteractionSquares / 6) / 3;
        Assert.Equal(Math.Sqrt(two.InteractionSquares / 6 / 4 + between / 4), errors.AnyCupper(0), 10);
        Assert.Equal(Math.Sqrt(two.InteractionSquares / 6 / 4), errors.TheseCuppers(0), 10);
    }

    [Fact]
    public void Cuppers_who_agree_exactly_do_not_look_exact()
    {
        var session = Table(4);
        foreach (var sample in session.Samples)
        {
            session.Submit(sample.Code, _ines, Marks(7.5m), Noon);
            session.Submit(sample.Code, _jonas, Marks(7.5m), Noon);
        }

        var result = session.Close(_jonas.Id, Noon, House);

        Assert.Equal(ErrorSource.HouseSetting, result.ErrorFrom);
        // Two cuppers with the house's 1.00 between cuppers and within: √(1.00² ÷ 2).
        Assert.Equal(0.707107m, result.Samples[0].StandardError.Points);
    }

    [Fact]
    public void Samples_that_nothing_connects_stand_in_parts_of_their_own()
    {
        var session = Table(2);
        session.Submit(session.Samples[0].Code, _ines, Marks(7.5m), Noon);
        session.Submit(session.Samples[1].Code, _jonas, Marks(8m), Noon);

        var result = session.Close(_jonas.Id, Noon, House);

        Assert.Equal(2, result.Parts);
        Assert.NotEqual(result.Samples[0].Part, result.Samples[1].Part);
        Assert.Equal(0, PanelResult.Covariance(result.Samples[0], result.Samples[1]), 10);
    }

    [Fact]
    public void A_sample_that_nobody_tasted_has_no_result()
    {
        var session = Table(2);
        session.Submit(session.Samples[1].Code, _ines, Marks(8m), Noon);

        var result = session.Close(_jonas.Id, Noon, House);

        Assert.Equal(session.Samples[1].SampleId, Assert.Single(result.Samples).SampleId);
    }

    [Fact]
    public void Who_looks_behind_the_codes_of_an_open_session_is_recorded()
    {
        var session = Table(1);
        session.Submit(session.Samples[0].Code, _ines, Marks(8m), Noon);

        session.OpenKey(_jonas.Id, Noon);
        session.Close(_jonas.Id, Noon, House);
        session.OpenKey(_jonas.Id, Noon.AddHours(1));

        Assert.Equal(_jonas.Id, Assert.Single(session.KeyOpenings).By);
    }

    [Fact]
    public void A_changed_number_makes_a_new_form()
    {
        var form = CuppingForm.Affective();

        var revised = form.Revise(form.Rules with { RoundTo = 0.5m }, "Read in the printed standard.");

        Assert.NotEqual(form.Id, revised.Id);
        Assert.Equal(2, revised.Revision);
        Assert.Throws<RuleBrokenException>(() => form.Revise(form.Rules with { Intercept = 60m }, "Too much."));
        Assert.Throws<RuleBrokenException>(() => form.Revise(form.Rules with { RoundTo = 0.5m }, ""));
    }

    private static CuppingSession HandbookSession()
    {
        var session = CuppingSession.OfPast("Handbook 4.6", new DateOnly(2026, 11, 24), CuppingForm.HundredPoint());
        var samples = Enumerable.Range(0, 5).Select(NewSample).ToList();
        samples.ForEach(sample => session.Pour(sample, new Random(1)));
        foreach (var score in AdditiveFitTests.Handbook)
        {
            // The seven marks share what is left of the total beside three tens.
            var mark = ((decimal)score.Points - 30m) / 7m;
            var points = CuppingForm.HundredPoint().Rules.Attributes.Select(line => line.MarkedBy == MarkedBy.Cups ? 10m : mark).ToList();
            session.TakeIn(samples[score.Sample], new PastResult($"C{score.Cupper + 1}", points, [0m, 0m], null, [], null), Noon);
        }

        return session;
    }

    private CuppingSession Table(int samples)
    {
        var session = new CuppingSession("Tuesday table", new DateOnly(2026, 11, 24), CuppingForm.HundredPoint(), 5, _jonas.Id);
        var random = new Random(7);
        for (var i = 0; i < samples; i++)
        {
            session.Pour(NewSample(i), random);
        }

        return session;
    }

    private static Sample NewSample(int number) =>
        new(Id<Lot>.New(), SampleKind.Offer, $"QX{number}", new DateOnly(2026, 11, 20), Weight.FromGrams(300m));

    private static SheetMarks Marks(decimal mark) => new([.. Enumerable.Repeat(Mark.Of(mark), 7)], [5, 5, 5], [0, 0]);
}
