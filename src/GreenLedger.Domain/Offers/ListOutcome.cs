using System.Collections;
using GreenLedger.Domain.Offers.Reading;
using GreenLedger.Domain.Origins;

namespace GreenLedger.Domain.Offers;

/// <summary>What became of one row that could be read; what was asked before where the offer was known.</summary>
public sealed record RowOutcome(OfferRow Row, Offer Offer, Lot Lot, Asking? Before = null);

/// <summary>
/// What a mended row became: a new offer, a revised one, or neither where a newer list says otherwise or nothing is new.
/// </summary>
public sealed record MendedRow(RowOutcome Outcome, Producer? NewProducer, bool IsNew, bool IsRevised);

/// <summary>
/// The rows that are new offers. Their lots and offers are made while the rows are gone through, so that a hundred thousand
/// of them need not be held at once: whoever stores them goes through them once.
/// </summary>
internal sealed class AcceptedRows : IReadOnlyCollection<RowOutcome>
{
    private readonly IReadOnlyList<OfferRow> _rows;
    private readonly Func<OfferRow, RowOutcome> _make;

    public AcceptedRows(IReadOnlyList<OfferRow> rows, Func<OfferRow, RowOutcome> make) => (_rows, _make) = (rows, make);

    public int Count => _rows.Count;

    public IEnumerator<RowOutcome> GetEnumerator() => _rows.Select(_make).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}

/// <summary>
/// What a list comes to: new offers, revised ones, rows that say nothing new, and rows set aside. Nothing of it is stored
/// until the buyer says so. Producers that come with new offers are added while <see cref="Accepted"/> is gone through.
/// </summary>
public sealed record ListOutcome(
    OfferList List,
    IReadOnlyCollection<RowOutcome> Accepted,
    IReadOnlyList<RowOutcome> Revised,
    IReadOnlyList<RowOutcome> Unchanged,
    IReadOnlyList<(OfferLine Line, Problem Problem)> SetAside,
    IReadOnlyList<Producer> NewProducers,
    int Notes)
{
    /// <summary>True when this very file was loaded before in this way: storing it would write nothing.</summary>
    public bool IsRepeat { get; init; }
}
