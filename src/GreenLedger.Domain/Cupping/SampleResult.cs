using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Samples;

namespace GreenLedger.Domain.Cupping;

/// <summary>Where a result's error comes from.</summary>
public enum ErrorSource
{
    /// <summary>The spread that the session's own sheets leave around the fit.</summary>
    OwnResidual = 0,

    /// <summary>The house's reproducibility and repeatability, because the sheets are too few to show their own.</summary>
    HouseSetting = 1,
}

/// <summary>Whom an interval speaks for.</summary>
public enum HoldsFor
{
    /// <summary>If these cuppers cupped the sample again.</summary>
    TheseCuppers = 0,

    /// <summary>If other cuppers of the same kind cupped it.</summary>
    AnyCupper = 1,
}

/// <summary>The words of an interval.</summary>
public static class HoldsForWords
{
    public static string Word(this HoldsFor holdsFor) => holdsFor == HoldsFor.TheseCuppers ? "these cuppers" : "any cupper";
}

/// <summary>
/// A panel's result for one sample. Scores of the same form only are comparable. Kept small and flat, because
/// shortlists read it by the hundred thousand.
/// </summary>
public sealed class SampleResult
{
    private readonly List<double> _loadings = [];

    private SampleResult()
    {
    }

    internal SampleResult(CuppingSession session, SessionSample sample)
    {
        Id = Id<SampleResult>.New();
        SessionId = session.Id;
        FormId = session.FormId;
        HeldOn = session.HeldOn;
        SampleId = sample.SampleId;
        LotId = sample.LotId;
        Position = sample.Position;
    }

    public Id<SampleResult> Id { get; private set; }

    public Id<CuppingSession> SessionId { get; private set; }

    public Id<CuppingForm> FormId { get; private set; }

    public DateOnly HeldOn { get; private set; }

    public Id<Sample> SampleId { get; private set; }

    public Id<Lot> LotId { get; private set; }

    public int Position { get; private set; }

    /// <summary>The mean of the sample's sheets as they stand; wrong where cuppers differ in who tasted what.</summary>
    public Score PlainMean { get; internal set; }

    /// <summary>The adjusted mean of the additive fit; with one cupper, the sheet.</summary>
    public Score Fitted { get; internal set; }

    /// <summary>Standard error of <see cref="Fitted"/> for whom <see cref="HoldsFor"/> says.</summary>
    public Score StandardError { get; internal set; }

    /// <summary>Lower end of the 95 % interval; ends are cut at −100 and 100 points.</summary>
    public Score Low { get; internal set; }

    public Score High { get; internal set; }

    public HoldsFor HoldsFor { get; internal set; }

    public ErrorSource ErrorFrom { get; internal set; }

    /// <summary>Standard error if these cuppers cupped again: with one cupper, the house's repeatability.</summary>
    public Score TheseCuppersError { get; internal set; }

    /// <summary>Standard error if others cupped; equal to that of these cuppers where cuppers show no bias.</summary>
    public Score AnyCupperError { get; internal set; }

    /// <summary>Residual degrees of freedom of the session's fit; null where the house's settings were used.</summary>
    public int? DegreesOfFreedom { get; internal set; }

    public int Cuppers { get; internal set; }

    public int Sheets { get; internal set; }

    /// <summary>The connected part of the session's table; results of two parts are not comparable.</summary>
    public int Part { get; internal set; }

    /// <summary>Error variance of this sample alone, in points². See <see cref="PanelResult.Covariance"/>.</summary>
    public double OwnVariance { get; internal set; }

    /// <summary>Loadings on the errors shared with the session's other samples, in points.</summary>
    public IReadOnlyList<double> Loadings => _loadings;

    /// <summary>
    /// Variance of the whole panel's level against other cuppers, in points²: the same for every sample of the part, so
    /// it moves all of them together and never their order.
    /// </summary>
    public double LevelVariance { get; internal set; }

    internal void Load(IEnumerable<double> loadings) => _loadings.AddRange(loadings);
}
