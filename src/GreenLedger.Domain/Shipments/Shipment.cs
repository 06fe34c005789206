using System.Globalization;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Shipments;

/// <summary>Where a shipment goes and when: ports by UN/LOCODE, days as planned and as they happened.</summary>
/// <param name="ShippedOn">The on-board date of the bill of lading; null while it has not sailed.</param>
/// <param name="DischargedOn">The last of the goods left the ship; claims run from here.</param>
/// <param name="ClearedOn">Every authority cleared the goods.</param>
/// <param name="AvailableOn">The goods could be weighed and sampled.</param>
public sealed record Passage(
    string? BillOfLading,
    string? Vessel,
    string? Voyage,
    string PortOfLoading,
    string PortOfDestination,
    DateOnly? PlannedDeparture,
    DateOnly? PlannedArrival,
    DateOnly? ShippedOn,
    DateOnly? DischargedOn,
    DateOnly? ClearedOn,
    DateOnly? AvailableOn = null);

/// <summary>
/// Lots of one or more contracts that travel together, in containers under one bill of lading. A contract may be shipped in
/// parts, each of which is a shipment of its own.
/// </summary>
public sealed partial class Shipment
{
    private readonly List<ShipmentLot> _lots = [];
    private readonly List<ShipmentContainer> _containers = [];

    private Shipment() => Ref = PortOfLoading = PortOfDestination = SearchText = "";

    /// <exception cref="RuleBrokenException">The number is missing, or the passage cannot be.</exception>
    public Shipment(string @ref, Passage passage)
        : this()
    {
        Id = Id<Shipment>.New();
        Ref = Rule.Text(@ref, "The number of the shipment", 20, nameof(Ref));
        Sail(passage);
    }

    public Id<Shipment> Id { get; private set; }

    public int Version { get; private set; }

    /// <summary>The house's own number of the shipment: S26-003.</summary>
    public string Ref { get; private set; }

    public string? BillOfLading { get; private set; }

    public string? Vessel { get; private set; }

    public string? Voyage { get; private set; }

    /// <summary>UN/LOCODE.</summary>
    public string PortOfLoading { get; private set; }

    /// <summary>UN/LOCODE.</summary>
    public string PortOfDestination { get; private set; }

    public DateOnly? PlannedDeparture { get; private set; }

    public DateOnly? PlannedArrival { get; private set; }

    public DateOnly? ShippedOn { get; private set; }

    public DateOnly? DischargedOn { get; private set; }

    public DateOnly? ClearedOn { get; private set; }

    /// <summary>The goods could be weighed and sampled; the days for weighing may run from here.</summary>
    public DateOnly? AvailableOn { get; private set; }

    public string SearchText { get; private set; }

    public IReadOnlyList<ShipmentLot> Lots => _lots;

    public IReadOnlyList<ShipmentContainer> Containers => _containers;

    /// <summary>Net weight of all lots, as shipped.</summary>
    public Weight Net => _lots.Aggregate(Weight.Zero, (sum, lot) => sum + lot.Net);

    /// <summary>Days on board after the last day of a contract's shipment period; 0 when in time, null while it has not sailed.</summary>
    public int? DaysLate(DateOnly shipUntil) => ShippedOn is { } on ? Math.Max(0, on.DayNumber - shipUntil.DayNumber) : null;

    /// <summary>Writes down where it goes and when.</summary>
    /// <exception cref="RuleBrokenException">A port has not the shape of a UN/LOCODE, or the days stand in no possible order.</exception>
    public void Sail(Passage passage)
    {
        ArgumentNullException.ThrowIfNull(passage);
        Rule.Require(passage.ShippedOn is not null || _lots.TrueForAll(lot => lot.BoardedOn is null), $"It is on board since {Day(ShippedOn)}: put the day right, but do not empty it.", nameof(ShippedOn));
        Rule.Day(passage.PlannedDeparture, nameof(PlannedDeparture));
        Rule.Day(passage.PlannedArrival, nameof(PlannedArrival));
        Rule.Day(passage.ShippedOn, nameof(ShippedOn));
        Rule.Day(passage.DischargedOn, nameof(DischargedOn));
        Rule.Day(passage.ClearedOn, nameof(ClearedOn));
        Rule.Day(passage.AvailableOn, nameof(AvailableOn));
        Rule.Require(passage.DischargedOn is null || passage.ShippedOn is not null, "It was discharged: give the day on board first.", nameof(ShippedOn));
        Rule.Require(passage.DischargedOn is null || passage.DischargedOn >= passage.ShippedOn, "It cannot have been discharged before it was on board.", nameof(DischargedOn));
        Rule.Require(passage.ClearedOn is null || passage.ClearedOn >= passage.ShippedOn, "It cannot have been cleared before it was on board.", nameof(ClearedOn));
        Rule.Require(passage.AvailableOn is null || passage.AvailableOn >= passage.ShippedOn, "It cannot have been there to be weighed before it was on board.", nameof(AvailableOn));
        Rule.Require(passage.PlannedArrival is null || passage.PlannedDeparture is null || passage.PlannedArrival >= passage.PlannedDeparture, "It cannot be planned to arrive before it leaves.", nameof(PlannedArrival));
        BillOfLading = Rule.OptionalText(passage.BillOfLading, "The bill of lading", 40, nameof(BillOfLading));
        Vessel = Rule.OptionalText(passage.Vessel, "The vessel", 80, nameof(Vessel));
        Voyage = Rule.OptionalText(passage.Voyage, "The voyage", 40, nameof(Voyage));
        PortOfLoading = Port(passage.PortOfLoading, nameof(PortOfLoading));
        PortOfDestination = Port(passage.PortOfDestination, nameof(PortOfDestination));
        (PlannedDeparture, PlannedArrival) = (passage.PlannedDeparture, passage.PlannedArrival);
        (ShippedOn, DischargedOn, ClearedOn, AvailableOn) = (passage.ShippedOn, passage.DischargedOn, passage.ClearedOn, passage.AvailableOn);
        Index();
    }

