using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;

namespace GreenLedger.Data.Offers;

/// <summary>An offer as a list shows it, with the lot and the supplier behind it.</summary>
public sealed record OfferRow(
    Id<Offer> Id,
    Id<Lot> LotId,
    Id<Supplier> SupplierId,
    string Ref,
    string Lot,
    string? CountryCode,
    string? Country,
    string? Process,
    string? CropYear,
    string Supplier,
    Weight Quantity,
    PricePerWeight? Price,
    Differential? Differential,
    Incoterm? Incoterm,
    string? Place,
    OfferState State,
    Score? StatedScore,
    DateOnly? ValidUntil,
    DateOnly RevisedOn,
    int? LeastBags);
