using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;

namespace GreenLedger.Domain.Trace;

/// <summary>What a stop is, and which record stands for it.</summary>
public readonly record struct TraceKey(TraceKind Kind, Guid Id);

/// <summary>A stop of a trace.</summary>
/// <param name="RecordId">The record whose page tells the rest: the contract of a contract's lot, the lot of what lies in a warehouse.</param>
/// <param name="Detail">Bill of lading, containers with their seals, the batch: what somebody needs who asks further.</param>
/// <param name="On">The day; null where none is known or several are meant.</param>
/// <param name="Weight">What it holds or moved, in kilograms; null for what has no weight.</param>
/// <param name="LotId">The lot; null for what several lots share.</param>
/// <param name="Purpose">What a release was for; null for anything else and where it names nothing.</param>
public sealed record TraceNode(TraceKey Key, Guid RecordId, string Name, string? Detail = null, DateOnly? On = null, Weight? Weight = null, Id<Lot>? LotId = null, string? Purpose = null);

/// <summary>A way from one stop to the next.</summary>
/// <param name="On">The day on which coffee passed; null where papers tie the two and no day counts.</param>
/// <param name="Weight">What passed; null where no weight is known.</param>
public sealed record TraceEdge(TraceKey From, TraceKey To, DateOnly? On = null, Weight? Weight = null);

/// <summary>Stops that a trace reached, with the ways it took.</summary>
public sealed record TraceWay(IReadOnlyList<TraceNode> Nodes, IReadOnlyList<TraceEdge> Edges)
{
    public IEnumerable<TraceNode> Of(params TraceKind[] kinds) => Nodes.Where(node => kinds.Contains(node.Key.Kind));
}

/// <summary>
/// Stops of coffee and the ways between them, from plots to what left the stock. Within a lot and a warehouse bags are not told
/// apart, so a trace may reach more than was concerned and never less; days narrow it: what left before the coffee came cannot
/// hold it.
/// </summary>
public sealed class TraceGraph
{
    private readonly Dictionary<TraceKey, TraceNode> _nodes;
    private readonly List<TraceEdge> _edges;
    private readonly ILookup<TraceKey, TraceEdge> _from;
    private readonly ILookup<TraceKey, TraceEdge> _to;

    /// <param name="nodes">Each key once; of several the first counts.</param>
    /// <param name="edges">Those whose ends are both there count.</param>
    public TraceGraph(IEnumerable<TraceNode> nodes, IEnumerable<TraceEdge> edges)
    {
        _nodes = nodes.DistinctBy(node => node.Key).ToDictionary(node => node.Key);
        _edges = [.. edges.Where(edge => _nodes.ContainsKey(edge.From) && _nodes.ContainsKey(edge.To))];
        _from = _edges.ToLookup(edge => edge.From);
        _to = _edges.ToLookup(edge => edge.To);
    }

    public IEnumerable<TraceNode> Nodes => _nodes.Values;

    public IReadOnlyList<TraceEdge> Edges => _edges;

    /// <summary>Everything that coffee of these stops may have come to: by ways whose days do not run backwards.</summary>
    public TraceWay Forward(IEnumerable<TraceKey> starts)
    {
        var earliest = Reach(starts, DateOnly.MinValue, key => _from[key].Select(edge => (edge, edge.To)), (day, reached) => day >= reached, (day, reached) => day < reached);
        return Way(earliest.Keys, edge => earliest.TryGetValue(edge.From, out var day) && (edge.On is null || edge.On >= day));
    }

    /// <summary>Everything that coffee of these stops may have come from: by ways whose days do not run backwards.</summary>
    public TraceWay Backward(IEnumerable<TraceKey> ends)
    {
        var latest = Reach(ends, DateOnly.MaxValue, key => _to[key].Select(edge => (edge, edge.From)), (day, reached) => day <= reached, (day, reached) => day > reached);
        return Way(latest.Keys, edge => latest.TryGetValue(edge.To, out var day) && (edge.On is null || edge.On <= day));
    }

    /// <summary>Both ways from these stops; of a lot also what all of it came from.</summary>
    public TraceWay Both(IReadOnlyCollection<TraceKey> starts)
    {
        var forward = Forward(starts);
        var backward = Backward(starts.Any(key => key.Kind == TraceKind.Lot) ? forward.Nodes.Select(node => node.Key) : starts);
        return new TraceWay(
            [.. forward.Nodes.Concat(backward.Nodes).DistinctBy(node => node.Key).OrderBy(Order)],
            [.. forward.Edges.Concat(backward.Edges).Distinct()]);
    }

    private static (TraceKind Kind, DateOnly On, string Name) Order(TraceNode node) => (node.Key.Kind, node.On ?? DateOnly.MinValue, node.Name);

    /// <summary>The best day at which each stop is reached; a stop is looked at again when a better day is found.</summary>
    private Dictionary<TraceKey, DateOnly> Reach(
        IEnumerable<TraceKey> starts, DateOnly start, Func<TraceKey, IEnumerable<(TraceEdge Edge, TraceKey Next)>> ways,
        Func<DateOnly, DateOnly, bool> mayPass, Func<DateOnly, DateOnly, bool> isBetter)
    {
        var reached = starts.Where(_nodes.ContainsKey).Distinct().ToDictionary(key => key, _ => start);
        var open = new Queue<TraceKey>(reached.Keys);
        while (open.TryDequeue(out var key))
        {
            foreach (var (edge, next) in ways(key))
            {
                var day = edge.On ?? reached[key];
                if (mayPass(day, reached[key]) && (!reached.TryGetValue(next, out var known) || isBetter(day, known)))
                {
                    reached[next] = day;
                    open.Enqueue(next);
                }
            }
        }

        return reached;
    }

    private TraceWay Way(IReadOnlyCollection<TraceKey> reached, Func<TraceEdge, bool> isTaken) =>
        new([.. reached.Select(key => _nodes[key]).OrderBy(Order)], [.. _edges.Where(isTaken)]);
}
