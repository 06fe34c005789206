using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Offers.Reading;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Pricing;
using GreenLedger.Domain.Samples;
using GreenLedger.Domain.Shipments;

namespace GreenLedger.Domain.Stock.Reading;

/// <summary>What stands for rows that do not say it themselves.</summary>
/// <param name="WarehouseId">Where what is left lies; null to set such rows aside.</param>
/// <param name="On">The day that what is left is of.</param>
/// <param name="Rule">The delivery rule; null to set such contracts aside.</param>
/// <param name="FormId">The standard form that the contracts refer to; null where each says its own.</param>
public sealed record EarlierDefaults(Id<Warehouse>? WarehouseId, DateOnly On, Incoterm? Rule = null, Id<StandardForm>? FormId = null);

/// <summary>What the ledger knows when earlier contracts are taken in, who does it, and when.</summary>
/// <param name="Buyer">The house, as it calls itself.</param>
/// <param name="Form">Null where each contract says its own.</param>
/// <param name="Names">What the lots of the file stand for.</param>
/// <param name="Lots">Those of them that the ledger knows.</param>
/// <param name="Numbers">Contract numbers that are taken, in capitals.</param>
/// <param name="Opened">Lots that have opening stock.</param>
/// <param name="NextShipment">The next free number of a shipment.</param>
public sealed record EarlierCase(
    string Buyer, Currency House, StandardForm? Form, ListReference Reference, KnownNames Names, IReadOnlyDictionary<Id<Lot>, Lot> Lots,
    IReadOnlyList<Supplier> Suppliers, IReadOnlyList<Warehouse> Warehouses, IReadOnlySet<string> Numbers, IReadOnlySet<Id<Lot>> Opened,
    ExchangeRates Rates, EarlierDefaults Defaults, Func<string> NextShipment, Id<Person> By, DateTimeOffset At)
{
    public DateOnly Today => Reference.Today;
}

/// <summary>An earlier contract as it would stand in the ledger, with all that comes with it.</summary>
/// <param name="IsNewSupplier">The ledger does not know the supplier yet.</param>
/// <param name="Shipments">What of it is on board.</param>
public sealed record EarlierContract(Contract Contract, Supplier Supplier, bool IsNewSupplier, IReadOnlyList<EarlierLine> Lines, IReadOnlyList<Shipment> Shipments);

/// <summary>A lot of an earlier contract.</summary>
/// <param name="IsNewLot">The ledger does not know the lot yet.</param>
/// <param name="Left">What is left of it; null for nothing.</param>
public sealed record EarlierLine(EarlierRow Row, Lot Lot, bool IsNewLot, LeftStock? Left)
{
    public Weight Net => Row.BagWeight * Row.Bags;
}

/// <summary>What is left of a past purchase: opening stock of a day, with what it cost in the house currency.</summary>
/// <param name="Cost">Null where the file does not say it.</param>
public sealed record LeftStock(Warehouse Warehouse, StockAmount Amount, DateOnly On, Money? Cost);
