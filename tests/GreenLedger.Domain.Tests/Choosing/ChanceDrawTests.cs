using CsCheck;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Cupping;

namespace GreenLedger.Domain.Tests.Choosing;

/// <summary>Forty thousand draws leave a standard error of at most 0.0025; the tolerance is four of them.</summary>
public sealed class ChanceDrawTests
{
    private const double Tolerance = 0.01;

    private static readonly RuleTerms ByScore = Demo.Rules with { Weights = new Weights { Score = 1m, Cost = 0m } };

    private static readonly IReadOnlyDictionary<Id<SampleResult>, SharedErrors> Nothing = new Dictionary<Id<SampleResult>, SharedErrors>();

    /// <summary>Handbook quality.md section 4.12 and section 9, value 30; again by integration in tests/R/choosing.R, 1.</summary>
    [Fact]
    public void Independent_lots_have_the_chances_of_the_handbook()
    {
        var shortlist = Demo.Ranked([Demo.Lot("A", 86.1m, 8m, 0.40), Demo.Lot("B", 85.6m, 8m, 0.50), Demo.Lot("C", 84.9m, 8m, 0.35)], ByScore);

        Draw(shortlist, Nothing);

        Near([0.778839, 0.216007, 0.005154], shortlist.Ranked.Select(entry => entry.Chance!.Value.Best));
        Near([1, 1, 1], shortlist.Ranked.Select(entry => entry.Chance!.Value.FirstThree));
    }

    /// <summary>
    /// T against R of the unbalanced fit of handbook quality.md section 4.6 (SE of the difference 0.208833, 6 degrees
    /// of freedom): P(T &gt; R) = 0.973014, tests/R/choosing.R, 2. Independent errors would give another figure.
    /// </summary>
    [Fact]
    public void Two_samples_of_one_session_are_drawn_from_the_fit()
    {
        var (lots, errors) = Cupped(HandbookSession(), "PQRST");
        var two = lots.Where(lot => lot.Ref is "T" or "R").ToList();

        var shortlist = Demo.Ranked(two, ByScore);
        Draw(shortlist, errors);

        Assert.Equal("T R", shortlist.Ranked.Order());
        Near([0.973014, 0.026986], shortlist.Ranked.Select(entry => entry.Chance!.Value.Best));
    }

    /// <summary>
    /// Three lots by four cuppers, handbook quality.md section 4.12 and section 9, value 29. Resampling the cuppers, all
    /// 256 times, gives 0.25, 0.75 and 0; four cuppers make that too sure, as the handbook warns. The draw from the fit
    /// (6 degrees of freedom; recorded from four million draws in R: tests/R/choosing.R, 6) says the same and is less sure.
    /// </summary>
    [Fact]
    public void Chances_from_the_fit_agree_with_resampling_the_cuppers_and_are_less_sure()
    {
        double[][] sheets = [[84.25, 82.75, 85.25, 84.00], [84.75, 82.50, 85.00, 84.75], [83.00, 82.50, 84.00, 82.75]];
        var fit = AdditiveFit.Of([.. sheets.SelectMany((row, lot) => row.Select((points, cupper) => new PanelScore(lot, cupper, points)))], 3, 4);
        var (lots, errors) = Cupped(fit, "ABC");

        var shortlist = Demo.Ranked(lots, ByScore);
        Draw(shortlist, errors);

        var drawn = shortlist.Ranked.OrderBy(entry => entry.Candidate.Ref).Select(entry => entry.Chance!.Value.Best).ToList();
        var resampled = BestByResampling(sheets);
        Assert.Equal([0.25, 0.75, 0], resampled);
        Near([0.29583, 0.70227, 0.00190], drawn);
        Assert.All(drawn.Zip(resampled), pair => Assert.Equal(pair.Second, pair.First, 0.06));
    }

    /// <summary>How often each lot has the highest mean when the cuppers are drawn with replacement in every way there is; ties split.</summary>
    private static double[] BestByResampling(double[][] sheets)
    {
        var cuppers = sheets[0].Length;
        var (best, ways) = (new double[sheets.Length], (int)Math.Pow(cuppers, cuppers));
        for (var way = 0; way < ways; way++)
        {
            var drawn = Enumerable.Range(0, cuppers).Select(place => way / (int)Math.Pow(cuppers, place) % cuppers).ToList();
            var sums = sheets.Select(row => drawn.Sum(cupper => row[cupper])).ToList();
            var first = Enumerable.Range(0, sums.Count).Where(lot => sums[lot] == sums.Max()).ToList();
            first.ForEach(lot => best[lot] += 1.0 / first.Count / ways);
        }

        return best;
    }

