using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;

namespace GreenLedger.Domain.Summaries;

/// <summary>What a summary asks about a lot.</summary>
/// <param name="Origin">The country's name; null where none is stated.</param>
/// <param name="Certificates">In the order of their letters.</param>
/// <param name="Score">Of our panel, on the form of the house's bands; null where it was not cupped.</param>
/// <param name="Programme">The buying programme that the house counts it to; null for none.</param>
/// <param name="LandedPerKilogram">Billed so far a kilogram landed, in the house currency, unrounded, or as noted before this ledger began; null where the coffee itself is not billed or nothing landed.</param>
public sealed record LotFacts(
    Id<Lot> LotId, string Ref, string Name, string Supplier, string? Origin, string? Process, IReadOnlyList<string> Certificates, Score? Score, string? Programme = null, decimal? LandedPerKilogram = null);

/// <summary>What lies of a lot in the warehouses, as weighed.</summary>
/// <param name="Value">At cost by the house's way of valuing; null where a cost is missing.</param>
public sealed record LotInStock(LotFacts Lot, Weight Net, Money? Value);

/// <summary>What happened to a quantity of a purchase.</summary>
public enum PurchaseStep
{
    Contracted = 0,
    Shipped = 1,
    Arrived = 2,
}

/// <summary>A quantity of a purchased lot that was contracted, shipped or received on a day.</summary>
/// <param name="Net">As contracted, by the shipping papers, or as landed.</param>
/// <param name="Value">At the contract's price, in the house currency; null where the price or a rate is not known.</param>
public sealed record PurchaseEntry(PurchaseStep Step, DateOnly On, Weight Net, Money? Value);

/// <summary>A pre-shipment sample approved or refused.</summary>
/// <param name="Round">1 for the first sample of the lot.</param>
public sealed record Judged(DateOnly On, int Round, ApprovalVerdict Verdict, string? Remarks);

/// <summary>An arrival beside its approved sample: both weights and both scores, each where it is known.</summary>
public sealed record Compared(Id<Arrival> ArrivalId, DateOnly On, Weight Shipped, Weight Landed, Score? Approved, Score? Arrived)
{
    /// <summary>Landed less shipped, as a share of the shipped weight.</summary>
    public Percent WeightDifference => Percent.Of((Landed - Shipped).Kilograms * 100m / Shipped.Kilograms);

    /// <summary>Arrival less approved, in points; null where one of them was not cupped.</summary>
    public decimal? Points => Arrived?.Points - Approved?.Points;
}

/// <summary>A claim made for a purchased lot.</summary>
/// <param name="Amount">In the house currency at the rate of its day; null where no amount was stated or a rate is missing.</param>
/// <param name="State">open, or its outcome in words.</param>
/// <param name="Settled">What the seller pays or credits, likewise.</param>
public sealed record Claimed(Id<Claim> ClaimId, string Ref, DateOnly On, Money? Amount, bool IsOpen, string State, Money? Settled);

/// <summary>A lot of a signed contract, flat, with everything that a summary adds up.</summary>
public sealed record PurchasedLot
{
    public required Id<Contract> ContractId { get; init; }

    public required string ContractRef { get; init; }

    public required LotFacts Lot { get; init; }

    /// <summary>Bought before this ledger began, by a file of the house's own.</summary>
    public bool IsEarlier { get; init; }

    public required GoodsState Goods { get; init; }

    public required DateOnly ShipUntil { get; init; }

    /// <summary>By the terms that hold.</summary>
    public required Weight Net { get; init; }

    /// <summary>The part of it whose price is not fixed.</summary>
    public required Weight Unpriced { get; init; }

    /// <summary>What the unpriced part stands against; null where all is priced.</summary>
    public required FuturesMonth? OpenMonth { get; init; }

    /// <summary>Of the whole lot, in the house currency; null where the price or a rate is not known.</summary>
    public required Money? Value { get; init; }

    /// <summary>What is still to arrive; zero once the contract is closed.</summary>
    public required Weight ToCome { get; init; }

    /// <summary>The value of what is still to arrive.</summary>
    public required Money? ValueToCome { get; init; }

    public required IReadOnlyList<PurchaseEntry> Entries { get; init; }

    public IReadOnlyList<Judged> Judgements { get; init; } = [];

    public IReadOnlyList<Compared> Comparisons { get; init; } = [];

    public IReadOnlyList<Claimed> Claims { get; init; } = [];

    /// <summary>Part of the price is taken from a settlement.</summary>
    public bool IsProvisional => OpenMonth is not null;

    public Weight Priced => Net - Unpriced;

    /// <summary>Neither closed nor cancelled.</summary>
    public bool IsOpen => Goods is not (GoodsState.Closed or GoodsState.Cancelled);
}

/// <summary>A lot that was first offered on a day and that our panel cupped.</summary>
public sealed record OfferedLot(Id<Offer> OfferId, DateOnly On, LotFacts Lot);
