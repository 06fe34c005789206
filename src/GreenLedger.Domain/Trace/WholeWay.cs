using System.Globalization;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Shipments;
using GreenLedger.Domain.Stock;

namespace GreenLedger.Domain.Trace;

/// <summary>An arrival of a lot, with what the scales and the cup say of it.</summary>
public sealed record JudgedArrival(Arrival Arrival, WeightVerdict Weight, ArrivalVerdict Quality);

/// <summary>What of a lot came into a warehouse.</summary>
public sealed record StockedPart(Movement Movement, string Warehouse);

/// <summary>Everything that was done with a lot from the decision to the stock.</summary>
/// <param name="LotId">The lot.</param>
/// <param name="Decisions">Standing ones.</param>
/// <param name="Contracts">That name the lot, none that were cancelled.</param>
/// <param name="Shipments">That carry it.</param>
/// <param name="Arrivals">Of it.</param>
/// <param name="Claims">On those.</param>
/// <param name="Stocked">Receipts into stock that stand.</param>
/// <param name="Day">The house's day of a moment.</param>
public sealed record WholeWay(
    Id<Lot> LotId,
    IReadOnlyList<Decision> Decisions,
    IReadOnlyList<Contract> Contracts,
    IReadOnlyList<Shipment> Shipments,
    IReadOnlyList<JudgedArrival> Arrivals,
    IReadOnlyList<Claim> Claims,
    IReadOnlyList<StockedPart> Stocked,
    Func<DateTimeOffset, DateOnly> Day)
{
    private static readonly CultureInfo Reader = CultureInfo.InvariantCulture;

    /// <summary>All of it in the order in which it happened; on one day in the order of the way.</summary>
    public IReadOnlyList<WayEntry> Entries() =>
    [
        .. Decisions.Select(Of).Concat(Contracts.SelectMany(Of)).Concat(Shipments.SelectMany(Of)).Concat(Arrivals.Select(Of)).Concat(Claims.SelectMany(Of)).Concat(Stocked.Select(Of))
            .OrderBy(entry => entry.On).ThenBy(entry => entry.Kind),
    ];

    private WayEntry Of(Decision decision) => new(
        Day(decision.At), WayEntryKind.Decision, decision.Id.Value,
        decision.Quantity is { } quantity ? $"Decided to {decision.Outcome.Word()} {Kilograms(quantity)}" : $"Decided to {decision.Outcome.Word()}");

    private IEnumerable<WayEntry> Of(Contract contract)
    {
        var line = contract.Terms.Lots.FirstOrDefault(lot => lot.LotId == LotId);
        var agreed = line is null ? "" : string.Create(Reader, $": {line.Bags:#,0} bags, {Kilograms(line.Net())}");
        yield return contract.Versions[0].SignedOn is { } signed
            ? new WayEntry(signed, WayEntryKind.Contract, contract.Id.Value, $"Contract {contract.Ref} signed with {contract.Terms.Seller}{agreed}")
            : new WayEntry(Day(contract.Versions[0].WrittenAt), WayEntryKind.Contract, contract.Id.Value, $"Contract {contract.Ref} drafted with {contract.Terms.Seller}{agreed}", WayOutcome.Open, "not signed");
        foreach (var fixing in contract.Fixings.Where(fixing => fixing.Counts))
        {
            yield return new WayEntry(fixing.On, WayEntryKind.Fixing, contract.Id.Value, string.Create(Reader, $"{FixingPosition.Said(fixing.Month.Market, fixing.Weight)} of {contract.Ref} fixed at {fixing.Level:#,0.00##} against {fixing.Month}"));
        }

        foreach (var approval in contract.Approvals.Where(approval => approval.LotId == LotId))
        {
            yield return new WayEntry(
                approval.On, WayEntryKind.Approval, contract.Id.Value, $"Pre-shipment sample, round {approval.Round.ToString(Reader)}{(approval.Remarks is { } remarks ? ": " + remarks : "")}",
                approval.IsApproval ? WayOutcome.Good : WayOutcome.Bad, approval.Verdict.Word());
        }
    }

    private IEnumerable<WayEntry> Of(Shipment shipment) => shipment.ShippedOn is { } on ? shipment.Lots.Where(lot => lot.LotId == LotId).Select(lot =>
    {
        var late = shipment.DaysLate(Contracts.FirstOrDefault(contract => contract.Id == lot.ContractId)?.ShipUntil ?? on);
        string[] faults = [.. lot.IsUnapproved ? ["without approval"] : Array.Empty<string>(), .. late > 0 ? [string.Create(Reader, $"{late} {(late == 1 ? "day" : "days")} late")] : Array.Empty<string>()];
        return new WayEntry(
            on, WayEntryKind.Shipment, shipment.Id.Value, string.Create(Reader, $"Shipment {shipment.Ref}: {lot.Bags:#,0} bags, {Kilograms(lot.Net)} on board, {shipment.PortOfLoading} to {shipment.PortOfDestination}"),
            faults.Length > 0 ? WayOutcome.Bad : WayOutcome.None, faults.Length > 0 ? string.Join(", ", faults) : null);
    }) : [];

    private static WayEntry Of(JudgedArrival judged)
    {
        var (arrival, weight, quality) = judged;
        var isShort = weight.IsShort || quality.Outcome == ArrivalOutcome.Short;
        var words = (weight.IsShort, quality.Outcome) switch
        {
            (true, ArrivalOutcome.Short) => "short in weight and quality",
            (true, _) => "short in weight",
            (false, ArrivalOutcome.Short) => "short in quality",
            (false, ArrivalOutcome.Matches) => "matches",
            _ => "quality undecided",
        };
        return new WayEntry(
            arrival.ReceivedOn, WayEntryKind.Arrival, arrival.Id.Value, string.Create(Reader, $"Received {arrival.Bags:#,0} bags, {Kilograms(arrival.Landed)} of {Kilograms(arrival.Shipped)} shipped"),
            isShort ? WayOutcome.Bad : quality.Outcome == ArrivalOutcome.Matches ? WayOutcome.Good : WayOutcome.Open, words);
    }

    private static IEnumerable<WayEntry> Of(Claim claim)
    {
        var grounds = string.Join(", ", claim.Case.Grounds().Select(ground => ground.Word()));
        yield return new WayEntry(
            claim.On, WayEntryKind.Claim, claim.Id.Value, $"Claim {claim.Ref}: {grounds}{(claim.Amount is { } amount ? ", " + Text(amount) : "")}",
            claim.IsOpen ? WayOutcome.Open : WayOutcome.None, claim.IsOpen ? "open" : null);
        if (claim is { Outcome: { } outcome, SettledOn: { } settled })
        {
            yield return new WayEntry(settled, WayEntryKind.Claim, claim.Id.Value, $"Claim {claim.Ref} settled{(claim.Settled is { } paid ? ": " + Text(paid) : "")}", WayOutcome.None, outcome.Word());
        }
    }

    private WayEntry Of(StockedPart part) => new(
        part.Movement.On, WayEntryKind.Stock, LotId.Value, string.Create(Reader, $"{part.Movement.Bags:#,0} bags, {Kilograms(part.Movement.Weighed)} came into {part.Warehouse}"));

    private static string Text(Money money) => $"{money.Amount.ToString("N" + money.Currency.Decimals.ToString(Reader), Reader)} {money.Currency.Code}";

    private static string Kilograms(Weight weight) => string.Create(Reader, $"{weight.Kilograms:#,0.###} kg");
}