    /// <summary>Recorded from four million draws in R: tests/R/choosing.R, 3.</summary>
    [Fact]
    public void Lots_of_two_sessions_share_the_errors_of_their_session()
    {
        var (one, two) = (Id<CuppingSession>.New(), Id<CuppingSession>.New());
        var errors = new Dictionary<Id<SampleResult>, SharedErrors>();
        Candidate[] lots =
        [
            Shared("a", 86.50m, one, 5, 0.20, [0.15, -0.05], 0.30, errors),
            Shared("b", 86.25m, one, 5, 0.25, [0.10, 0.10], 0.30, errors),
            Shared("c", 86.00m, one, 5, 0.30, [-0.05, 0.20], 0.30, errors),
            Shared("d", 86.40m, two, null, 0.35, [0.10], 0.25, errors),
            Shared("e", 85.75m, two, null, 0.20, [0.20], 0.25, errors),
        ];

        var shortlist = Demo.Ranked(lots, ByScore);
        Draw(shortlist, errors);

        var entries = shortlist.Ranked.OrderBy(entry => entry.Candidate.Ref).Select(entry => entry.Chance!.Value).ToList();
        Near([0.421096, 0.128445, 0.082030, 0.360069, 0.008361], entries.Select(chance => chance.Best));
        Near([0.901525, 0.715988, 0.410065, 0.781163, 0.191259], entries.Select(chance => chance.FirstThree));
    }

    [Fact]
    public void The_same_lots_rules_and_seed_give_the_same_chances()
    {
        var one = Demo.Ranked(Demo.RunningExample);
        var other = Demo.Ranked([.. Demo.RunningExample.Reverse()]);

        Draw(one, Nothing);
        Draw(other, Nothing);

        Assert.Equal(one.Ranked.Select(entry => entry.Chance), other.Ranked.Select(entry => entry.Chance));
    }

    [Fact]
    public void Two_offers_of_one_lot_at_one_cost_share_its_chance()
    {
        var lot = Demo.Lot("A", 87m, 8m, 0.1);
        var again = Demo.Lot("B", 80m, 8m).With(results: lot.Results);

        var shortlist = Demo.Ranked([lot, again]);
        Draw(shortlist, Nothing);

        Assert.Equal([0.5, 0.5], shortlist.Ranked.Select(entry => entry.Chance!.Value.Best));
    }

    [Fact]
    public void Chances_add_up_to_the_places_there_are() =>
        Gen.Select(Gen.Int[8000, 9000], Gen.Int[300, 1500]).Array[3, 8].Sample(
            figures =>
            {
                var shortlist = Demo.Ranked([.. figures.Select((lot, i) => Demo.Lot($"L{i}", lot.Item1 / 100m, lot.Item2 / 100m))]);

                Draw(shortlist, Nothing);

                Assert.Equal(1, shortlist.Ranked.Sum(entry => entry.Chance!.Value.Best), 9);
                Assert.Equal(3, shortlist.Ranked.Sum(entry => entry.Chance!.Value.FirstThree), 9);
            },
            iter: 10);

    /// <summary>Left out is at most one in a thousand by their own chances, and one in a thousand for the leaders' fall.</summary>
    [Fact]
    public void Lots_without_a_chance_are_left_out_and_the_page_can_say_how_much_that_is()
    {
        var lots = Enumerable.Range(0, 400).Select(i => Demo.Lot($"L{i:000}", 80m + i * 0.02m, 8m, 0.3, freedom: 20)).ToList();
        var shortlist = Demo.Ranked(lots, ByScore);

        Draw(shortlist, Nothing);

        var draw = shortlist.Draw!;
        Assert.InRange(draw.Contenders.Entries.Count, Contenders.Fewest, 200);
        Assert.InRange(draw.Contenders.LeftOutChance, 0.001, 0.002);
        Assert.Equal(400, draw.Contenders.Entries.Count + draw.Contenders.LeftOut);
        Assert.Equal(0, shortlist.Ranked[^1].Chance!.Value.FirstThree);
    }

