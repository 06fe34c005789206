using System.Diagnostics;
using System.Globalization;
using GreenLedger.Domain;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;

namespace GreenLedger.Benchmarks.Choosing;

/// <summary>A purchase plan of 500 drawn offers over 12 months for four purposes, with every kind of limit: how long, and how near the best.</summary>
internal static class PlanBenchmark
{
    private const int Months = 12;
    private const int Seed = 20261126;
    private static readonly TimeSpan Most = TimeSpan.FromSeconds(60);
    private static readonly string[] Origins = ["BR", "CO", "ET", "GT", "HN", "ID", "KE", "PE"];

    public static void Print()
    {
        var cases = new (string Name, decimal Quality, bool IsTight)[]
        {
            ("Least cost, no limits", 0m, false),
            ("Least cost, every limit", 0m, true),
            ("Half and half, every limit", 0.5m, true),
            ("Most points, every limit", 1m, true),
        };
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"### Purchase plan: {Offers.Count} offers, {Months} months, {Needs.Count} purposes; at most {Most.TotalSeconds:0} s, seed {Seed}"));
        Console.WriteLine();
        Console.WriteLine("| Plan | Time | End | Gap | Lots | Cost | Points |\n| --- | ---: | --- | ---: | ---: | ---: | ---: |");
        foreach (var one in cases)
        {
            var clock = Stopwatch.StartNew();
            var plan = PlanSolver.Solve(new PlanRequest(Months, Needs, Offers, one.IsTight ? Limits : PlanLimits.None, one.Quality), Most);
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"| {one.Name} | {clock.Elapsed.TotalSeconds:0.0} s | {plan.End} | {100 * plan.Gap:0.000} % | {plan.Buys.Count} | {plan.Cost:#,0} | {plan.Points:0.00} |"));
        }

        Console.WriteLine();
    }

    /// <summary>About 52 t a year; the filter asks for washed coffee of 85 points.</summary>
    private static List<PlanNeed> Needs { get; } =
    [
        new("Base", null, Score.Of(80m), Same(1_800m)),
        new("Lift", ProcessFamily.Natural, Score.Of(83m), Same(1_100m)),
        new("Filter", ProcessFamily.Washed, Score.Of(85m), Same(900m)),
        new("Guest", null, Score.Of(87m), Same(500m)),
    ];

    private static PlanLimits Limits { get; } = new([.. Enumerable.Repeat<decimal?>(60_000m, Months)], Weight.FromKilograms(8_000m), 24, Weight.FromKilograms(14_000m), Weight.FromKilograms(18_000m));

    private static List<PlanOffer> Offers { get; } = Draw(new Random(Seed));

    /// <summary>Dearer with more points, give or take; bags of 60, 69 or 70 kg; some can be here only later in the year.</summary>
    private static List<PlanOffer> Draw(Random random) => [.. Enumerable.Range(1, 500).Select(number =>
    {
        var points = Math.Round(80m + ((decimal)random.NextDouble() * 10m), 2);
        var cost = Math.Round(4.5m + ((points - 80m) * 0.45m) + ((decimal)random.NextDouble() * 2m), 4);
        return new PlanOffer(
            Id<Offer>.New(), $"L-{number:000}", $"Supplier {random.Next(1, 41)}", Origins[random.Next(Origins.Length)], (ProcessFamily)random.Next(3), points, cost,
            Weight.FromKilograms(new[] { 60m, 69m, 70m }[random.Next(3)]), random.Next(5, 120), random.Next(1, 6), random.Next(4) == 0 ? random.Next(1, 7) : 0);
    })];

    private static Weight[] Same(decimal kilograms) => [.. Enumerable.Repeat(Weight.FromKilograms(kilograms), Months)];
}
