namespace GreenLedger.Domain.Cupping.LayingOut;

/// <summary>Each cupper's own serving order, and how near the orders come to favouring no sample.</summary>
/// <param name="Orders">Of each cupper the samples, counted from 0, as they are served.</param>
public sealed record ServingOrders(IReadOnlyList<IReadOnlyList<int>> Orders, ServingBalance Balance)
{
    /// <summary>
    /// Starts of the search for the most even rows, found to reach the best for every size up to 7 samples; beyond what one
    /// flight holds fewer, since each takes long and they end nearly alike.
    /// </summary>
    private static int Starts(int samples) => samples <= 12 ? 12 : 3;

    /// <summary>
    /// Rows of a Williams square, its letters dealt to samples and its rows to cuppers at random. Rows are used again
    /// once all are dealt; of those beyond whole squares the most even are taken: counts of positions and neighbours
    /// first, then the samples' mean positions.
    /// </summary>
    /// <exception cref="RuleBrokenException">No sample or no cupper.</exception>
    public static ServingOrders For(int samples, int cuppers, Random random)
    {
        ArgumentNullException.ThrowIfNull(random);
        Rule.Require(samples > 0, "Choose at least one sample for the table.", nameof(samples));
        Rule.Require(cuppers > 0, "Choose at least one cupper for the table.", nameof(cuppers));
        var square = WilliamsSquare.Of(samples);
        var rows = Enumerable.Repeat(square, cuppers / square.Count).SelectMany(whole => whole)
            .Concat(MostEven(square, cuppers % square.Count, random)).ToArray();
        var letters = Enumerable.Range(0, samples).ToArray();
        random.Shuffle(letters);
        random.Shuffle(rows);
        return Of([.. rows.Select(row => (IReadOnlyList<int>)[.. row.Select(letter => letters[letter])])]);
    }

    /// <summary>
    /// The same orders with one more for a cupper who joins late: of the square that they are rows of, the row that keeps
    /// them most even. Every row of a square leads back to the whole of it, so the first order is enough to find it.
    /// </summary>
    public static ServingOrders WithLatecomer(IReadOnlyList<IReadOnlyList<int>> orders, Random random)
    {
        ArgumentNullException.ThrowIfNull(orders);
        ArgumentNullException.ThrowIfNull(random);
        var first = orders[0];
        var square = WilliamsSquare.Of(first.Count);
        var letters = square[0].Zip(first).ToDictionary(pair => pair.First, pair => pair.Second);
        var rows = square.Select(row => (IReadOnlyList<int>)[.. row.Select(letter => letters[letter])]).ToArray();
        random.Shuffle(rows);
        var tally = ServingTally.Of(first.Count, orders);
        return Of([.. orders, rows.MinBy(row => With(tally, row))!]);
    }

    private static ServingOrders Of(IReadOnlyList<IReadOnlyList<int>> orders) => new(orders, ServingBalance.Of(orders));

    private static IReadOnlyList<int>[] MostEven(IReadOnlyList<IReadOnlyList<int>> square, int wanted, Random random) =>
        wanted == 0
            ? []
            : Enumerable.Range(0, Starts(square[0].Count)).Select(_ => Exchange(square, wanted, random)).MinBy(found => found.Unevenness).Rows;

    /// <summary>From a random choice of rows, rows taken are exchanged for rows left as long as that makes them more even.</summary>
    private static (IReadOnlyList<int>[] Rows, (long, long) Unevenness) Exchange(IReadOnlyList<IReadOnlyList<int>> square, int wanted, Random random)
    {
        var rows = square.ToArray();
        random.Shuffle(rows);
        var tally = ServingTally.Of(rows[0].Count, rows[..wanted]);
        for (var improved = true; improved;)
        {
            improved = false;
            for (var taken = 0; taken < wanted; taken++)
            {
                for (var left = wanted; left < rows.Length; left++)
                {
                    var before = tally.Unevenness;
                    tally.Remove(rows[taken]);
                    tally.Add(rows[left]);
                    if (tally.Unevenness.CompareTo(before) < 0)
                    {
                        (rows[taken], rows[left]) = (rows[left], rows[taken]);
                        improved = true;
                    }
                    else
                    {
                        tally.Remove(rows[left]);
                        tally.Add(rows[taken]);
                    }
                }
            }
        }

        return (rows[..wanted], tally.Unevenness);
    }

    private static (long, long) With(ServingTally tally, IReadOnlyList<int> row)
    {
        tally.Add(row);
        var unevenness = tally.Unevenness;
        tally.Remove(row);
        return unevenness;
    }
}
