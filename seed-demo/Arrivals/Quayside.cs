using System.Globalization;
using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Shipments;
using GreenLedger.SeedDemo.People;

namespace GreenLedger.SeedDemo.Arrivals;

/// <summary>What became of a contract's goods on the way.</summary>
internal sealed record Landing(Contract Contract, Shipment Shipment, Arrival Arrival, bool IsShort);

/// <summary>
/// Ships what the purchase desk says has sailed, and receives what has landed: most lots lose a few tenths of one per cent, one
/// comes short in weight and in the cup. Vessels and containers are invented, ports are real.
/// </summary>
internal sealed class Quayside(Cast cast, DateTimeOffset now, Draw draw)
{
    /// <summary>What a container of bags holds, in kilograms; common practice, no source.</summary>
    private const decimal MostOfContainer = 19_500m;

    private static readonly string[] Vessels = ["Grey Heron", "Linnet of Ostend", "Marsh Harrier", "Northern Dunlin", "Stonechat", "Tern Rock"];

    /// <summary>Handbook, trade 5.2.</summary>
    private static readonly Dictionary<string, string> Ports =
        "BR BRSSZ,CO COBUN,ET DJJIB,KE KEMBA,GT GTSTC,HN HNPCR,CR CRLIO,PE PECLL,ID IDBLW,RW TZDAR,BI TZDAR,UG KEMBA,NI NICIO,SV SVAQJ,PG PGLAE,TZ TZDAR,PA PAMIT,IN INCOK,VN VNSGN"
            .Split(',').ToDictionary(line => line[..2], line => line[3..]);

    private readonly Dictionary<int, int> _numbers = [];
    private readonly List<(Shipment Shipment, IReadOnlyList<Contract> Contracts)> _shipments = [];
    private readonly List<Landing> _landings = [];

    public IReadOnlyCollection<Shipment> Shipments => _shipments.ConvertAll(one => one.Shipment);

    /// <summary>In the order in which they were received.</summary>
    public IReadOnlyList<Landing> Landings => [.. _landings.OrderBy(landing => landing.Arrival.ReceivedOn)];

    /// <summary>All lots of contracts that go together, with the bags that the contracts name, in as many containers as they fill.</summary>
    public void Ship(IReadOnlyList<Contract> contracts, DateOnly on, string origin)
    {
        var shipment = new Shipment(NumberOf(on), Passage(on, origin, null));
        foreach (var (contract, lot) in contracts.SelectMany(contract => contract.Lots.Select(lot => (contract, lot))))
        {
            shipment.Carry(contract, lot.Id, lot.Bags, lot.Net);
        }

        var containers = (int)Math.Ceiling(shipment.Net.Kilograms / MostOfContainer);
        shipment.Load([.. Enumerable.Range(0, containers).Select(_ => (Container(), (string?)$"VK{draw.Between(100_000, 999_999)}"))]);
        _shipments.Add((shipment, contracts));
    }

    /// <summary>Discharged three days before it is received here.</summary>
    public void Receive(IReadOnlyList<Contract> contracts, DateOnly on, string origin, bool isShort)
    {
        var shipment = _shipments.Find(one => one.Contracts.SequenceEqual(contracts)).Shipment;
        shipment.Sail(Passage(shipment.ShippedOn!.Value, origin, on.AddDays(-3)) with { BillOfLading = shipment.BillOfLading, Vessel = shipment.Vessel, Voyage = shipment.Voyage });
        foreach (var lot in shipment.Lots)
        {
            var loss = isShort ? 0.0112m : Math.Round((decimal)Math.Clamp(draw.Normal(0.0021, 0.0012), 0, 0.0044), 4);
            var landed = Weight.FromKilograms(Math.Round(lot.Net.Kilograms * (1m - loss), 1));
            var wet = isShort ? Math.Min(lot.Bags, 3) : 0;
            var torn = draw.Chance(0.2) ? Math.Min(lot.Bags, draw.Between(1, 2)) : 0;
            var receipt = new Receipt(on, lot.Bags, landed, new ReceiptCondition(wet, torn, wet, false, null, true), isShort ? "The wet bags stood at the door of the container." : null);
            _landings.Add(new Landing(contracts.Single(contract => contract.Id == lot.ContractId), shipment, new Arrival(shipment, lot.Id, receipt, cast.Lead.Id, At(on)), isShort));
        }
    }

    /// <summary>
    /// The checklist of each shipment by the house's rules: papers come four days to five weeks after it sailed, and are asked
    /// for once it is at sea.
    /// </summary>
    public void Paper(IReadOnlyList<DocumentRule> rules, IReadOnlyDictionary<Id<Lot>, Lot> lots)
    {
        var today = DateOnly.FromDateTime(now.UtcDateTime);
        foreach (var (shipment, contracts) in _shipments)
        {
            ContractTerms TermsOf(ShipmentLot lot) => contracts.Single(contract => contract.Id == lot.ContractId).Terms;
            shipment.ListDocuments(rules, [.. shipment.Lots.Select(lot => new DocumentCase(
                TermsOf(lot).Delivery.Incoterm, lots[lot.LotId].CountryCode, UnLocode.Of(shipment.PortOfDestination).Country, TermsOf(lot).Certificates))]);
            foreach (var document in shipment.Documents)
            {
                var (sailed, came) = (shipment.ShippedOn!.Value, shipment.ShippedOn.Value.AddDays(draw.Between(4, 35)));
                if (came <= today)
                {
                    shipment.Document(document.Id, DocumentState.Received, came, null);
                }
                else if (sailed.AddDays(2) <= today && draw.Chance(0.5))
                {
                    shipment.Document(document.Id, DocumentState.Asked, sailed.AddDays(2), null);
                }
            }
        }
    }

    private Passage Passage(DateOnly on, string origin, DateOnly? discharged) => new(
        $"VKBL{draw.Between(10_000, 99_999)}",
        draw.Of(Vessels),
        string.Create(CultureInfo.InvariantCulture, $"{draw.Between(100, 999)}N"),
        Ports[origin],
        "BEANR",
        on,
        on.AddDays(33),
        on,
        discharged,
        discharged?.AddDays(2));

    /// <summary>Letters that stand for no owner known to the house; the check digit is right.</summary>
    private string Container()
    {
        var ten = string.Create(CultureInfo.InvariantCulture, $"VLKU{draw.Between(100_000, 999_999)}");
        return ten + ContainerNumber.Of(ten + "0").ExpectedCheckDigit.ToString(CultureInfo.InvariantCulture);
    }

    private string NumberOf(DateOnly on)
    {
        var number = _numbers[on.Year] = _numbers.GetValueOrDefault(on.Year) + 1;
        return string.Create(CultureInfo.InvariantCulture, $"S{on.Year % 100:00}-{number:000}");
    }

    private DateTimeOffset At(DateOnly day)
    {
        var at = new DateTimeOffset(day.ToDateTime(new TimeOnly(11, 0)), TimeSpan.Zero);
        return at < now ? at : now.AddHours(-1);
    }
}
