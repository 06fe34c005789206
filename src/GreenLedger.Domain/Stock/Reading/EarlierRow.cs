using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;

namespace GreenLedger.Domain.Stock.Reading;

/// <summary>What a file says of one earlier contract as a whole, over all its rows.</summary>
/// <param name="Number">Of the contract, as the house or the seller counted it.</param>
/// <param name="Delivery">Null where no row names the delivery rule.</param>
/// <param name="Outright">Null where the price is to be fixed, or of a past purchase not known.</param>
/// <param name="Month">What the price is to be fixed against; null for an outright price.</param>
/// <param name="MarketLots">Null where the file leaves it at the nearest whole number.</param>
/// <param name="AsksApproval">A sample has to be approved before shipment.</param>
public sealed record EarlierTerms(
    string Number, string Supplier, DateOnly SignedOn, (Incoterm Rule, string? Place)? Delivery, DateOnly? ShipFrom, DateOnly? ShipUntil,
    PricePerWeight? Outright, FuturesMonth? Month, decimal? Differential, int? MarketLots, IReadOnlyList<EarlierFixing> Fixings, Caller Call, bool AsksApproval);

/// <summary>A fixing as a file tells it.</summary>
/// <param name="Lots">Lots of the market; null for all that is open.</param>
/// <param name="Level">As the market quotes: US cents/lb or USD/t.</param>
/// <param name="On">Null where the file has no day for it.</param>
public sealed record EarlierFixing(int? Lots, decimal Level, DateOnly? On);

/// <summary>One row of a file of earlier contracts: a lot of a contract and what became of it.</summary>
/// <param name="Lot">Its reference; null where the file has none.</param>
/// <param name="Lading">What of it is on board and not received; null for nothing.</param>
/// <param name="Arrival">Null for what has not arrived.</param>
public sealed record EarlierRow(
    OfferLine Line, string? Lot, string? Name, string? Country, string? Process, string? Crop, int Bags, Weight BagWeight, EarlierLading? Lading, EarlierArrival? Arrival);

/// <summary>What of a lot is on board.</summary>
public sealed record EarlierLading(
    DateOnly On, int Bags, Weight Net, string PortOfLoading, string PortOfDestination, string? BillOfLading, DateOnly? PlannedArrival);

/// <summary>What came of a lot, and what is left of it.</summary>
/// <param name="LandedCost">For a received kilogram, in whatever currency; null where it is not known.</param>
/// <param name="LeftBags">Of what is left.</param>
/// <param name="Left">Null where nothing is left.</param>
/// <param name="ShippedOn">The day on board; null where the file has none.</param>
public sealed record EarlierArrival(
    DateOnly On, Weight? Received, PricePerWeight? LandedCost, Score? Score, int LeftBags, Weight? Left, string? Warehouse, DateOnly? ShippedOn);
