using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;

namespace GreenLedger.Domain.Cupping;

/// <summary>
/// What a session's sheets say together: one joint fit, a result for each sample that has a sheet, the effect of each
/// cupper, and how the samples' errors go together.
/// </summary>
public sealed class PanelResult
{
    private readonly List<SampleResult> _samples = [];
    private readonly List<CupperEffect> _cuppers = [];
    private readonly List<DiscussedScore> _discussed = [];

    private PanelResult()
    {
    }

    public Id<PanelResult> Id { get; private set; }

    public Id<CuppingSession> SessionId { get; private set; }

    public Id<CuppingForm> FormId { get; private set; }

    public int Sheets { get; private set; }

    /// <summary>Connected parts of the table; above 1, samples of different parts are not comparable.</summary>
    public int Parts { get; private set; }

    public ErrorSource ErrorFrom { get; private set; }

    /// <summary>Standard deviation of one sheet around the fit, in points; null without degrees of freedom.</summary>
    public Score? ResidualDeviation { get; private set; }

    public int DegreesOfFreedom { get; private set; }

    /// <summary>
    /// The house's figure that stood in for the error between cuppers when this was computed; null where the sheets
    /// showed their own, and on results of before the ledger kept it.
    /// </summary>
    public Score? Reproducibility { get; private set; }

    /// <summary>The same for one cupper on the same coffee twice.</summary>
    public Score? Repeatability { get; private set; }

    /// <summary>The rule by which cuppers count less, in a sentence; null where everyone counts alike.</summary>
    public string? WeightRule { get; private set; }

    public IReadOnlyList<SampleResult> Samples => _samples;

    public IReadOnlyList<CupperEffect> Cuppers => _cuppers;

    /// <summary>Scores that were agreed on in talk; the last of a sample that was not withdrawn stands, and none enters anything that is computed.</summary>
    public IReadOnlyList<DiscussedScore> Discussed => _discussed;

    /// <summary>
    /// Covariance of two samples' fitted scores in points², for these cuppers. For any cupper add
    /// <see cref="SampleResult.LevelVariance"/> to every pair of one part.
    /// </summary>
    public static double Covariance(SampleResult one, SampleResult other)
    {
        ArgumentNullException.ThrowIfNull(one);
        ArgumentNullException.ThrowIfNull(other);
        return (one.SampleId == other.SampleId && one.SessionId == other.SessionId ? one.OwnVariance : 0)
            + (one.SessionId == other.SessionId ? one.Loadings.Zip(other.Loadings, (a, b) => a * b).Sum() : 0);
    }

    /// <summary>
    /// The joint fit over a session: the mean of each cupper for each sample, of several sheets where the sample stood as a
    /// hidden duplicate. With one cupper it is the sheet. Where they leave fewer than
    /// <see cref="ExpectedErrors.LeastDegreesOfFreedom"/> degrees of freedom, or agree exactly, the house's settings
    /// stand in for the error.
    /// </summary>
    /// <param name="weights">By which cuppers who repeat badly count less; null lets everyone count alike.</param>
    public static PanelResult Of(CuppingSession session, ExpectedErrors expected, PanelWeights? weights = null)
    {
        ArgumentNullException.ThrowIfNull(session);
        ArgumentNullException.ThrowIfNull(expected);
        Rule.Require(session.Sheets.Count > 0, "There is no sheet to work with.", nameof(Sheets));
        var all = SessionScores.Of(session);
        var (tasted, cuppers, scores) = all;
        var known = tasted.ToHashSet();
        var samples = session.Samples.Where(sample => !sample.IsDuplicate && known.Contains(sample.SampleId)).ToList();
        var weighed = cuppers.Select(key => weights?.Of(key)).ToList();
        var fit = AdditiveFit.Of(all.Cells, samples.Count, cuppers.Count, weighed.ConvertAll(weight => weight?.Weight ?? 1));
        var errors = PanelErrors.Of(fit, expected);
        var ofSample = scores.ToLookup(score => score.Sample);
        var ofCupper = scores.ToLookup(score => score.Cupper);
        var names = session.Sheets.DistinctBy(sheet => sheet.CupperKey).ToDictionary(sheet => sheet.CupperKey, sheet => sheet.CupperName);
        var result = new PanelResult
        {
            Id = Id<PanelResult>.New(),
            SessionId = session.Id,
            FormId = session.FormId,
            Sheets = scores.Count,
            Parts = fit.Parts,
            ErrorFrom = errors.From,
            ResidualDeviation = fit.DegreesOfFreedom > 0 ? InRange(fit.ResidualDeviation) : null,
            DegreesOfFreedom = fit.DegreesOfFreedom,
            Reproducibility = errors.From == ErrorSource.HouseSetting ? InRange(expected.Reproducibility) : null,
            Repeatability = errors.From == ErrorSource.HouseSetting ? InRange(expected.Repeatability) : null,
            WeightRule = weights?.Rule.Rule,
        };
        result._samples.AddRange(samples.Select((sample, index) => Result(session, sample, index, fit, errors, [.. ofSample[index]])));
        result._cuppers.AddRange(cuppers.Select((key, index) => new CupperEffect(
            key,
            names[key],
            InRange(fit.CupperEffects[index]),
            ofCupper[index].Count(),
            weighed[index])));
        return result;
    }

