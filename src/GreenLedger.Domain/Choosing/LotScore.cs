using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using MathNet.Numerics.Distributions;

namespace GreenLedger.Domain.Choosing;

/// <summary>Who says what a lot scores.</summary>
public enum ScoreOrigin
{
    /// <summary>Our own panel.</summary>
    Cupped = 0,

    /// <summary>The seller: never ours.</summary>
    Stated = 1,
}

/// <summary>
/// The one score that a lot is ranked by, from its sessions by the rule of the house, with its 95 % interval. The
/// <c>default</c> is a stated score of zero without doubt and is never ranked.
/// </summary>
/// <param name="StandardError">In points.</param>
/// <param name="AnyCupperError">In points, if other cuppers cupped it; what chances are drawn by.</param>
/// <param name="DegreesOfFreedom">Null where the error is a setting and not estimated.</param>
/// <param name="Sessions">How many results went in; 0 for a stated score.</param>
/// <param name="HoldsFor">Whom the interval speaks for: any cupper where sessions of both kinds are combined.</param>
public readonly record struct LotScore(
    Score Score,
    double StandardError,
    double AnyCupperError,
    double? DegreesOfFreedom,
    Score Low,
    Score High,
    ScoreOrigin Origin,
    int Sessions,
    HoldsFor HoldsFor)
{
    /// <summary>Two-sided 95 %: the quantile at 0.975.</summary>
    private const double UpperTail = 0.975;

    /// <summary>
    /// The lot's score under the rules; null when no session used their form and no stated score may stand in.
    /// </summary>
    public static LotScore? Of(Candidate candidate, RuleTerms terms)
    {
        var results = candidate.Results;
        var (count, last) = OnForm(results, terms.FormId);
        if (count == 0)
        {
            return terms.RanksStatedScores && candidate.StatedScore is { } stated ? Stated(stated, terms.StatedDoubt) : null;
        }

        if (count == 1 || terms.Sessions == SessionRule.Latest)
        {
            ref readonly var only = ref results[last];
            return new LotScore(only.Score, only.StandardError, only.AnyCupperError, only.DegreesOfFreedom, only.Low, only.High, ScoreOrigin.Cupped, 1, only.HoldsFor);
        }

        return Combined(results, terms);
    }

    /// <summary>
    /// What each result weighs in the lot's score, in the order of the candidate's results; the weights add up to 1,
    /// or are all 0 when none is on the form.
    /// </summary>
    public static double[] WeightsOf(CupScore[] results, RuleTerms terms)
    {
        var weights = new double[results.Length];
        var (count, last) = OnForm(results, terms.FormId);
        if (count > 0 && (count == 1 || terms.Sessions == SessionRule.Latest))
        {
            weights[last] = 1;
            return weights;
        }

        var sum = 0.0;
        for (var i = 0; i < results.Length; i++)
        {
            if (results[i].FormId == terms.FormId)
            {
                weights[i] = terms.Sessions == SessionRule.Mean ? 1 : Precision(results[i].AnyCupperError);
                sum += weights[i];
            }
        }

        for (var i = 0; i < weights.Length && sum > 0; i++)
        {
            weights[i] /= sum;
        }

        return weights;
    }

    private static (int Count, int Last) OnForm(CupScore[] results, Id<CuppingForm> form)
    {
        var (count, last) = (0, -1);
        for (var i = 0; i < results.Length; i++)
        {
            if (results[i].FormId == form)
            {
                count++;
                last = last < 0 || IsLater(results[i], results[last]) ? i : last;
            }
        }

        return (count, last);
    }

    private static bool IsLater(in CupScore one, in CupScore other)
    {
        var byDay = one.HeldOn.CompareTo(other.HeldOn);
        var byError = other.AnyCupperError.CompareTo(one.AnyCupperError);
        return byDay > 0 || (byDay == 0 && (byError > 0 || (byError == 0 && one.ResultId > other.ResultId)));
    }

    /// <summary>Sessions count as independent; degrees of freedom by Welch and Satterthwaite (handbook section 4.8).</summary>
    private static LotScore Combined(CupScore[] results, RuleTerms terms)
    {
        var weights = WeightsOf(results, terms);
        var holdsFor = results.Where((_, i) => weights[i] > 0).All(result => result.HoldsFor == HoldsFor.TheseCuppers) ? HoldsFor.TheseCuppers : HoldsFor.AnyCupper;
        var (mean, variance, any, parts, sessions) = (0m, 0.0, 0.0, 0.0, 0);
        for (var i = 0; i < results.Length; i++)
        {
            if (weights[i] > 0)
            {
                // One kind of interval: what these cuppers would give says too little where another session speaks for any.
                var share = Square(weights[i] * (holdsFor == results[i].HoldsFor ? results[i].StandardError : results[i].AnyCupperError));
                mean += (decimal)weights[i] * results[i].Score.Points;
                variance += share;
                any += Square(weights[i] * results[i].AnyCupperError);
                parts += results[i].DegreesOfFreedom is { } freedom ? share * share / freedom : 0;
                sessions++;
            }
        }

        double? degrees = parts > 0 ? variance * variance / parts : null;
        var error = Math.Sqrt(variance);
        var score = Score.Of(mean);
        var reach = error * Quantile(degrees);
        return new LotScore(score, error, Math.Sqrt(any), degrees, Shift(score, -reach), Shift(score, reach), ScoreOrigin.Cupped, sessions, holdsFor);
    }

    private static LotScore Stated(Score stated, Score doubt)
    {
        var error = (double)doubt.Points;
        var reach = error * Quantile(null);
        return new LotScore(stated, error, error, null, Shift(stated, -reach), Shift(stated, reach), ScoreOrigin.Stated, 0, HoldsFor.AnyCupper);
    }

    private static double Quantile(double? degrees) => degrees is { } freedom
        ? StudentT.InvCDF(0, 1, freedom, UpperTail)
        : Normal.InvCDF(0, 1, UpperTail);

    private static double Precision(double error) => 1 / Square(Math.Max(error, 1e-6));

    private static double Square(double value) => value * value;

    private static Score Shift(Score score, double by) => Score.Of((decimal)Math.Clamp((double)score.Points + by, -100, 100));
}