    /// <summary>The lots left out of a hundred, drawn all the same, have no more chance than was said.</summary>
    [Fact]
    public void What_was_left_out_has_no_more_chance_than_is_said()
    {
        var lots = Enumerable.Range(0, 100).Select(i => Demo.Lot($"L{i:000}", 84m + i * 0.02m, 8m, 0.15)).ToList();
        var shortlist = Demo.Ranked(lots, ByScore);
        var contenders = shortlist.Contenders(Nothing);
        var left = shortlist.Ranked.Except(contenders.Entries).ToList();

        var chance = FirstThreeDrawnByHand([.. shortlist.Ranked.Select(entry => (double)entry.Score!.Value.Score.Points)], 0.15, from: contenders.Entries.Count);

        Assert.Equal(left.Count, contenders.LeftOut);
        Assert.InRange(left.Count, 1, 100 - Contenders.Fewest);
        Assert.InRange(chance, 0, contenders.LeftOutChance + 0.002);
    }

    /// <summary>How often, in twenty thousand draws of independent normal scores, a lot from this place on is among the first three.</summary>
    private static double FirstThreeDrawnByHand(double[] means, double error, int from)
    {
        var random = new Random(1);
        var hits = 0;
        for (var draw = 0; draw < 20_000; draw++)
        {
            var scores = means.Select(mean => mean + error * Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble())).ToArray();
            hits += Enumerable.Range(0, means.Length).OrderByDescending(i => scores[i]).Take(3).Count(i => i >= from);
        }

        return hits / 20_000.0;
    }

    private static void Draw(Shortlist shortlist, IReadOnlyDictionary<Id<SampleResult>, SharedErrors> errors) =>
        shortlist.DrawChances(shortlist.Contenders(errors), errors);

    private static void Near(double[] expected, IEnumerable<double> found) =>
        Assert.All(expected.Zip(found), pair => Assert.Equal(pair.First, pair.Second, Tolerance));

    private static Candidate Shared(
        string name, decimal score, Id<CuppingSession> session, int? freedom, double own, double[] loadings, double level, Dictionary<Id<SampleResult>, SharedErrors> errors)
    {
        var error = Math.Sqrt(own * own + loadings.Sum(loading => loading * loading) + level * level);
        var result = Demo.Result(score, error, session, freedom);
        errors[result.ResultId] = new SharedErrors(own * own, loadings, level * level);
        return Demo.Lot(name, score, 8m).With(results: [result]);
    }

    private static (List<Candidate> Lots, Dictionary<Id<SampleResult>, SharedErrors> Errors) Cupped(AdditiveFit fit, string names)
    {
        var session = Id<CuppingSession>.New();
        var errors = new Dictionary<Id<SampleResult>, SharedErrors>();
        var lots = names.Select((name, i) =>
        {
            var result = Demo.Result((decimal)fit.Adjusted[i], fit.ResidualDeviation * Math.Sqrt(fit.UnitVariance(i)), session, fit.DegreesOfFreedom);
            var loadings = fit.Loadings[i].Select(loading => loading * fit.ResidualDeviation).ToArray();
            errors[result.ResultId] = new SharedErrors(Math.Pow(fit.ResidualDeviation, 2) / fit.SheetsOf(i), loadings, 0.5);
            return Demo.Lot(name.ToString(), 80m, 8m).With(results: [result]);
        }).ToList();
        return (lots, errors);
    }

    /// <summary>The fourteen sheets of handbook quality.md section 4.6.</summary>
    private static AdditiveFit HandbookSession()
    {
        (int Sample, int Cupper, double Points)[] sheets =
        [
            (0, 0, 84.50), (1, 0, 85.50), (2, 0, 86.25), (3, 0, 83.00),
            (0, 1, 82.25), (1, 1, 83.75), (4, 1, 84.75),
            (2, 2, 87.75), (3, 2, 84.50), (4, 2, 88.50),
            (0, 3, 83.75), (1, 3, 84.50), (2, 3, 86.00), (4, 3, 86.25),
        ];
        return AdditiveFit.Of([.. sheets.Select(sheet => new PanelScore(sheet.Sample, sheet.Cupper, sheet.Points))], 5, 4);
    }
}
