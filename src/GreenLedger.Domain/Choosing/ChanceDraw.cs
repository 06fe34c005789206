using MathNet.Numerics.Random;

namespace GreenLedger.Domain.Choosing;

/// <summary>
/// How likely each lot has the highest weighted score, and one of the three highest, when the scores are drawn anew
/// from what the panels' fits know (handbook quality.md section 4.12). Costs stand still. The same lots, rules and seed
/// give the same chances. Lots that tie in a draw share the place.
/// </summary>
public sealed class ChanceDraw
{
    /// <summary>Any number would do; the same one makes a page repeatable.</summary>
    public const int UsualSeed = 20_261_125;

    /// <summary>A chance's error from drawing is at most 0.5 ÷ √draws: 0.0025 for so many.</summary>
    public const int MostDraws = 40_000;

    /// <summary>Many contenders are drawn fewer times, so that a page need not wait: this many scores in all.</summary>
    private const int ScoresDrawn = 500_000;

    private const int Places = 3;

    private ChanceDraw(int draws, int seed, Contenders contenders)
    {
        Draws = draws;
        Seed = seed;
        Contenders = contenders;
    }

    public int Draws { get; }

    public int Seed { get; }

    public Contenders Contenders { get; }

    /// <summary>The largest standard error that drawing itself leaves on a chance.</summary>
    public double DrawingError => 0.5 / Math.Sqrt(Draws);

    /// <summary>The lowest third place in a few draws of the leaders; see <see cref="Choosing.Contenders"/>.</summary>
    internal static double LowestThird(IReadOnlyList<ShortlistEntry> leaders, ChanceRules rules)
    {
        var trial = new Trial(leaders, rules);
        var lowest = double.PositiveInfinity;
        for (var draw = 0; draw < Contenders.TrialDraws; draw++)
        {
            lowest = Math.Min(lowest, Tally.ThreeHighest(trial.Next()).Third);
        }

        return lowest;
    }

    internal static ChanceDraw Of(IReadOnlyList<ShortlistEntry> ranked, Contenders contenders, ChanceRules rules)
    {
        var entries = contenders.Entries;
        var draws = Math.Min(MostDraws, ScoresDrawn / Math.Max(1, entries.Count));
        var (trial, count) = (new Trial(entries, rules), new Tally(entries.Count));
        for (var draw = 0; draw < draws && entries.Count > 0; draw++)
        {
            count.Add(trial.Next());
        }

        foreach (var entry in ranked)
        {
            entry.Chance = default(Chance);
        }

        for (var i = 0; i < entries.Count; i++)
        {
            entries[i].Chance = count.ChanceOf(i, draws);
        }

        return new ChanceDraw(draws, rules.Seed, contenders);
    }

    /// <summary>Draws scores and turns them into weighted scores.</summary>
    private sealed class Trial(IReadOnlyList<ShortlistEntry> entries, ChanceRules rules)
    {
        private readonly ScoreSampler _sampler = new(entries, rules.Terms, rules.Errors, new Xoshiro256StarStar(rules.Seed, false));
        private readonly Valuation _value = new(entries, rules.Weighted, rules.Reference);
        private readonly double[] _values = new double[entries.Count];

        public double[] Next()
        {
            _sampler.Draw(_values);
            _value.Turn(_values);
            return _values;
        }
    }

    /// <summary>Turns drawn scores into weighted scores.</summary>
    private sealed class Valuation
    {
        private readonly WeightedScore _weighted;
        private readonly (double Score, double Cost) _reference;
        private readonly int _referenceAt;
        private readonly double[] _points;
        private readonly double[] _costs;
        private readonly double[] _processes;
        private readonly double[] _totals;

        public Valuation(IReadOnlyList<ShortlistEntry> entries, WeightedScore weighted, (double Score, double Cost) reference)
        {
            _weighted = weighted;
            _reference = reference;
            _points = [.. entries.Select(entry => (double)entry.Score!.Value.Score.Points)];
            _costs = [.. entries.Select(entry => (double)entry.Candidate.CostPerKilogram!.Value)];
            _processes = [.. entries.Select(entry => weighted.Preference(entry.Candidate))];
            _totals = [.. entries.Select(entry => entry.Terms.Total)];
            _referenceAt = Enumerable.Range(0, _points.Length).FirstOrDefault(i => (_points[i], _costs[i]) == reference, -1);
        }

        public void Turn(Span<double> scores)
        {
            var reference = _referenceAt < 0 ? _reference : (scores[_referenceAt], _reference.Cost);
            for (var i = 0; i < scores.Length; i++)
            {
                scores[i] = _weighted.IsLinear
                    ? _totals[i] + _weighted.PerPoint * (scores[i] - _points[i])
                    : _weighted.Of(scores[i], _costs[i], _processes[i], reference).Total;
            }
        }
    }

    /// <summary>Counts who was best and who was among the first three.</summary>
    private sealed class Tally(int lots)
    {
        private readonly double[] _best = new double[lots];
        private readonly double[] _firstThree = new double[lots];

        public void Add(ReadOnlySpan<double> values)
        {
            var (first, third) = ThreeHighest(values);
            Share(values, first, 1, _best);
            Share(values, third, Places, _firstThree);
        }

        public static (double First, double Third) ThreeHighest(ReadOnlySpan<double> values)
        {
            var (first, second, third) = (double.NegativeInfinity, double.NegativeInfinity, double.NegativeInfinity);
            foreach (var value in values)
            {
                if (value > third)
                {
                    (first, second, third) = value > first ? (value, first, second)
                        : value > second ? (first, value, second)
                        : (first, second, value);
                }
            }

            return (first, third);
        }

        public Chance ChanceOf(int lot, int draws) => new(_best[lot] / draws, _firstThree[lot] / draws);

        /// <summary>Values above the last place's take one whole each; those equal to it share what is left.</summary>
        private static void Share(ReadOnlySpan<double> values, double last, int places, double[] counts)
        {
            var (above, equal) = (0, 0);
            foreach (var value in values)
            {
                above += value > last ? 1 : 0;
                equal += value == last ? 1 : 0;
            }

            var share = equal == 0 ? 0 : (double)(places - above) / equal;
            for (var i = 0; i < values.Length; i++)
            {
                counts[i] += values[i] > last ? 1 : values[i] == last ? Math.Min(1, share) : 0;
            }
        }
    }
}

/// <summary>What a draw needs beside the lots.</summary>
internal sealed record ChanceRules(
    RuleTerms Terms,
    WeightedScore Weighted,
    (double Score, double Cost) Reference,
    IReadOnlyDictionary<Id<Cupping.SampleResult>, SharedErrors> Errors,
    int Seed);
