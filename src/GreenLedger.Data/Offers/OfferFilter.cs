using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;

namespace GreenLedger.Data.Offers;

/// <summary>Which offers a list shows: every part is optional, and the parts are combined.</summary>
public sealed record OfferFilter(
    string? Search = null,
    string? Origin = null,
    Id<ProcessMethod>? Process = null,
    Id<Supplier>? Supplier = null,
    OfferState? State = null);
