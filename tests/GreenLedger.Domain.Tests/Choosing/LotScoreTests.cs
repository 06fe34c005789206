using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Tests.Choosing;

public sealed class LotScoreTests
{
    private static readonly CupScore[] TwoSessions =
    [
        Demo.Result(86m, 0.5, on: new DateOnly(2026, 9, 1)),
        Demo.Result(85m, 0.25, on: new DateOnly(2026, 10, 1)),
        Demo.Result(90m, 0.25, form: CuppingForm.AffectiveId, on: new DateOnly(2026, 11, 1)),
    ];

    /// <summary>
    /// Worked by hand: mean (86 + 85) ÷ 2 with √(0.25 + 0.0625) ÷ 2 = 0.279508; inverse variance weighs 4 and 16, so
    /// 86 × 0.2 + 85 × 0.8 = 85.2 with 1 ÷ √20 = 0.223607. The other form's 90 never counts.
    /// </summary>
    [Theory]
    [InlineData(SessionRule.Latest, "85", 0.25, 1)]
    [InlineData(SessionRule.Mean, "85.5", 0.279508, 2)]
    [InlineData(SessionRule.InverseVariance, "85.2", 0.223607, 2)]
    public void Several_sessions_combine_by_the_rule(SessionRule rule, string score, double error, int sessions)
    {
        var lot = Demo.Lot("A", 80m, 7m).With(results: TwoSessions);

        var combined = LotScore.Of(lot, Demo.Rules with { Sessions = rule })!.Value;

        Assert.Equal(Score.Parse(score, null), combined.Score);
        Assert.Equal(error, combined.StandardError, 6);
        Assert.Equal(sessions, combined.Sessions);
    }

    /// <summary>
    /// Worked by hand. Both for these cuppers: √(0.25 + 0.25) ÷ 2 = 0.353553. One for any cupper: both count with that
    /// error, √(0.36 + 0.25) ÷ 2 = 0.390512.
    /// </summary>
    [Theory]
    [InlineData(HoldsFor.TheseCuppers, HoldsFor.TheseCuppers, 0.353553)]
    [InlineData(HoldsFor.AnyCupper, HoldsFor.AnyCupper, 0.390512)]
    public void A_combined_interval_never_mixes_whom_it_speaks_for(HoldsFor second, HoldsFor expected, double error)
    {
        CupScore[] results = [Demo.Result(86m, 0.5, any: 0.6), Demo.Result(85m, 0.5, holdsFor: second)];

        var combined = LotScore.Of(Demo.Lot("A", 80m, 7m).With(results: results), Demo.Rules with { Sessions = SessionRule.Mean })!.Value;

        Assert.Equal((expected, error), (combined.HoldsFor, Math.Round(combined.StandardError, 6)));
    }

    /// <summary>Welch and Satterthwaite, worked by hand: (0.0625 + 0.0625)² ÷ (0.0625² ÷ 4 + 0.0625² ÷ 6) = 9.6.</summary>
    [Fact]
    public void Degrees_of_freedom_of_two_sessions_combine()
    {
        CupScore[] results = [Demo.Result(86m, 0.5, freedom: 4), Demo.Result(85m, 0.5, freedom: 6)];

        var combined = LotScore.Of(Demo.Lot("A", 80m, 7m).With(results: results), Demo.Rules with { Sessions = SessionRule.Mean })!.Value;

        Assert.Equal(9.6, combined.DegreesOfFreedom!.Value, 9);
    }

    /// <summary>The normal quantile at 0.975 is 1.959964 (R qnorm), worked by hand: 88 ± 1.5 × 1.959964.</summary>
    [Fact]
    public void A_stated_score_carries_the_doubt_of_the_rules()
    {
        var lot = Demo.Lot("A", 80m, 7m).With(results: [], stated: Score.Of(88m));

        var stated = LotScore.Of(lot, Demo.Rules with { RanksStatedScores = true })!.Value;

        Assert.Equal(Score.Of(85.060054m), stated.Low);
        Assert.Equal(Score.Of(90.939946m), stated.High);
    }

    [Fact]
    public void Our_own_result_goes_before_what_the_seller_states()
    {
        var lot = Demo.Lot("A", 84m, 7m).With(stated: Score.Of(88m));

        var score = LotScore.Of(lot, Demo.Rules with { RanksStatedScores = true })!.Value;

        Assert.Equal((Score.Of(84m), ScoreOrigin.Cupped), (score.Score, score.Origin));
    }
}
