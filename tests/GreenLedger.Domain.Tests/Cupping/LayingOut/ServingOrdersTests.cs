using GreenLedger.Domain.Cupping.LayingOut;

namespace GreenLedger.Domain.Tests.Cupping.LayingOut;

public sealed class ServingOrdersTests
{
    public static TheoryData<int> Sizes => [.. Enumerable.Range(2, 11)];

    /// <summary>Handbook quality.md section 4.10.</summary>
    [Theory]
    [InlineData("ABC BCA CAB CBA ACB BAC")]
    [InlineData("ABDC BCAD CDBA DACB")]
    [InlineData("ABECD BCADE CDBEA DECAB EADBC DCEBA EDACB AEBDC BACED CBDAE")]
    [InlineData("ABFCED BCADFE CDBEAF DECFBA EFDACB FAEBDC")]
    public void A_square_is_the_handbooks(string rows)
    {
        var square = WilliamsSquare.Of(rows.IndexOf(' ', StringComparison.Ordinal));

        Assert.Equal(rows, string.Join(' ', square.Select(row => string.Concat(row.Select(sample => (char)('A' + sample))))));
    }

    /// <summary>Williams 1949: even sizes once each, odd sizes twice each (handbook quality.md 4.10, check value 22).</summary>
    [Theory]
    [MemberData(nameof(Sizes))]
    public void Every_sample_stands_at_each_position_and_after_each_other_equally_often(int samples)
    {
        var square = WilliamsSquare.Of(samples);

        var times = samples % 2 == 0 ? 1 : 2;
        Assert.Equal(times * samples, square.Count);
        Assert.All(square, row => Assert.Equal(Enumerable.Range(0, samples), row.Order()));
        Assert.All(Positions(square).Values, count => Assert.Equal(times, count));
        Assert.Equal(samples * samples, Positions(square).Count);
        Assert.All(Neighbours(square).Values, count => Assert.Equal(times, count));
        Assert.Equal(samples * (samples - 1), Neighbours(square).Count);
    }

    [Theory]
    [MemberData(nameof(Sizes))]
    public void As_many_cuppers_as_rows_or_a_multiple_are_balanced(int samples)
    {
        var cuppers = 2 * WilliamsSquare.Of(samples).Count;

        var orders = ServingOrders.For(samples, cuppers, new Random(samples));

        Assert.True(orders.Balance.IsBalanced);
        Assert.Equal(cuppers, orders.Orders.Count);
        Assert.All(Positions(orders.Orders).Values, count => Assert.Equal(cuppers / samples, count));
        Assert.All(Neighbours(orders.Orders).Values, count => Assert.Equal(cuppers / samples, count));
    }

