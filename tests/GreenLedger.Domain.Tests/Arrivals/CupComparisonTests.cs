using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Tests.Arrivals;

public sealed class CupComparisonTests
{
    // Handbook quality.md section 4.8: the same six cuppers on the pre-shipment sample and on the arrival.
    internal static readonly double[] Approved = [85.25, 84.75, 85.50, 84.50, 85.00, 85.25];
    internal static readonly double[] Arrival = [84.75, 84.25, 85.00, 84.25, 84.50, 85.25];

    public static TheoryData<int> Designs => [.. Enumerable.Range(1, 40)];

    [Fact]
    public void The_handbooks_pair_in_one_session()
    {
        var found = CupComparison.OneSession([.. Sheets(0, Approved), .. Sheets(1, Arrival)], 0, 1);
        var verdict = QualityVerdict.Of(found, Score.Of(1m));

        // Handbook quality.md section 4.8, paired: mean, standard error, 90 % interval.
        Assert.Equal(-0.375, found.Points, 9);
        Assert.Equal(0.085391, found.StandardError!.Value, 6);
        Assert.Equal(5, found.DegreesOfFreedom);
        Assert.Equal(-0.547068, verdict.Lower!.Value, 6);
        Assert.Equal(-0.202932, verdict.Upper!.Value, 6);
        Assert.Equal(ArrivalOutcome.Matches, verdict.Outcome);
    }

    [Fact]
    public void The_handbooks_pair_in_two_sessions_that_stand_level()
    {
        var found = CupComparison.TwoSessions(new([.. Sheets(0, Approved)], 0), new([.. Sheets(0, Arrival)], 0), betweenSessions: 0);
        var verdict = QualityVerdict.Of(found, Score.Of(1m));

        // Handbook quality.md section 4.8, Welch: se, df, p of the lower test at D = 1.00 and of D = 0.50, 90 % interval.
        Assert.Equal(0.224382, found.StandardError!.Value, 6);
        Assert.Equal(9.894118, found.DegreesOfFreedom!.Value, 6);
        Assert.Equal(0.0097272, verdict.MatchesP!.Value, 7);
        Assert.Equal(-0.782125, verdict.Lower!.Value, 6);
        Assert.Equal(0.032125, verdict.Upper!.Value, 6);
        Assert.Equal(ArrivalOutcome.Matches, verdict.Outcome);
        Assert.Equal(0.294924, QualityVerdict.Of(found, Score.Of(0.50m)).MatchesP!.Value, 6);
        Assert.Equal(ArrivalOutcome.Undecided, QualityVerdict.Of(found, Score.Of(0.50m)).Outcome);
    }

    [Fact]
    public void Welch_on_Students_sleep_data()
    {
        double[] first = [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0];
        double[] second = [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4];

        var found = CupComparison.TwoSessions(new([.. Sheets(0, second)], 0), new([.. Sheets(0, first)], 0), betweenSessions: 0);

        // R help of t.test, sleep; handbook quality.md section 4.8: t, df, two-sided p.
        Assert.Equal(-1.8608135, found.Points / found.StandardError!.Value, 7);
        Assert.Equal(17.776474, found.DegreesOfFreedom!.Value, 6);
        Assert.Equal(0.07939, 2 * QualityVerdict.Of(found, Score.Of(0m)).ShortP!.Value, 5);
    }

    [Theory]
    [MemberData(nameof(Designs))]
    public void Bounds_are_those_of_R(int design)
    {
        var rows = Recorded.Rows("arrival-scores.csv").Where(row => row.Whole("design") == design).ToList();
        var sessions = rows.GroupBy(row => row.Whole("session")).Select(session => session.Select(row => new PanelScore(row.Whole("sample"), row.Whole("cupper"), row.Number("points"))).ToList()).ToList();

        var found = rows[0]["way"] switch
        {
            "welch" => CupComparison.TwoSessions(new(sessions[0], 0), new(sessions[1], 0), betweenSessions: 0),
            "reference" => CupComparison.TwoSessions(new(sessions[0], 0, Reference: 1), new(sessions[1], 0, Reference: 1), betweenSessions: null),
            _ => CupComparison.OneSession(sessions[0], 0, 1),
        };
        var verdict = QualityVerdict.Of(found, Score.Of(1m));

        // tests/R/arrival-verdict.R: R 4.2, t.test with mu = -1 and lm.
        var recorded = Recorded.Rows("arrival-values.csv").Where(row => row.Whole("design") == design).ToDictionary(row => row["what"], row => row.Number("value"));
        Assert.Equal(recorded["se"], found.StandardError!.Value, 1e-8);
        Assert.Equal(recorded["df"], found.DegreesOfFreedom!.Value, 1e-7);
        Assert.Equal(recorded["lower"], verdict.Lower!.Value, 1e-7);
        Assert.Equal(recorded["upper"], verdict.Upper!.Value, 1e-7);
        Assert.Equal(recorded["matches-p"], verdict.MatchesP!.Value, 1e-8);
        Assert.Equal(recorded["short-p"], verdict.ShortP!.Value, 1e-8);
        Assert.Equal(recorded["matches-p"] < 0.05 ? ArrivalOutcome.Matches : recorded["short-p"] < 0.05 ? ArrivalOutcome.Short : ArrivalOutcome.Undecided, verdict.Outcome);
    }

