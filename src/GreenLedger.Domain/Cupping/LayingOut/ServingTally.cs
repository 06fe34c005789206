namespace GreenLedger.Domain.Cupping.LayingOut;

/// <summary>
/// Counts over serving orders how often each sample stands at each position and how often one directly follows another.
/// </summary>
internal sealed class ServingTally(int samples)
{
    private readonly int[,] _at = new int[samples, samples];
    private readonly int[,] _after = new int[samples, samples];
    private readonly int[] _positions = new int[samples];
    private long _counts;
    private long _places;

    /// <summary>
    /// The smaller, the more even: first the counts of positions and neighbours, then the samples' mean positions.
    /// Sums of squares, which for a given number of orders are least where all counts are alike.
    /// </summary>
    public (long Counts, long Places) Unevenness => (_counts, _places);

    public static ServingTally Of(int samples, IEnumerable<IReadOnlyList<int>> orders)
    {
        var tally = new ServingTally(samples);
        foreach (var order in orders)
        {
            tally.Add(order);
        }

        return tally;
    }

    public void Add(IReadOnlyList<int> order) => Count(order, 1);

    public void Remove(IReadOnlyList<int> order) => Count(order, -1);

    /// <summary>How often a sample stands at a position: the fewest and the most of all.</summary>
    public (int Fewest, int Most) AtPosition() => (_at.Cast<int>().Min(), _at.Cast<int>().Max());

    /// <summary>How often a sample directly follows another: the fewest and the most of all ordered pairs.</summary>
    public (int Fewest, int Most) After()
    {
        var pairs = (from one in Enumerable.Range(0, samples) from other in Enumerable.Range(0, samples) where one != other select _after[one, other]).ToList();
        return pairs.Count == 0 ? (0, 0) : (pairs.Min(), pairs.Max());
    }

    /// <summary>Sum of a sample's positions, each counted from 1.</summary>
    public int PositionSum(int sample) => _positions[sample];

    private void Count(IReadOnlyList<int> order, int by)
    {
        for (var place = 0; place < order.Count; place++)
        {
            _counts += Change(ref _at[order[place], place], by);
            _places += Change(ref _positions[order[place]], by * (place + 1));
            if (place > 0)
            {
                _counts += Change(ref _after[order[place - 1], order[place]], by);
            }
        }
    }

    /// <summary>Changes a count and returns what that adds to the sum of squares.</summary>
    private static long Change(ref int count, int by)
    {
        var before = (long)count;
        count += by;
        return (long)count * count - before * before;
    }
}
