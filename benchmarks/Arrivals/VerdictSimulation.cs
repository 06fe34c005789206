using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Benchmarks.Arrivals;

/// <summary>How the two coffees meet in a simulated verdict.</summary>
internal enum Way
{
    OneSession,
    OneSessionOfSix,
    TwoSessionsWithReference,
    TwoSessionsBySetting,
}

/// <summary>One question to the simulation: the way, whether sessions shift, cuppers in a panel, and how far the arrival truly lies from the approved sample.</summary>
internal readonly record struct VerdictCase(Way Way, bool SessionsShift, int Cuppers, double TrueDifference);

/// <summary>How often each verdict fell.</summary>
internal readonly record struct VerdictShares(double Matches, double Short)
{
    public double Undecided => 1 - Matches - Short;
}

/// <summary>
/// Draws panels whose coffees are known and counts how often each verdict falls. A sheet is the coffee, the cupper's level, the
/// session's and an error of its own, rounded to the quarter point; the spreads are the house's settings as a new ledger has
/// them (reproducibility 1.00, repeatability 0.50). Cuppers of two sessions are different people.
/// </summary>
internal sealed class VerdictSimulation(VerdictCase question, int runs)
{
    public static readonly Score Tolerance = Score.Of(1m);
    public const double BetweenSessions = 0.50;
    private const double Repeatability = 0.50;
    private const double Levels = 0.866;
    private const double Approved = 85;

    // A seed of its own for each case, so that cases may run in any order.
    private readonly Random _random = new(Seed(question));

    public VerdictShares Run()
    {
        var (matches, falls) = (0, 0);
        for (var run = 0; run < runs; run++)
        {
            var outcome = QualityVerdict.Of(Draw(), Tolerance).Outcome;
            matches += outcome == ArrivalOutcome.Matches ? 1 : 0;
            falls += outcome == ArrivalOutcome.Short ? 1 : 0;
        }

        return new VerdictShares((double)matches / runs, (double)falls / runs);
    }

    private CupDifference Draw()
    {
        var arrival = Approved + question.TrueDifference;
        return question.Way switch
        {
            Way.OneSession => CupComparison.OneSession(Session(Approved, arrival), 0, 1),
            Way.OneSessionOfSix => CupComparison.OneSession(Session(Approved, arrival, 83, 84, 86, 87), 0, 1),
            Way.TwoSessionsWithReference => CupComparison.TwoSessions(new(Session(Approved, 83), 0, 1), new(Session(arrival, 83), 0, 1), null),
            _ => CupComparison.TwoSessions(new(Session(Approved), 0), new(Session(arrival), 0), BetweenSessions),
        };
    }

    private List<PanelScore> Session(params double[] coffees)
    {
        // Two sessions differ by the root of 2 times what one lies from the middle.
        var shift = question.SessionsShift ? Normal(BetweenSessions / Math.Sqrt(2)) : 0;
        var sheets = new List<PanelScore>();
        for (var cupper = 0; cupper < question.Cuppers; cupper++)
        {
            var level = Normal(Levels);
            sheets.AddRange(coffees.Select((coffee, sample) => new PanelScore(sample, cupper, Math.Round((coffee + shift + level + Normal(Repeatability)) * 4, MidpointRounding.AwayFromZero) / 4)));
        }

        return sheets;
    }

    /// <summary>Box and Muller's way.</summary>
    private double Normal(double deviation) =>
        deviation * Math.Sqrt(-2 * Math.Log(1 - _random.NextDouble())) * Math.Cos(2 * Math.PI * _random.NextDouble());

    private static int Seed(VerdictCase question) =>
        20261126 + (int)question.Way * 100_000 + (question.SessionsShift ? 50_000 : 0) + question.Cuppers * 1000 + (int)Math.Round(question.TrueDifference * 100);
}
