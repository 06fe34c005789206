using GreenLedger.Domain.Cupping;

namespace GreenLedger.Web.Api;

/// <summary>Fitted score of one sample less that of the other, with an interval and a chance that hold for all pairs together.</summary>
internal sealed record PairReply(string One, string Other, double Difference, double StandardError, double Low, double High, double P, bool Differ);

/// <summary>
/// Which samples the panel can tell apart. Degrees of freedom are null where the house's repeatability stands for the error;
/// the quantile of the studentized range is null for one sample.
/// </summary>
/// <param name="Groups">Samples, the highest first, of which no two can be told apart.</param>
internal sealed record PairwiseReply(
    double Confidence, double? Quantile, double? DegreesOfFreedom, IReadOnlyList<PairReply> Pairs, IReadOnlyList<IReadOnlyList<string>> Groups, IReadOnlyList<string> Sentences)
{
    /// <summary>More samples are not compared pair by pair: nobody reads so many pairs.</summary>
    public const int MostSamples = ResultDetail.MostCompared;

    public static PairwiseReply? Of(AdditiveFit fit, PanelErrors errors, IReadOnlyList<string> names) =>
        names.Count > MostSamples ? null : Of(PairwiseDifferences.Of(fit, errors), names);

    public static PairwiseReply Of(PairwiseDifferences differences, IReadOnlyList<string> names) => new(
        PairwiseDifferences.Confidence,
        double.IsNaN(differences.Quantile) ? null : differences.Quantile,
        double.IsFinite(differences.DegreesOfFreedom) ? differences.DegreesOfFreedom : null,
        [.. differences.Pairs.Select(pair => new PairReply(names[pair.One], names[pair.Other], pair.Points, pair.StandardError, pair.Low, pair.High, pair.P, pair.Differ))],
        [.. differences.Groups.Select(group => (IReadOnlyList<string>)[.. group.Select(sample => names[sample])])],
        PairwiseWords.Of(differences, names));
}
