using System.Globalization;
using MathNet.Numerics.LinearAlgebra;

namespace GreenLedger.Domain.Choosing;

/// <summary>One of the buyer's own offers of the past: what it scored, how it was processed, where it grew and what it cost landed.</summary>
/// <param name="CostPerKilogram">In house currency, above zero.</param>
public sealed record PastOffer(double Score, string? Process, string? Origin, double CostPerKilogram);

/// <summary>How a lot's cost lies to what past offers predict for its score, process and origin.</summary>
/// <param name="PredictedPerKilogram">In house currency; null where it cannot be predicted.</param>
/// <param name="Difference">Cost ÷ predicted − 1: −0.07 is 7 % cheaper than predicted.</param>
/// <param name="WhyNot">Why there is no prediction, in a sentence; null where there is one.</param>
public sealed record PriceCheck(double? PredictedPerKilogram, double? Difference, string? WhyNot);

/// <summary>
/// What the buyer's own offers say about price: ln(cost per kg) = a + b × score + process + origin, by ordinary least
/// squares (handbook quality.md section 5). It predicts the middle price, half of such offers costing more. Where the
/// offers do not allow the fit, <see cref="WhyNot"/> says why and nothing is predicted.
/// </summary>
public sealed class PriceModel
{
    /// <summary>Fewer residual degrees of freedom say nothing. Our own choice, no source.</summary>
    public const int LeastDegreesOfFreedom = 3;

    private const double Singular = 1e-9;

    private readonly Dictionary<string, int> _processes;
    private readonly Dictionary<string, int> _origins;
    private readonly double[] _coefficients;
    private readonly double _centre;

    private PriceModel(int offers, string whyNot)
    {
        Offers = offers;
        WhyNot = whyNot;
        (_processes, _origins, _coefficients) = ([], [], []);
    }

    private PriceModel(PriceDesign design, double[] coefficients, double rSquared)
    {
        Offers = design.Offers.Count;
        (_processes, _origins, _centre) = (design.Processes, design.Origins, design.Centre);
        _coefficients = coefficients;
        RSquared = rSquared;
        DegreesOfFreedom = design.Offers.Count - design.Columns;
    }

    /// <summary>How many past offers it rests on.</summary>
    public int Offers { get; }

    public string? WhyNot { get; }

    /// <summary>Share of the variance of ln(cost) that the fit explains; null without a fit.</summary>
    public double? RSquared { get; }

    public int DegreesOfFreedom { get; }

    /// <summary>b: ln(cost) for each point; exp(b) − 1 is the rise for a point. Zero without a fit.</summary>
    public double PerPoint => _coefficients.Length > 1 ? _coefficients[1] : 0;

    /// <summary>a: ln(cost) at a score of zero for the first process and origin. Zero without a fit.</summary>
    public double Intercept => _coefficients.Length > 1 ? _coefficients[0] - _coefficients[1] * _centre : 0;

    /// <param name="leastPerGroup">Processes and origins with fewer offers are left out, and nothing is predicted for them.</param>
    public static PriceModel Of(IEnumerable<PastOffer> offers, int leastPerGroup)
    {
        var design = PriceDesign.Of(offers, leastPerGroup);
        var count = design.Offers.Count;
        if (count - design.Columns < LeastDegreesOfFreedom)
        {
            return new PriceModel(count, $"{Number(count)} past {(count == 1 ? "offer" : "offers")} with a score and a landed cost: too few to predict from ({Number(design.Columns + LeastDegreesOfFreedom)} are needed).");
        }

        if (design.HasOneScore)
        {
            return new PriceModel(count, "All past offers have the same score, so they do not say what a point is worth.");
        }

        var (gram, right) = design.Normal();
        var smallest = gram.Evd(Symmetricity.Symmetric).EigenValues.Min(value => value.Real);
        if (smallest < Singular)
        {
            return new PriceModel(count, "In the past offers process and origin cannot be told apart: each process came from origins of its own.");
        }

        var coefficients = design.Unscaled(gram.Cholesky().Solve(right));
        return new PriceModel(design, coefficients, design.RSquared(coefficients));
    }

    /// <summary>What a lot would cost landed, per kilogram, or why that cannot be said.</summary>
    public PriceCheck Check(double score, string? process, string? origin, double cost)
    {
        if (WhyNot is not null)
        {
            return new PriceCheck(null, null, WhyNot);
        }

        if (!_processes.TryGetValue(process ?? "", out var atProcess))
        {
            return new PriceCheck(null, null, $"Too few past offers are {process ?? "without a process"}.");
        }

        if (!_origins.TryGetValue(origin ?? "", out var atOrigin))
        {
            return new PriceCheck(null, null, $"Too few past offers come from {origin ?? "an unknown origin"}.");
        }

        var log = _coefficients[0] + _coefficients[1] * (score - _centre) + At(atProcess) + At(atOrigin);
        var predicted = Math.Exp(log);
        return new PriceCheck(predicted, cost / predicted - 1, null);
    }

    private double At(int column) => column == 0 ? 0 : _coefficients[column];

    private static string Number(int number) => number.ToString("#,##0", CultureInfo.InvariantCulture);
}
