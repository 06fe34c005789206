using CsCheck;
using GreenLedger.Domain.Choosing;

namespace GreenLedger.Domain.Tests.Choosing;

public sealed class EfficientFrontTests
{
    /// <summary>Handbook quality.md section 5 and section 9, value 27: C dominates D; the front is E, A, B, C.</summary>
    [Fact]
    public void The_running_example_has_all_lots_but_D_on_its_front()
    {
        long[] scores = [8650, 8525, 8400, 8400, 8750];
        long[] costs = [880, 760, 690, 720, 1150];

        var front = EfficientFront.Of(scores, costs);

        Assert.Equal([2, 1, 0, 4], front);
    }

    /// <summary>Handbook quality.md section 5: identical offers dominate neither.</summary>
    [Fact]
    public void Equal_lots_do_not_push_each_other_off()
    {
        var front = EfficientFront.Of([8500, 8500, 8400], [700, 700, 700]);

        Assert.Equal([0, 1], front.Order());
    }

    [Fact]
    public void Of_nothing_there_is_no_front() => Assert.Empty(EfficientFront.Of([], []));

    /// <summary>The definition, tested on every pair.</summary>
    [Fact]
    public void It_is_what_comparing_every_pair_gives() =>
        Gen.Select(Gen.Int[0, 12], Gen.Int[0, 12]).Array[0, 40].Sample(lots =>
        {
            var scores = lots.Select(lot => (long)lot.Item1).ToArray();
            var costs = lots.Select(lot => (long)lot.Item2).ToArray();

            var front = EfficientFront.Of(scores, costs).Order();

            Assert.Equal(ByEveryPair(scores, costs), front);
        });

    private static IEnumerable<int> ByEveryPair(long[] scores, long[] costs) =>
        Enumerable.Range(0, scores.Length).Where(i => !Enumerable.Range(0, scores.Length).Any(j =>
            scores[j] >= scores[i] && costs[j] <= costs[i] && (scores[j] > scores[i] || costs[j] < costs[i])));
}
