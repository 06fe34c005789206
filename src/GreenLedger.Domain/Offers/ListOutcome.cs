using GreenLedger.Domain.Offers.Reading;
using GreenLedger.Domain.Origins;

namespace GreenLedger.Domain.Offers;

/// <summary>What became of one row that could be read.</summary>
public sealed record RowOutcome(OfferRow Row, Offer Offer, Lot Lot);

/// <summary>
/// What a mended row became: a new offer, a revised one, or neither where a newer list says otherwise or nothing is new.
/// </summary>
public sealed record MendedRow(RowOutcome Outcome, Producer? NewProducer, bool IsNew, bool IsRevised);

/// <summary>
/// What a list comes to: new offers, revised ones, rows that say nothing new, and rows set aside. Nothing of it is stored
/// until the buyer says so.
/// </summary>
public sealed record ListOutcome(
    OfferList List,
    IReadOnlyList<RowOutcome> Accepted,
    IReadOnlyList<RowOutcome> Revised,
    IReadOnlyList<RowOutcome> Unchanged,
    IReadOnlyList<(OfferLine Line, Problem Problem)> SetAside,
    IReadOnlyList<Producer> NewProducers,
    int Notes)
{
    /// <summary>True when this very file was loaded before in this way: storing it would write nothing.</summary>
    public bool IsRepeat { get; init; }

    /// <summary>Every row that is an offer, in the order of the list.</summary>
    public IEnumerable<RowOutcome> Offers => Accepted.Concat(Revised).Concat(Unchanged).OrderBy(outcome => outcome.Row.Line.RowNumber);
}