    /// <summary>Puts a lot of a contract on it, or corrects what is on it; no bags take the lot off.</summary>
    /// <exception cref="RuleBrokenException">Bags or weight are out of range, or the contract does not ship.</exception>
    public void Carry(Contract contract, Id<ContractLot> contractLotId, int bags, Weight net)
    {
        ArgumentNullException.ThrowIfNull(contract);
        var line = contract.Lots.FirstOrDefault(lot => lot.Id == contractLotId);
        Rule.Require(line is not null, $"Contract {contract.Ref} has no such lot.", nameof(Lots));
        var known = _lots.Find(lot => lot.ContractLotId == contractLotId);
        if (known is not null && (known.Bags, known.Net) == (bags, net))
        {
            return;
        }

        Rule.Require(contract is { IsSigned: true, IsOpen: true }, $"Contract {contract.Ref} is {contract.Goods.Word()}: only lots of a signed, open contract are shipped.", nameof(Lots));
        Rule.Require(bags is >= 0 and <= 100_000, "The bags lie between 0 and 100,000.", nameof(ShipmentLot.Bags));
        if (bags == 0)
        {
            Rule.Require(known?.BoardedOn is null, $"This lot is on board since {Day(known?.BoardedOn)}: put its bags and weight right, but do not take it off.", nameof(ShipmentLot.Bags));
            _lots.RemoveAll(lot => lot.ContractLotId == contractLotId);
            return;
        }

        Rule.Require(net > Weight.Zero && net.Kilograms / bags <= 2000m, "The net weight lies above 0 and at 2,000 kg a bag at most: please check it.", nameof(ShipmentLot.Net));
        if (known is not null)
        {
            known.Weigh(bags, net);
        }
        else
        {
            _lots.Add(new ShipmentLot(contract.Id, line, bags, net));
        }
    }

    /// <summary>
    /// Tells a contract which of its lots are on board, whereby its goods are shipped or part shipped; without a day on board,
    /// or when the contract was told already, nothing happens.
    /// </summary>
    /// <param name="contract">The one that is told.</param>
    /// <param name="others">The other shipments that carry lots of it.</param>
    /// <param name="reason">What happened, where a lot lacks the approval that the contract asks for.</param>
    /// <param name="by">Who writes it down.</param>
    /// <param name="at">When it is written down.</param>
    /// <exception cref="RuleBrokenException">A lot lacks its approval and nobody says what happened.</exception>
    public void Board(Contract contract, IEnumerable<Shipment> others, string? reason, Id<Person> by, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(contract);
        var untold = _lots.Where(lot => lot.ContractId == contract.Id && lot.BoardedOn != ShippedOn).ToList();
        if (ShippedOn is not { } on || untold.Count == 0 || !contract.IsOpen)
        {
            return;
        }

        var isAll = ContractProgress.Of(contract, others.Where(other => other.Id != Id).Append(this), new HashSet<Id<ShipmentLot>>()).IsShippedInFull;
        var unapproved = untold.Where(lot => !lot.IsUnapproved && contract.LacksApproval(lot.LotId)).ToList();
        // A contract that was entered as shipped by hand, on this very day, knows it already.
        if (isAll && contract.ShippedOn == on && contract.Goods is GoodsState.Shipped or GoodsState.Arrived)
        {
            untold.ForEach(lot => lot.Board(on, unapproved.Contains(lot)));
            return;
        }

        contract.Board([.. untold.Where(lot => !lot.IsUnapproved).Select(lot => lot.LotId)], isAll, on, reason, by, at);
        untold.ForEach(lot => lot.Board(on, unapproved.Contains(lot)));
    }

    /// <summary>Replaces the containers by those given: a number a line, the seal behind it.</summary>
    /// <exception cref="RuleBrokenException">A number has not the shape of a container number, or stands twice.</exception>
    public void Load(IReadOnlyList<(string Number, string? Seal)> containers)
    {
        var read = containers.Select(line => (Number: ContainerNumber.Of(line.Number).ToString(), line.Seal)).ToList();
        Rule.Require(read.DistinctBy(line => line.Number).Count() == read.Count, "A container stands on a shipment once.", nameof(Containers));
        _containers.RemoveAll(known => read.TrueForAll(line => line.Number != known.Number));
        foreach (var (number, seal) in read)
        {
            if (_containers.Find(known => known.Number == number) is { } known)
            {
                known.Seal(seal);
            }
            else
            {
                _containers.Add(new ShipmentContainer(number, seal));
            }
        }

        Index();
    }

    private static string Port(string? text, string field)
    {
        Rule.Require(UnLocode.TryParse(text, null, out var port), $"'{text?.Trim()}' is not a UN/LOCODE: write the country's two letters and three letters or digits from 2 to 9, such as DEHAM for Hamburg.", field);
        return port.ToString();
    }

    private static string Day(DateOnly? day) => day?.ToString("d MMM yyyy", CultureInfo.InvariantCulture) ?? "";

    private void Index() => SearchText = Measures.SearchText.Of([Ref, BillOfLading, Vessel, PortOfLoading, PortOfDestination, .. _containers.Select(container => container.Number)]);
}
