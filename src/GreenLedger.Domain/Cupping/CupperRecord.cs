using MathNet.Numerics.Distributions;

namespace GreenLedger.Domain.Cupping;

/// <summary>A closed session that a cupper took part in; the sessions of one record are cupped on one form.</summary>
/// <param name="Cupper">The cupper's place among the scores.</param>
public sealed record CuppedSession(Id<CuppingSession> Id, string Title, DateOnly HeldOn, IReadOnlyList<PanelScore> Scores, int Cupper);

/// <summary>What one session says about a cupper.</summary>
/// <param name="Bias">Own level less the mean level of the others, in points; null where nobody cupped the same samples.</param>
/// <param name="Repeatability">Null where the cupper met no coffee twice, as for <paramref name="Discrimination"/>.</param>
/// <param name="Scale">Null where fewer than two samples were cupped by everyone.</param>
public sealed record SessionPerformance(
    CuppedSession Session, int Cuppers, double? Bias, Repeatability? Repeatability, OneWayTable? Discrimination, ScaleUse? Scale)
{
    internal static SessionPerformance Of(CuppedSession session)
    {
        var own = session.Scores.Where(score => score.Cupper == session.Cupper).ToList();
        var groups = own.GroupBy(score => score.Sample).Select(sample => (IReadOnlyList<double>)[.. sample.Select(score => score.Points)]).ToList();
        var twice = groups.Count > 1 && groups.Exists(group => group.Count > 1);
        return new SessionPerformance(
            session,
            session.Scores.Select(score => score.Cupper).Distinct().Count(),
            BiasOf(session),
            Cupping.Repeatability.Of(own),
            twice ? OneWayTable.Of(groups) : null,
            CupperPerformance.Of(session.Scores).FirstOrDefault(one => one.Cupper == session.Cupper)?.Scale);
    }

    /// <summary>
    /// From the additive fit, so that who missed a sample is held against the others on equal terms; for a complete table it
    /// is the own mean less the mean of the others.
    /// </summary>
    private static double? BiasOf(CuppedSession session)
    {
        var seats = session.Scores.Select(score => score.Cupper).Distinct().ToList();
        var places = session.Scores.Select(score => score.Sample).Distinct().ToList();
        var seat = seats.IndexOf(session.Cupper);
        var scores = session.Scores.Select(score => new PanelScore(places.IndexOf(score.Sample), seats.IndexOf(score.Cupper), score.Points)).ToList();
        var fit = AdditiveFit.Of(scores, places.Count, seats.Count);
        var others = Enumerable.Range(0, seats.Count).Where(other => other != seat && fit.PartOfCupper(other) == fit.PartOfCupper(seat)).ToList();
        return others.Count == 0 ? null : fit.CupperEffects[seat] - others.Average(other => fit.CupperEffects[other]);
    }
}

/// <summary>A cupper's mean bias over sessions with its 95 % interval, in points; the ends are null under three sessions.</summary>
public sealed record MeanBias(double Points, int Sessions, double? Low, double? High)
{
    public const int LeastSessions = 3;

    internal static MeanBias? Of(IReadOnlyList<double> biases)
    {
        if (biases.Count == 0)
        {
            return null;
        }

        var mean = biases.Average();
        if (biases.Count < LeastSessions)
        {
            return new MeanBias(mean, biases.Count, null, null);
        }

        var error = Math.Sqrt(biases.Sum(bias => (bias - mean) * (bias - mean)) / (biases.Count - 1) / biases.Count);
        var reach = StudentT.InvCDF(0, 1, biases.Count - 1, 0.975) * error;
        return new MeanBias(mean, biases.Count, mean - reach, mean + reach);
    }
}

/// <summary>
/// How one cupper has worked over sessions, in the words of ISO 11132:2021: bias against the panel, repeatability,
/// discrimination and use of the scale. Figures pool the sessions, each around its own means, because coffees differ
/// from session to session. <see cref="CupperRecordWords"/> says what they mean and when they are too few to judge.
/// </summary>
/// <param name="Sessions">The oldest first.</param>
/// <param name="BiasChart">Of the sessions with a bias, in their order; null while they are too few for limits.</param>
public sealed record CupperRecord(
    IReadOnlyList<SessionPerformance> Sessions,
    MeanBias? Bias,
    ControlChart? BiasChart,
    Repeatability? Repeatability,
    OneWayTable? Discrimination,
    ScaleUse? Scale)
{
    public static CupperRecord Of(IEnumerable<CuppedSession> history, int basePeriod = ControlChart.UsualBasePeriod)
    {
        var sessions = history.OrderBy(session => session.HeldOn).ThenBy(session => session.Id.Value).Select(SessionPerformance.Of).ToList();
        var biases = sessions.Where(session => session.Bias is not null).Select(session => session.Bias!.Value).ToList();
        var tested = sessions.Where(session => session.Discrimination is not null).Select(session => session.Discrimination!).ToList();
        var scales = sessions.Where(session => session.Scale is not null).Select(session => session.Scale!.Value).ToList();
        return new CupperRecord(
            sessions,
            MeanBias.Of(biases),
            ControlChart.Of(biases, basePeriod),
            Cupping.Repeatability.Pooled(sessions.Select(session => session.Session.Scores.Where(score => score.Cupper == session.Session.Cupper))),
            tested.Count == 0 ? null : OneWayTable.Pooled(tested),
            scales.Count == 0 ? null : scales.Aggregate(ScaleUse.Add));
    }
}
