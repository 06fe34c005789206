namespace GreenLedger.Domain.Choosing;

/// <summary>
/// The efficient front of score against cost: a lot is on it when no other lot scores at least as much for at most as
/// much and is better in one of the two. Equal lots do not push each other off (handbook quality.md section 5).
/// </summary>
public static class EfficientFront
{
    /// <summary>
    /// The places of the lots on the front, cheapest first. Any whole numbers that order scores (more is better) and
    /// costs (less is better) will do. One sort and one pass.
    /// </summary>
    public static IReadOnlyList<int> Of(ReadOnlySpan<long> scores, ReadOnlySpan<long> costs)
    {
        if (scores.Length != costs.Length)
        {
            throw new ArgumentException("There must be as many costs as scores.", nameof(costs));
        }

        var keys = costs.ToArray();
        var order = new int[keys.Length];
        for (var i = 0; i < order.Length; i++)
        {
            order[i] = i;
        }

        Array.Sort(keys, order);
        var front = new List<int>();
        var best = long.MinValue;
        for (var from = 0; from < order.Length;)
        {
            var to = from;
            var highest = long.MinValue;
            for (; to < order.Length && keys[to] == keys[from]; to++)
            {
                highest = Math.Max(highest, scores[order[to]]);
            }

            if (highest > best)
            {
                AddAll(front, order.AsSpan(from, to - from), scores, highest);
                best = highest;
            }

            from = to;
        }

        return front;
    }

    private static void AddAll(List<int> front, ReadOnlySpan<int> places, ReadOnlySpan<long> scores, long highest)
    {
        foreach (var place in places)
        {
            if (scores[place] == highest)
            {
                front.Add(place);
            }
        }
    }
}