    [Fact]
    public void The_reference_takes_off_how_far_the_sessions_stood_apart()
    {
        var before = new SessionPanel([.. Sheets(0, [85, 86, 85.5]), .. Sheets(1, [83, 83.75, 83.5])], 0, 1);
        var after = new SessionPanel([.. Sheets(0, [83.5, 84.25, 84.25]), .. Sheets(1, [81.5, 82.5, 82.25])], 0, 1);

        var found = CupComparison.TwoSessions(before, after, betweenSessions: 5);

        // Worked by hand: 85.5 and 84.0 the coffee, 83 5/12 and 82 1/12 the reference: −1.5 less −1 1/3.
        Assert.Equal(Meeting.HeldByReference, found.Meeting);
        Assert.Equal(-1.0 / 6, found.Points, 9);
        Assert.Equal(-4.0 / 3, found.Shift!.Value, 9);
    }

    [Fact]
    public void What_the_house_states_of_its_sessions_widens_the_bounds()
    {
        var before = new SessionPanel([.. Sheets(0, Approved)], 0);
        var after = new SessionPanel([.. Sheets(0, Arrival)], 0);

        var level = CupComparison.TwoSessions(before, after, 0);
        var apart = CupComparison.TwoSessions(before, after, 0.50);

        // Variances add: 0.224382² + 0.50² (handbook quality.md section 4.8; worked by hand).
        Assert.Equal(Math.Sqrt(0.224382 * 0.224382 + 0.25), apart.StandardError!.Value, 6);
        Assert.True(apart.DegreesOfFreedom > level.DegreesOfFreedom);
    }

    [Fact]
    public void Two_sessions_that_nothing_holds_together_decide_nothing()
    {
        var found = CupComparison.TwoSessions(new([.. Sheets(0, Approved)], 0), new([.. Sheets(0, [70, 70.25, 70, 70.5])], 0), betweenSessions: null);
        var verdict = QualityVerdict.Of(found, Score.Of(1m));

        Assert.Equal(ArrivalOutcome.Undecided, verdict.Outcome);
        Assert.Null(verdict.Lower);
        Assert.Contains("a change of the coffee cannot be told from a change of the session", verdict.Sentences[1], StringComparison.Ordinal);
    }

    [Fact]
    public void One_cupper_decides_nothing()
    {
        var found = CupComparison.OneSession([new(0, 0, 86), new(1, 0, 80)], 0, 1);

        Assert.Equal(-6, found.Points, 9);
        Assert.Null(found.StandardError);
        Assert.Equal(ArrivalOutcome.Undecided, QualityVerdict.Of(found, Score.Of(1m)).Outcome);
        Assert.Contains("two cuppers who taste both", found.Unknown, StringComparison.Ordinal);
    }

    [Fact]
    public void A_repeat_is_no_second_opinion()
    {
        var once = CupComparison.OneSession([.. Sheets(0, Approved), .. Sheets(1, Arrival)], 0, 1);
        var twice = CupComparison.OneSession([.. Sheets(0, Approved), .. Sheets(1, Arrival), .. Sheets(0, Approved), .. Sheets(1, Arrival)], 0, 1);

        Assert.Equal(once, twice);
    }

    [Fact]
    public void Cuppers_who_happen_to_agree_do_not_look_exact()
    {
        var found = CupComparison.OneSession([.. Sheets(0, [85, 84.5, 86]), .. Sheets(1, [84, 83.5, 85])], 0, 1);

        // Sheppard's step² ÷ 12 for each sheet of a quarter point: √(2 × 0.25² ÷ 12 ÷ 3), worked by hand.
        Assert.Equal(0.0589256, found.StandardError!.Value, 7);
    }

    [Fact]
    public void Coffees_that_no_cupper_connects_are_not_compared()
    {
        var found = CupComparison.OneSession([new(0, 0, 85), new(0, 1, 85.5), new(1, 2, 82), new(1, 3, 82.5)], 0, 1);

        Assert.Null(found.StandardError);
        Assert.StartsWith("No cupper tasted both coffees", found.Unknown, StringComparison.Ordinal);
    }

    [Fact]
    public void A_coffee_without_a_sheet_is_refused() =>
        Assert.Throws<RuleBrokenException>(() => CupComparison.TwoSessions(new([new(0, 0, 85)], 0), new([], 0), 0));

    internal static IEnumerable<PanelScore> Sheets(int sample, IReadOnlyList<double> points) =>
        points.Select((score, cupper) => new PanelScore(sample, cupper, score));
}
