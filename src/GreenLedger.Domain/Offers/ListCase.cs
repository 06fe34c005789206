using GreenLedger.Domain.Offers.Reading;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Offers;

/// <summary>
/// What the ledger holds when a list is loaded: from whom the file is and when it came, how it is read, and the supplier's
/// offers and the producers that are known.
/// </summary>
public sealed record ListCase(
    Supplier Supplier,
    StoredFile StoredFile,
    OfferMapping Mapping,
    DateOnly ReceivedOn,
    IReadOnlyList<KnownOffer> Known,
    IReadOnlyList<Producer> Producers,
    Id<Person> By,
    DateTimeOffset At)
{
    /// <summary>Whether this file was loaded from this supplier with this mapping before.</summary>
    public bool IsRepeat { get; init; }
}
