using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;

namespace GreenLedger.Domain.Tests.Cupping;

public sealed class PanelResultTests
{
    private static readonly DateTimeOffset Noon = new(2026, 11, 25, 12, 0, 0, TimeSpan.Zero);
    private readonly Person _ines = new("Ines Duarte", Role.Cupper);
    private readonly Person _jonas = new("Jonas Weber", Role.LeadCupper);

    [Fact]
    public void A_cupper_who_counts_less_moves_the_result_less()
    {
        var alike = Closed(null);
        var weighed = Closed(new PanelWeights(new CupperWeights(0.5), new Dictionary<string, Repeatability> { [_jonas.Id.ToString()] = new(1.0, 12, 0.72, 1.65) }));

        // 7 × 8.00 + 30 = 86.00 and 7 × 7.50 + 30 = 82.50: their mean, and by (0.50 ÷ 1.00)² (86.00 + 0.25 × 82.50) ÷ 1.25.
        Assert.Equal(84.25m, alike.Result!.Samples[0].Fitted.Points);
        Assert.Equal(85.30m, weighed.Result!.Samples[0].Fitted.Points);
        Assert.Equal([1, 0.25], weighed.Result.Cuppers.Select(cupper => cupper.Weight));
        Assert.Contains("worse than 0.50 points", weighed.Result.WeightRule, StringComparison.Ordinal);
        Assert.Null(alike.Result.WeightRule);
    }

    [Fact]
    public void Whoever_has_no_record_counts_one_and_the_result_says_why()
    {
        var weighed = Closed(new PanelWeights(new CupperWeights(0.5), new Dictionary<string, Repeatability>()));

        Assert.Equal(84.25m, weighed.Result!.Samples[0].Fitted.Points);
        Assert.All(weighed.Result.Cuppers, cupper => Assert.StartsWith("Counts 1: 0 repeats so far", cupper.WeightReason, StringComparison.Ordinal));
    }

    [Fact]
    public void A_discussed_score_stands_beside_the_fitted_score_and_changes_no_sheet()
    {
        var session = Closed(null);
        var sample = session.Samples[0].SampleId;

        session.Result!.Discuss(sample, 85.50m, "The second cup had a fault", _jonas.Id, Noon);
        session.Result.Discuss(sample, 85.00m, "Tasted again when cool", _jonas.Id, Noon.AddHours(1));

        Assert.Equal([85.50m, 85.00m], session.Result.Discussed.Select(discussed => discussed.Points.Points));
        Assert.Equal(84.25m, session.Result.Samples[0].Fitted.Points);
        Assert.Equal([86.00m, 82.50m], session.Sheets.Where(sheet => sheet.SampleId == sample).Select(sheet => sheet.Total.Points));
    }

    [Theory]
    [InlineData(85.5, " ")]
    [InlineData(100.25, "Too good to be true")]
    [InlineData(-1, "Below the floor")]
    public void A_discussed_score_needs_a_reason_and_points_of_a_form(double points, string reason)
    {
        var session = Closed(null);

        Assert.Throws<RuleBrokenException>(() => session.Result!.Discuss(session.Samples[0].SampleId, (decimal)points, reason, _jonas.Id, Noon));
        Assert.Empty(session.Result!.Discussed);
    }

    [Fact]
    public void A_sample_that_was_not_scored_is_not_discussed()
    {
        Assert.Throws<RuleBrokenException>(() => Closed(null).Result!.Discuss(Id<Sample>.New(), 85m, "Heard of it", _jonas.Id, Noon));
    }

    private CuppingSession Closed(PanelWeights? weights)
    {
        var session = new CuppingSession("Tuesday table", new DateOnly(2026, 11, 24), CuppingForm.HundredPoint(), 5, _jonas.Id);
        foreach (var code in new[] { "401", "402" })
        {
            session.Pour(new Sample(Id<Lot>.New(), SampleKind.Offer, $"QX{code}", new DateOnly(2026, 11, 20), Weight.FromGrams(300m)), code);
            session.Submit(code, _ines, Marks(8.00m), Noon);
            session.Submit(code, _jonas, Marks(7.50m), Noon);
        }

        session.Close(_jonas.Id, Noon, new ExpectedErrors(1.0, 0.5), weights: weights);
        return session;
    }

    private static SheetMarks Marks(decimal mark) => new([.. Enumerable.Repeat(Mark.Of(mark), 7)], [5, 5, 5], [0, 0]);
}
