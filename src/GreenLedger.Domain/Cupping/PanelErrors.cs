using MathNet.Numerics.Distributions;

namespace GreenLedger.Domain.Cupping;

/// <summary>A fitted score in points with its standard error and the ends of its 95 % interval.</summary>
public readonly record struct PanelEstimate(double Points, double StandardError, double Low, double High, HoldsFor HoldsFor);

/// <summary>
/// The errors of a fit: the variance of one sheet around it, and the variance of cuppers' levels. Both come from the
/// sheets, or from the house's settings where the sheets are too few. One cupper's sheets are always too few, however many:
/// they cannot show how far another cupper's level would lie.
/// </summary>
public sealed class PanelErrors
{
    private const double Confidence = 0.95;

    private readonly AdditiveFit _fit;
    private readonly double _betweenCuppers;

    private PanelErrors(AdditiveFit fit, ErrorSource from, double variance, double betweenCuppers)
    {
        _fit = fit;
        From = from;
        Variance = variance;
        _betweenCuppers = betweenCuppers;
    }

    public ErrorSource From { get; }

    /// <summary>Variance of one sheet around the fit, in points².</summary>
    public double Variance { get; }

    public static PanelErrors Of(AdditiveFit fit, ExpectedErrors expected)
    {
        ArgumentNullException.ThrowIfNull(fit);
        ArgumentNullException.ThrowIfNull(expected);
        var usable = fit.CupperEffects.Length > fit.Parts && fit.DegreesOfFreedom >= ExpectedErrors.LeastDegreesOfFreedom && fit.ResidualSumOfSquares > 1e-9;
        return usable
            ? new PanelErrors(fit, ErrorSource.OwnResidual, Math.Pow(fit.ResidualDeviation, 2), BetweenCuppers(fit))
            : new PanelErrors(fit, ErrorSource.HouseSetting, Math.Pow(expected.Repeatability, 2), expected.BetweenCuppers);
    }

    /// <summary>Standard error of a sample's adjusted mean if these cuppers cupped it again.</summary>
    public double TheseCuppers(int sample) => Math.Sqrt(Variance * _fit.UnitVariance(sample));

    /// <summary>
    /// Standard error if other cuppers cupped it: the level of the panel's cuppers is itself a sample of levels
    /// (formula card of handbook quality.md section 8: s_c² ÷ b added).
    /// </summary>
    public double AnyCupper(int sample) => Math.Sqrt(Variance * _fit.UnitVariance(sample) + LevelVariance(_fit.PartOf(sample)));

    /// <summary>Variance between cuppers divided by the cuppers of the part, as far as they count.</summary>
    public double LevelVariance(int part) => _betweenCuppers / _fit.CuppersInPart(part);

    /// <summary>
    /// A sample's adjusted mean with its error and 95 % interval: for these cuppers where their own residual is known,
    /// for any cupper where the house's settings stand in.
    /// </summary>
    public PanelEstimate Estimate(int sample)
    {
        var (error, holdsFor) = From == ErrorSource.OwnResidual
            ? (TheseCuppers(sample), HoldsFor.TheseCuppers)
            : (AnyCupper(sample), HoldsFor.AnyCupper);
        var reach = Quantile(Confidence) * error;
        return new PanelEstimate(_fit.Adjusted[sample], error, _fit.Adjusted[sample] - reach, _fit.Adjusted[sample] + reach, holdsFor);
    }

    /// <summary>Two-sided quantile: Student's t with the fit's degrees of freedom, or normal for the house's settings.</summary>
    public double Quantile(double confidence) => From == ErrorSource.OwnResidual
        ? StudentT.InvCDF(0, 1, _fit.DegreesOfFreedom, 0.5 + confidence / 2)
        : Normal.InvCDF(0, 1, 0.5 + confidence / 2);

    /// <summary>
    /// Moment estimate of the variance between cuppers: the effects' sum of squares less what error alone would give,
    /// over its degrees of freedom; a negative estimate is 0. For a complete table this is (MS_c − MS_e) ÷ samples.
    /// </summary>
    private static double BetweenCuppers(AdditiveFit fit)
    {
        var freedom = fit.CupperEffects.Length - fit.Parts;
        var variance = fit.ResidualSumOfSquares / fit.DegreesOfFreedom;
        return freedom == 0
            ? 0
            : Math.Max(0, (fit.EffectSquares - variance * fit.EffectTrace) / freedom);
    }
}
