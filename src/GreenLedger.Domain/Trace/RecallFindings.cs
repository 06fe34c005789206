using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Stock;

namespace GreenLedger.Domain.Trace;

/// <summary>Coffee that a recall found: on the way, in a warehouse, or gone, with what somebody needs to call it back.</summary>
public sealed record RecallFinding(TraceKind Kind, Guid Id, string LotRef, string Name, string? Detail, DateOnly? On, Weight Weight);

/// <summary>A part of what came into stock, with its share of it.</summary>
public sealed record RecallShare(string What, Weight Weight, Percent Share);

/// <summary>
/// What a recall found of the coffee that it is about: where it lies, where it went, and how much of what was received that is.
/// </summary>
/// <param name="Lots">References of the lots.</param>
/// <param name="Lines">On the way, in warehouses, then what left, the newest first.</param>
/// <param name="Received">All that came into the warehouses of these lots, whichever way.</param>
/// <param name="Shares">What was received, by where it is now; a part that is not found stands among them.</param>
/// <param name="Found">The share of what was received of which it is known where it is.</param>
public sealed record RecallFindings(IReadOnlyList<string> Lots, IReadOnlyList<RecallFinding> Lines, Weight Received, IReadOnlyList<RecallShare> Shares, Percent Found)
{
    /// <summary>The one of the shares that nobody wants.</summary>
    public const string NotFound = "not found";

    /// <summary>Searches forward from where the recall starts. Lots are taken whole where the received and the left are reckoned.</summary>
    public static RecallFindings Of(TraceFacts facts, IReadOnlyCollection<TraceKey> starts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        var way = facts.Graph().Forward(starts);
        var refs = facts.Lots.ToDictionary(lot => lot.Id, lot => lot.Ref);
        var arrived = way.Edges.Where(edge => edge.To.Kind == TraceKind.Arrival).Select(edge => edge.From).ToHashSet();
        var lines = way.Nodes
            .Where(node => node.Key.Kind.IsGone() || (node.Key.Kind == TraceKind.Warehouse && node.Weight > Weight.Zero) || (node.Key.Kind == TraceKind.Shipment && !arrived.Contains(node.Key)))
            .OrderBy(node => node.Key.Kind.IsGone()).ThenBy(node => node.Key.Kind.IsGone() ? default : node.Key.Kind).ThenByDescending(node => node.On)
            .Select(node => new RecallFinding(node.Key.Kind, node.Key.Id, refs[node.LotId!.Value], node.Name, node.Detail, node.On, node.Weight ?? Weight.Zero)).ToList();
        var held = way.Of(TraceKind.Warehouse).Select(node => node.LotId!.Value).ToHashSet();
        var standing = facts.Standing().Where(movement => held.Contains(movement.LotId) && movement.Kind is not (MovementKind.TransferIn or MovementKind.TransferOut)).ToList();
        var received = Sum(standing.Where(movement => movement.Weighed > Weight.Zero).Select(movement => movement.Weighed));
        var shares = SharesOf(lines, standing, received).ToList();
        return new RecallFindings(
            [.. way.Nodes.Select(node => node.LotId).OfType<Id<Offers.Lot>>().Distinct().Select(lot => refs[lot]).Order(StringComparer.OrdinalIgnoreCase)],
            lines, received, shares, ShareOf(Sum(shares.Where(share => share.What != NotFound).Select(share => share.Weight)), received));
    }

    private static IEnumerable<RecallShare> SharesOf(List<RecallFinding> lines, List<Movement> standing, Weight received)
    {
        var named = lines.Where(line => line.Kind != TraceKind.Shipment).Select(line => line.Id).ToHashSet();
        var parts = lines.Where(line => line.Kind != TraceKind.Shipment).GroupBy(line => line.Kind).Select(kind => (What: kind.Key == TraceKind.Warehouse ? "in the warehouses" : kind.Key.Word(), Weight: Sum(kind.Select(line => line.Weight))))
            .Append((What: "left before this coffee came", Weight: Weight.Zero - Sum(standing.Where(movement => movement.Weighed < Weight.Zero && !named.Contains(movement.Id.Value)).Select(movement => movement.Weighed)))).ToList();
        return parts.Append((What: NotFound, Weight: received - Sum(parts.Select(part => part.Weight)))).Where(part => part.Weight != Weight.Zero).Select(part => new RecallShare(part.What, part.Weight, ShareOf(part.Weight, received)));
    }

    private static Percent ShareOf(Weight part, Weight whole) => whole == Weight.Zero ? Percent.Of(0m) : Percent.Of(Math.Round(100m * part.Micrograms / whole.Micrograms, 2, MidpointRounding.AwayFromZero));

    private static Weight Sum(IEnumerable<Weight> weights) => weights.Aggregate(Weight.Zero, (sum, one) => sum + one);
}