    [Theory]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(7)]
    public void With_fewer_cuppers_no_other_rows_of_the_square_are_more_even(int samples)
    {
        var square = WilliamsSquare.Of(samples);

        // Every choice of rows is tried, which is another way than the search that is tested.
        var best = Enumerable.Range(1, (1 << square.Count) - 2)
            .Select(bits => square.Where((_, row) => (bits >> row & 1) == 1).ToList())
            .GroupBy(rows => rows.Count)
            .ToDictionary(group => group.Key, group => group.Min(Unevenness));
        foreach (var (cuppers, least) in best)
        {
            Assert.Equal(least, Unevenness(ServingOrders.For(samples, cuppers, new Random(cuppers)).Orders));
        }
    }

    [Fact]
    public void Cuppers_beyond_a_square_use_its_rows_again()
    {
        var orders = ServingOrders.For(4, 6, new Random(3));

        var repeated = orders.Orders.GroupBy(order => string.Join(' ', order)).Select(group => group.Count()).Order();
        // Worked by hand: four rows once, two of them again.
        Assert.Equal([1, 1, 2, 2], repeated);
        Assert.False(orders.Balance.IsBalanced);
    }

    [Fact]
    public void Two_cuppers_get_orders_that_mirror_each_other()
    {
        var orders = ServingOrders.For(6, 2, new Random(11));

        // Worked by hand: with mirrored orders every sample's mean position is 3.5 of 6.
        Assert.Equal(orders.Orders[0], orders.Orders[1].Reverse());
        Assert.Equal((3.5, 3.5), (orders.Balance.EarliestMean, orders.Balance.LatestMean));
    }

    [Fact]
    public void Chance_deals_samples_and_cuppers_but_the_same_seed_deals_the_same()
    {
        var first = Text(ServingOrders.For(8, 5, new Random(1)));

        Assert.Equal(first, Text(ServingOrders.For(8, 5, new Random(1))));
        Assert.NotEqual(first, Text(ServingOrders.For(8, 5, new Random(2))));
        // Each of 8 samples is first for the first cupper in some of 200 draws.
        Assert.Equal(8, Enumerable.Range(0, 200).Select(seed => ServingOrders.For(8, 5, new Random(seed)).Orders[0][0]).Distinct().Count());
    }

    [Theory]
    [InlineData(1, 3, "One sample: there is no order to balance.")]
    [InlineData(4, 4, "Balanced: each sample is served once at each position, and once directly after each other sample.")]
    [InlineData(5, 10, "Balanced: each sample is served twice at each position, and twice directly after each other sample.")]
    [InlineData(2, 1, "Near-balanced: full balance for 2 samples needs 2 cuppers or a multiple, here is 1. A sample is served at most once at a position and at most once directly after a given other sample, where 0.5 would be even; its mean position lies between 1.0 and 2.0, where 1.5 would be even.")]
    public void A_sentence_says_how_near_the_orders_are(int samples, int cuppers, string sentence)
    {
        Assert.Equal(sentence, ServingOrders.For(samples, cuppers, new Random(5)).Balance.Sentence);
    }

    [Theory]
    [InlineData(6, 5)]
    [InlineData(4, 3)]
    public void A_latecomer_completes_the_square(int samples, int cuppers)
    {
        var early = ServingOrders.For(samples, cuppers, new Random(9));

        var late = ServingOrders.WithLatecomer(early.Orders, new Random(10));

        Assert.Equal(early.Orders, late.Orders.Take(cuppers));
        Assert.True(late.Balance.IsBalanced);
    }

    [Fact]
    public void Latecomers_complete_an_odd_square_too()
    {
        var orders = ServingOrders.For(5, 8, new Random(4));

        orders = ServingOrders.WithLatecomer(orders.Orders, new Random(1));
        orders = ServingOrders.WithLatecomer(orders.Orders, new Random(2));

        Assert.True(orders.Balance.IsBalanced);
    }

    [Theory]
    [InlineData(0, 4, "sample")]
    [InlineData(4, 0, "cupper")]
    public void A_table_without_samples_or_cuppers_is_refused(int samples, int cuppers, string missing)
    {
        var refused = Assert.Throws<RuleBrokenException>(() => ServingOrders.For(samples, cuppers, new Random(1)));

        Assert.Contains(missing, refused.Message, StringComparison.Ordinal);
    }

    private static string Text(ServingOrders orders) => string.Join('|', orders.Orders.Select(order => string.Join(' ', order)));

    private static Dictionary<(int Sample, int Position), int> Positions(IEnumerable<IReadOnlyList<int>> orders) =>
        orders.SelectMany(order => order.Select((sample, position) => (sample, position))).CountBy(place => place).ToDictionary();

    private static Dictionary<(int Before, int After), int> Neighbours(IEnumerable<IReadOnlyList<int>> orders) =>
        orders.SelectMany(order => order.Zip(order.Skip(1))).CountBy(pair => pair).ToDictionary();

    /// <summary>Squared counts of positions and neighbours; then squared sums of positions.</summary>
    private static (int Counts, int Places) Unevenness(IReadOnlyList<IReadOnlyList<int>> orders)
    {
        var samples = orders[0].Count;
        int[] at = new int[samples * samples], after = new int[samples * samples], sums = new int[samples];
        foreach (var order in orders)
        {
            for (var place = 0; place < samples; place++)
            {
                at[order[place] * samples + place]++;
                sums[order[place]] += place + 1;
                after[order[place] * samples + order[Math.Max(0, place - 1)]]++;
            }
        }

        // A first position was counted as following itself, which no sample does.
        return (at.Sum(count => count * count) + after.Where((_, pair) => pair / samples != pair % samples).Sum(count => count * count), sums.Sum(sum => sum * sum));
    }
}
