using CsCheck;
using GreenLedger.Domain.Trace;

namespace GreenLedger.Domain.Tests.Trace;

public sealed class TraceGraphTests
{
    private static readonly TraceKey Lot = Key(1);
    private static readonly TraceKey First = Key(2);
    private static readonly TraceKey Second = Key(3);
    private static readonly TraceKey Store = Key(4);
    private static readonly TraceKey Early = Key(5);
    private static readonly TraceKey Late = Key(6);

    private static readonly Gen<(int From, int To, int? Day)> Edge =
        from start in Gen.Int[0, 11]
        from end in Gen.Int[0, 11]
        from day in Gen.Int[-1, 8]
        select (start, end, day < 0 ? (int?)null : day);

    /// <summary>Worked by hand: two arrivals of one lot into one store, on day 1 and day 5; what left on day 3 cannot be of the second.</summary>
    private static readonly TraceGraph TwoArrivals = new(
        new[] { Lot, First, Second, Store, Early, Late }.Select(key => new TraceNode(key, key.Id, $"{key.Kind}")),
        [
            new TraceEdge(Lot, First), new TraceEdge(Lot, Second), new TraceEdge(First, Store, Day(1)), new TraceEdge(Second, Store, Day(5)),
            new TraceEdge(Store, Early, Day(3)), new TraceEdge(Store, Late, Day(6)),
        ]);

    [Fact]
    public void What_left_before_the_coffee_came_is_not_reached_from_it()
    {
        Assert.Contains(Early, Keys(TwoArrivals.Forward([First])));
        Assert.DoesNotContain(Early, Keys(TwoArrivals.Forward([Second])));
        Assert.Contains(Late, Keys(TwoArrivals.Forward([Second])));
    }

    [Fact]
    public void What_left_comes_from_what_was_there_by_then()
    {
        Assert.Equal([Lot, First, Store, Early], Keys(TwoArrivals.Backward([Early])).OrderBy(key => key.Id));
        Assert.Equal([Lot, First, Second, Store, Late], Keys(TwoArrivals.Backward([Late])).OrderBy(key => key.Id));
        Assert.DoesNotContain(TwoArrivals.Backward([Early]).Edges, edge => edge.From == Second);
    }

    /// <summary>Issue 6: trace forward and back agree, on any graph and any days.</summary>
    [Fact]
    public void Forward_and_back_agree() => Edge.Array[0, 40].Sample(edges =>
    {
        var graph = Graph(edges);
        var forward = Enumerable.Range(0, 12).ToDictionary(at => Key(at), at => Keys(graph.Forward([Key(at)])).ToHashSet());
        var backward = Enumerable.Range(0, 12).ToDictionary(at => Key(at), at => Keys(graph.Backward([Key(at)])).ToHashSet());

        Assert.All(forward.Keys, from => Assert.All(forward.Keys, to => Assert.Equal(forward[from].Contains(to), backward[to].Contains(from))));
    });

    /// <summary>Against every walk, tried one by one: a stop is reached where some walk leads whose days do not run backwards.</summary>
    [Fact]
    public void A_stop_is_reached_where_a_walk_leads_there() => Edge.Array[0, 14].Sample(edges =>
    {
        var reached = Keys(Graph(edges).Forward([Key(0)])).Select(key => Number(key)).ToHashSet();

        Assert.Equal(Walked(edges, 0, int.MinValue, []).Append(0).ToHashSet(), reached);
    });

    private static IEnumerable<int> Walked((int From, int To, int? Day)[] edges, int at, int day, HashSet<(int, int)> seen)
    {
        if (!seen.Add((at, day)))
        {
            yield break;
        }

        foreach (var edge in edges.Where(edge => edge.From == at && (edge.Day ?? day) >= day))
        {
            yield return edge.To;
            foreach (var further in Walked(edges, edge.To, edge.Day ?? day, seen))
            {
                yield return further;
            }
        }
    }

    private static TraceGraph Graph((int From, int To, int? Day)[] edges) => new(
        Enumerable.Range(0, 12).Select(at => new TraceNode(Key(at), Key(at).Id, $"{at}")),
        edges.Select(edge => new TraceEdge(Key(edge.From), Key(edge.To), edge.Day is { } day ? Day(day) : null)));

    private static IEnumerable<TraceKey> Keys(TraceWay way) => way.Nodes.Select(node => node.Key);

    private static TraceKey Key(int number) => new(TraceKind.Warehouse, new Guid(number, 0, 0, new byte[8]));

    private static int Number(TraceKey key) => BitConverter.ToInt32(key.Id.ToByteArray());

    private static DateOnly Day(int day) => new DateOnly(2026, 1, 1).AddDays(day);
}
