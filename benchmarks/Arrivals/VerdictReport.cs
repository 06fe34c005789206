using System.Collections.Concurrent;
using System.Globalization;

namespace GreenLedger.Benchmarks.Arrivals;

/// <summary>Prints the tables of docs/arrival-verdict.md, and whether the method keeps its promise at the tolerance.</summary>
internal static class VerdictReport
{
    private const int Runs = 20_000;

    private static readonly int[] Panels = [3, 5, 8];
    private static readonly bool[] Shifts = [false, true];

    private static readonly double[] Differences = [0, -0.5, -1, -1.5, -2];

    /// <summary>Whether, at a true difference of exactly the tolerance, neither verdict falls in more than 5 % of the runs and their Monte Carlo error.</summary>
    public static bool Print()
    {
        var found = new ConcurrentDictionary<VerdictCase, VerdictShares>();
        var cases = from way in Enum.GetValues<Way>() from shift in Shifts from cuppers in Panels from difference in Differences select new VerdictCase(way, shift, cuppers, difference);
        Parallel.ForEach(cases, question => found[question] = new VerdictSimulation(question, Runs).Run());
        foreach (var (way, shift) in from way in Enum.GetValues<Way>() from shift in Shifts select (way, shift))
        {
            Table.Print(
                $"### {Words(way)}, {(shift ? "sessions shift" : "sessions do not shift")}",
                ["Truly apart", .. Panels.Select(cuppers => $"{cuppers} cuppers")],
                Differences.Select(difference => (IReadOnlyList<string>)[difference.ToString("0.0", CultureInfo.InvariantCulture), .. Panels.Select(cuppers => Shares(found[new(way, shift, cuppers, difference)]))]));
        }

        return Keeps(found);
    }

    private static bool Keeps(IReadOnlyDictionary<VerdictCase, VerdictShares> found)
    {
        var allowed = 0.05 + 3 * Math.Sqrt(0.05 * 0.95 / Runs);
        var worst = found.Where(one => one.Key.TrueDifference == -(double)VerdictSimulation.Tolerance.Points).MaxBy(one => Math.Max(one.Value.Matches, one.Value.Short));
        var most = Math.Max(worst.Value.Matches, worst.Value.Short);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"At exactly the tolerance a verdict falls in at most {most:P2} of {Runs:#,0} runs ({worst.Key.Cuppers} cuppers, {Words(worst.Key.Way)}); 5 % and three Monte Carlo errors are {allowed:P2}: {(most <= allowed ? "kept" : "NOT KEPT")}.\n"));
        return most <= allowed;
    }

    /// <summary>Matches, short and undecided.</summary>
    private static string Shares(VerdictShares shares) => string.Join(" / ", new[] { shares.Matches, shares.Short, shares.Undecided }.Select(share => (share * 100).ToString("0.0", CultureInfo.InvariantCulture)));

    private static string Words(Way way) => way switch
    {
        Way.OneSession => "One session, the two coffees alone",
        Way.OneSessionOfSix => "One session with four other coffees",
        Way.TwoSessionsWithReference => "Two sessions, the reference in both",
        _ => "Two sessions, a shift of 0.50 stated by the house",
    };
}
