using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;

namespace GreenLedger.Domain.Tests.Cupping;

/// <summary>One coffee under two codes and one under one, cupped by two; every figure is worked by hand.</summary>
public sealed class ResultDetailTests
{
    private static readonly DateTimeOffset Noon = new(2026, 11, 25, 12, 0, 0, TimeSpan.Zero);
    private readonly Person _ines = new("Ines Duarte", Role.Cupper);
    private readonly Person _jonas = new("Jonas Weber", Role.LeadCupper);

    [Fact]
    public void An_attribute_has_the_mean_and_the_range_of_all_sheets_of_the_coffee()
    {
        var profile = ResultDetail.Of(Closed()).Profiles[0];

        // 8.00, 8.25, 7.75 and 8.00 under both codes.
        var flavor = profile.Attributes.Single(attribute => attribute.Line.Key == "flavor");
        Assert.Equal((8.00m, 7.75m, 8.25m), (flavor.Mean, flavor.Lowest, flavor.Highest));
        Assert.Equal((4, 2), (profile.Sheets, profile.Cuppers));
    }

    [Fact]
    public void A_word_counts_once_for_a_cupper_however_often_it_was_said_and_written()
    {
        var words = ResultDetail.Of(Closed()).Profiles[0].Words;

        Assert.Equal([new SaidWord("Lemon", 2), new SaidWord("jasmine", 1)], words);
    }

    [Fact]
    public void Words_checked_on_the_descriptive_form_count_with_those_of_the_sheet()
    {
        var described = Closed(session => session.Sheets[0].Describe(null, new SheetDescription(
            new Dictionary<string, int>(), new Dictionary<string, IReadOnlyList<string>> { ["flavor"] = ["dried-fruit"] })));

        var words = ResultDetail.Of(described, DescriptiveForm.Sca103().Rules).Profiles[0].Words;

        Assert.Contains(new SaidWord("dried fruit", 1), words);
    }

    [Fact]
    public void Defects_stand_with_their_cups_their_points_and_what_they_were_called()
    {
        var profile = ResultDetail.Of(Closed()).Profiles[1];

        // Two tainted cups of one cupper at 2 points each, over two sheets.
        var defect = Assert.Single(profile.Defects);
        Assert.Equal((1, 2, 2.00m), (defect.Cuppers, defect.Cups, defect.MeanPoints));
        Assert.Equal([new SaidWord("phenolic", 1)], profile.DefectNames);
    }

    [Fact]
    public void Hidden_duplicates_show_each_cupper_twice_and_the_repeatability_of_the_session()
    {
        var detail = ResultDetail.Of(Closed());

        // 7 × 8.00 + 30 and 7 × 8.25 + 30; 7 × 7.75 + 30 and 7 × 8.00 + 30: both 1.75 apart, and 1.75 ÷ √2 = 1.2374.
        Assert.Equal([86.00m, 87.75m], detail.Repeated[0].Points);
        Assert.Equal([1.75m, 1.75m], detail.Repeated.Select(repeated => repeated.Range));
        Assert.Equal((1.2374, 2), (Math.Round(detail.Repeatability!.Deviation, 4), detail.Repeatability.DegreesOfFreedom));
    }

    [Fact]
    public void Samples_are_told_apart_by_the_error_of_the_result()
    {
        // One cupper: the house's repeatability of 0.50 is the error of a sheet, so that a pair has 0.50 × √2; 86.00 less 82.50.
        var session = Laid();
        session.Submit("401", _ines, Marks(8.00m), Noon);
        session.Submit("403", _ines, Marks(7.50m), Noon);
        session.Close(_jonas.Id, Noon, new ExpectedErrors(1.0, 0.5));

        var pair = Assert.Single(ResultDetail.Of(session).Differences!.Pairs);

        Assert.Equal(3.50, pair.Points, 9);
        Assert.Equal(0.7071, pair.StandardError, 4);
    }

    [Fact]
    public void Who_opened_the_key_and_scored_takes_the_blindness_of_the_result()
    {
        Assert.Equal(Blindness.Blind, ResultDetail.Of(Closed()).Blindness);
        Assert.Equal(Blindness.SomeNotBlind, ResultDetail.Of(Closed(session => session.OpenKey(_ines.Id, Noon))).Blindness);
    }

    private CuppingSession Closed(Action<CuppingSession>? before = null)
    {
        var session = Laid();
        session.Submit("401", _ines, Marks(8.00m), Noon).Remark(["jasmine", "Lemon"], null, null);
        session.Submit("402", _ines, Marks(8.25m), Noon).Remark(["jasmine"], null, null);
        session.Submit("403", _ines, Marks(7.50m), Noon);
        session.Submit("401", _jonas, Marks(7.75m), Noon).Remark(["lemon"], null, null);
        session.Submit("402", _jonas, Marks(8.00m), Noon);
        session.Submit("403", _jonas, Marks(7.50m, tainted: 2), Noon).Describe("phenolic", null);
        before?.Invoke(session);
        session.Close(_jonas.Id, Noon, new ExpectedErrors(1.0, 0.5));
        return session;
    }

    private CuppingSession Laid()
    {
        var session = new CuppingSession("Tuesday table", new DateOnly(2026, 11, 24), CuppingForm.HundredPoint(), 5, _jonas.Id);
        var twice = NewSample("QXA");
        session.Pour(twice, "401");
        session.Pour(twice, "402", isDuplicate: true);
        session.Pour(NewSample("QXB"), "403");
        return session;
    }

    private static Sample NewSample(string label) =>
        new(Id<Lot>.New(), SampleKind.Offer, label, new DateOnly(2026, 11, 20), Weight.FromGrams(300m));

    private static SheetMarks Marks(decimal mark, int tainted = 0) => new([.. Enumerable.Repeat(Mark.Of(mark), 7)], [5, 5, 5], [tainted, 0]);
}
