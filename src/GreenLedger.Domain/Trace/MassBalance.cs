using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Shipments;
using GreenLedger.Domain.Stock;

namespace GreenLedger.Domain.Trace;

/// <summary>A part of a difference, by its name; below zero for what came on top.</summary>
public sealed record BalancePart(string What, Weight Weight);

/// <summary>From one figure to the next on a lot's way, with what lies between them.</summary>
/// <param name="Before">What there was, such as the weight shipped.</param>
/// <param name="After">What there was after it, such as the weight landed.</param>
/// <param name="Parts">What makes the difference.</param>
public sealed record BalanceStep(string From, Weight Before, string To, Weight After, IReadOnlyList<BalancePart> Parts)
{
    public Weight Difference => Before - After;

    /// <summary>What of the difference no part explains; zero where the step closes.</summary>
    public Weight Unexplained => Parts.Aggregate(Difference, (left, part) => left - part.Weight);

    public bool Closes => Unexplained == Weight.Zero;

    internal bool IsEmpty => Before == Weight.Zero && After == Weight.Zero && Parts.Count == 0;
}

/// <summary>
/// Where the kilograms of a lot are: contracted, shipped, landed, received, left, with every difference named. It is exact; a step
/// that does not close says so and is a thing to look into.
/// </summary>
public sealed record MassBalance(Id<Lot> LotId, IReadOnlyList<BalanceStep> Steps)
{
    public bool Closes => Steps.All(step => step.Closes);

    /// <summary>The last step, from what was received to what is left; null for a lot of which none came.</summary>
    public BalanceStep? InStock => Steps.FirstOrDefault(step => step.To == "left in stock");

    public static MassBalance Of(Id<Lot> lot, TraceFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        BalanceStep[] steps = [Before(lot, facts), Shipped(lot, facts), Landed(lot, facts), Received(lot, facts), Left(lot, facts)];
        return new MassBalance(lot, [.. steps.Where(step => !step.IsEmpty)]);
    }

    /// <summary>What came before this ledger began, and what of it was left for it as opening stock.</summary>
    private static BalanceStep Before(Id<Lot> lot, TraceFacts facts)
    {
        var received = Sum(facts.ContractLines().Where(one => one.Line.LotId == lot && one.Contract.IsSigned).Select(one => one.Line.Received ?? Weight.Zero));
        var opening = received == Weight.Zero ? Weight.Zero : Sum(facts.Standing().Where(movement => movement.LotId == lot && movement.Kind == MovementKind.Opening).Select(movement => movement.Weighed));
        return new BalanceStep("received before this ledger", received, "opening stock", opening, Told([new BalancePart(opening > received ? "opened beyond what was received" : "gone before this ledger", received - opening)]));
    }

    private static BalanceStep Shipped(Id<Lot> lot, TraceFacts facts)
    {
        var lines = facts.ContractLines().Where(one => one.Line.LotId == lot && one.Contract.IsSigned).ToList();
        var boarded = Boarded(lot, facts);
        var parts = lines.Select(one =>
        {
            var missing = one.Line.Net - Sum(boarded.Where(line => line.Line.ContractLotId == one.Line.Id).Select(line => line.Line.Net));
            return new BalancePart(
                one.Line.Received is not null ? $"came before this ledger on {one.Contract.Ref}" : missing < Weight.Zero ? $"shipped beyond the weight of {one.Contract.Ref}" : one.Contract.IsOpen ? $"still to be shipped on {one.Contract.Ref}" : $"left unshipped on {one.Contract.Ref}", missing);
        });
        var without = boarded.Where(line => lines.TrueForAll(one => one.Line.Id != line.Line.ContractLotId)).Select(line => new BalancePart($"shipped as {line.Shipment.Ref} without a contract that counts", Weight.Zero - line.Line.Net));
        return new BalanceStep("contracted", Sum(lines.Select(one => one.Line.Net)), "shipped", Sum(boarded.Select(line => line.Line.Net)), Told(parts.Concat(without)));
    }

    private static BalanceStep Landed(Id<Lot> lot, TraceFacts facts)
    {
        var boarded = Boarded(lot, facts);
        var arrivals = facts.Arrivals.Where(arrival => arrival.LotId == lot).ToList();
        var onTheWay = boarded.Where(line => arrivals.TrueForAll(arrival => arrival.ShipmentLotId != line.Line.Id)).Select(line => new BalancePart($"{line.Shipment.Ref} on the way or not weighed yet", line.Line.Net));
        var lost = arrivals.Select(arrival => new BalancePart(arrival.Landed > arrival.Shipped ? "landed beyond the shipped weight" : "lost between shipping and landing", arrival.Shipped - arrival.Landed));
        return new BalanceStep("shipped", Sum(boarded.Select(line => line.Line.Net)), "landed", Sum(arrivals.Select(arrival => arrival.Landed)), Told(onTheWay.Concat(lost)));
    }

    private static BalanceStep Received(Id<Lot> lot, TraceFacts facts)
    {
        var receipts = facts.Standing().Where(movement => movement.LotId == lot && movement.Kind == MovementKind.Receipt).ToList();
        var arrivals = facts.Arrivals.Where(arrival => arrival.LotId == lot).ToList();
        var waiting = arrivals.Where(arrival => receipts.TrueForAll(receipt => receipt.ArrivalId != arrival.Id)).Select(arrival => new BalancePart("landed and not taken into stock yet", arrival.Landed));
        return new BalanceStep("landed", Sum(arrivals.Select(arrival => arrival.Landed)), "received into stock", Sum(receipts.Select(receipt => receipt.Weighed)), Told(waiting));
    }

    /// <summary>Transfers are left out: a half without its other half is a difference that nothing explains.</summary>
    private static BalanceStep Left(Id<Lot> lot, TraceFacts facts)
    {
        var standing = facts.Standing().Where(movement => movement.LotId == lot).ToList();
        var parts = standing.Where(movement => TraceFacts.KindOf(movement.Kind) is not null).GroupBy(movement => movement.Kind).OrderBy(kind => kind.Key)
            .Select(kind => new BalancePart(Gone(kind.Key), Weight.Zero - Sum(kind.Select(movement => movement.Weighed))));
        return new BalanceStep(
            "received into stock", Sum(standing.Where(movement => movement.Kind == MovementKind.Receipt).Select(movement => movement.Weighed)),
            "left in stock", Sum(facts.Holdings.Where(holding => holding.LotId == lot).Select(holding => holding.Weighed)), Told(parts));
    }

    private static string Gone(MovementKind kind) => kind switch
    {
        MovementKind.Opening => "opening stock, on top",
        MovementKind.Return => "returned, on top",
        MovementKind.Gain => "found at a count, on top",
        MovementKind.Release => "released to roasting",
        MovementKind.SampleDrawn => "drawn as samples",
        MovementKind.Loss => "lost",
        MovementKind.Sale => "sold",
        _ => throw new ArgumentOutOfRangeException(nameof(kind)),
    };

    private static List<(Shipment Shipment, ShipmentLot Line)> Boarded(Id<Lot> lot, TraceFacts facts) => [.. facts.ShipmentLines().Where(one => one.Line.LotId == lot && one.Shipment.ShippedOn is not null)];

    private static IReadOnlyList<BalancePart> Told(IEnumerable<BalancePart> parts) =>
        [.. parts.GroupBy(part => part.What).Select(same => new BalancePart(same.Key, Sum(same.Select(part => part.Weight)))).Where(part => part.Weight != Weight.Zero)];

    private static Weight Sum(IEnumerable<Weight> weights) => weights.Aggregate(Weight.Zero, (sum, one) => sum + one);
}
