using System.Globalization;

namespace GreenLedger.Domain.Cupping.LayingOut;

/// <summary>
/// How near serving orders come to favouring no sample. Where all counts are alike they are balanced for position and
/// for carry-over from the sample before.
/// </summary>
/// <param name="CuppersForBalance">A full square is balanced with this many cuppers, or a multiple of them.</param>
/// <param name="EvenCount">What each count would be if all were alike: cuppers ÷ samples, for positions and neighbours.</param>
/// <param name="FewestAtPosition">How seldom a sample stands at a position; <paramref name="MostAtPosition"/> how often.</param>
/// <param name="FewestAfter">How seldom a sample directly follows another; <paramref name="MostAfter"/> how often.</param>
/// <param name="EarliestMean">The mean position of the sample that comes earliest; <paramref name="LatestMean"/> of the latest.</param>
public sealed record ServingBalance(
    int Samples,
    int Cuppers,
    int CuppersForBalance,
    double EvenCount,
    int FewestAtPosition,
    int MostAtPosition,
    int FewestAfter,
    int MostAfter,
    double EarliestMean,
    double LatestMean)
{
    public bool IsBalanced => FewestAtPosition == MostAtPosition && FewestAfter == MostAfter;

    /// <summary>The mean position that every sample would have if the orders were even.</summary>
    public double EvenMean => (Samples + 1) / 2.0;

    public string Sentence => Samples == 1
        ? "One sample: there is no order to balance."
        : IsBalanced ? Balanced() : NearBalanced();

    /// <param name="orders">Of each cupper the samples from 0 as served; all of the same samples, at least one order.</param>
    public static ServingBalance Of(IReadOnlyList<IReadOnlyList<int>> orders)
    {
        ArgumentNullException.ThrowIfNull(orders);
        int samples = orders[0].Count, cuppers = orders.Count;
        var tally = ServingTally.Of(samples, orders);
        var (fewestAt, mostAt) = tally.AtPosition();
        var (fewestAfter, mostAfter) = tally.After();
        var means = Enumerable.Range(0, samples).Select(sample => (double)tally.PositionSum(sample) / cuppers).ToList();
        return new ServingBalance(
            samples, cuppers, WilliamsSquare.Of(samples).Count, (double)cuppers / samples, fewestAt, mostAt, fewestAfter, mostAfter, means.Min(), means.Max());
    }

    private string Balanced() =>
        $"Balanced: each sample is served {Times(MostAtPosition, MostAtPosition)} at each position, and {Times(MostAfter, MostAfter)} directly after each other sample.";

    private string NearBalanced() => string.Create(
        CultureInfo.InvariantCulture,
        $"Near-balanced: full balance for {Samples} samples needs {CuppersForBalance} cuppers or a multiple, here {(Cuppers == 1 ? "is" : "are")} {Cuppers}. A sample is served {Times(FewestAtPosition, MostAtPosition)} at a position and {Times(FewestAfter, MostAfter)} directly after a given other sample, where {EvenCount:0.##} would be even; its mean position lies between {EarliestMean:0.0} and {LatestMean:0.0}, where {EvenMean:0.0} would be even.");

    private static string Times(int fewest, int most) => (fewest, most) switch
    {
        (1, 1) => "once",
        (2, 2) => "twice",
        (0, 1) => "at most once",
        _ when fewest == most => $"{most} times",
        _ => $"{fewest} to {most} times",
    };
}