    /// <summary>Which samples of the session the panel can tell apart, by the fit and the error of this result.</summary>
    /// <param name="scores">The sheets that this result was computed from.</param>
    public PairwiseDifferences Differences(SessionScores scores)
    {
        ArgumentNullException.ThrowIfNull(scores);
        var weights = _cuppers.ToDictionary(cupper => cupper.CupperKey, cupper => cupper.Weight);
        var fit = AdditiveFit.Of(scores.Cells, scores.Samples.Count, scores.Cuppers.Count, [.. scores.Cuppers.Select(key => weights[key])]);
        // What stood in for the error is in each sample's own variance, on results of before the ledger kept it too.
        var expected = Math.Sqrt(_samples.Single(sample => sample.SampleId == scores.Samples[0]).OwnVariance * fit.WeightOf(0));
        return PairwiseDifferences.Of(fit, PanelErrors.Of(fit, new ExpectedErrors(expected, expected)));
    }

    /// <summary>Writes down the score that cuppers agreed on in talk for a sample; sheets and fitted score stay as they are.</summary>
    /// <exception cref="RuleBrokenException">The sample has no result here, the score is off the forms, or there is no reason.</exception>
    public DiscussedScore Discuss(Id<Sample> sample, decimal points, string reason, Id<Person> by, DateTimeOffset at)
    {
        Rule.Require(_samples.Exists(result => result.SampleId == sample), "Nobody scored this sample here: there is nothing to discuss.", nameof(Samples));
        Rule.Require(points is >= 0 and <= 100, "A discussed score lies between 0 and 100 points.", nameof(Score));
        var discussed = new DiscussedScore(sample, Score.Of(points), reason, by, at);
        _discussed.Add(discussed);
        return discussed;
    }

    /// <summary>A discussed score no longer stands; it stays with who, when and why.</summary>
    /// <exception cref="RuleBrokenException">There is no such discussed score, it was withdrawn before, or no reason is given.</exception>
    public void WithdrawDiscussed(Id<DiscussedScore> id, string? reason, Id<Person> by, DateTimeOffset at)
    {
        var discussed = _discussed.Find(one => one.Id == id);
        Rule.Require(discussed is not null, "There is no such discussed score on this result.", nameof(Discussed));
        discussed.Withdraw(reason, by, at);
    }

    private static SampleResult Result(
        CuppingSession session, SessionSample sample, int index, AdditiveFit fit, PanelErrors errors, List<PanelScore> own)
    {
        var estimate = errors.Estimate(index);
        var result = new SampleResult(session, sample)
        {
            PlainMean = InRange(own.Average(score => score.Points)),
            Fitted = InRange(estimate.Points),
            StandardError = InRange(estimate.StandardError),
            Low = InRange(estimate.Low),
            High = InRange(estimate.High),
            HoldsFor = estimate.HoldsFor,
            ErrorFrom = errors.From,
            TheseCuppersError = InRange(errors.TheseCuppers(index)),
            AnyCupperError = InRange(errors.AnyCupper(index)),
            DegreesOfFreedom = errors.From == ErrorSource.OwnResidual ? fit.DegreesOfFreedom : null,
            Cuppers = own.Select(score => score.Cupper).Distinct().Count(),
            Sheets = own.Count,
            Part = fit.PartOf(index) + 1,
            OwnVariance = errors.Variance / fit.WeightOf(index),
            LevelVariance = errors.LevelVariance(fit.PartOf(index)),
        };
        result.Load(fit.Loadings[index].Where(_ => fit.CupperEffects.Length > fit.Parts).Select(loading => loading * Math.Sqrt(errors.Variance)));
        return result;
    }

    private static Score InRange(double points) => Score.Of((decimal)Math.Clamp(points, -100, 100));
}
