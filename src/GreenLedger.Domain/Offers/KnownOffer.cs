namespace GreenLedger.Domain.Offers;

/// <summary>An offer that the ledger has from a supplier already, with its lot: what a newer list is compared with.</summary>
public sealed record KnownOffer(Offer Offer, Lot Lot);
