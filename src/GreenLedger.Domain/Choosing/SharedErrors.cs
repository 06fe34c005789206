using GreenLedger.Domain.Cupping;

namespace GreenLedger.Domain.Choosing;

/// <summary>
/// How the error of one result goes together with those of its session, in points: the error of its own, loadings on
/// the errors that the session's results share, and the variance of the panel's level against other cuppers, which is
/// one draw for the whole part.
/// </summary>
public sealed record SharedErrors(double OwnVariance, IReadOnlyList<double> Loadings, double LevelVariance)
{
    public static SharedErrors Of(SampleResult result) => new(result.OwnVariance, result.Loadings, result.LevelVariance);
}
