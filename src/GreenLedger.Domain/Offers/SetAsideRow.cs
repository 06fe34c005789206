using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Offers;

/// <summary>
/// A row of a list that could not be taken, kept with its cells and a sentence about what is wrong. It can be mended and
/// taken in, and stays afterwards as a record of who did so.
/// </summary>
public sealed class SetAsideRow
{
    private SetAsideRow()
    {
        Cells = "";
        Reason = "";
    }

    internal SetAsideRow(Id<OfferList> listId, OfferLine line, Problem problem)
    {
        Id = Id<SetAsideRow>.New();
        ListId = listId;
        RowNumber = line.RowNumber;
        Sheet = line.Sheet;
        Cells = Cell.Write(line.Cells);
        Column = problem.Column;
        Reason = problem.Message;
    }

    public Id<SetAsideRow> Id { get; private set; }

    public int Version { get; private set; }

    public Id<OfferList> ListId { get; private set; }

    /// <summary>Counted from 1, as the sender's program shows it.</summary>
    public int RowNumber { get; private set; }

    public string? Sheet { get; private set; }

    /// <summary>The row's cells as <see cref="Cell.Write"/> keeps them.</summary>
    public string Cells { get; private set; }

    /// <summary>The heading of the column that the reason is about; null when it is about the row.</summary>
    public string? Column { get; private set; }

    /// <summary>What is wrong, in a sentence a person can act on.</summary>
    public string Reason { get; private set; }

    public Id<Person>? MendedBy { get; private set; }

    public DateTimeOffset? MendedAt { get; private set; }

    /// <summary>The offer that the mended row became or revised; null while the row waits.</summary>
    public Id<Offer>? OfferId { get; private set; }

    public bool IsMended => MendedAt is not null;

    /// <summary>The row's cells, to be shown or read again.</summary>
    public OfferLine Line => new(RowNumber, Cell.Read(Cells), Sheet);

    /// <summary>Records that the row was mended and taken in as <paramref name="offer"/>.</summary>
    public void Mend(IReadOnlyList<Cell> cells, Id<Offer> offer, Id<Person> by, DateTimeOffset at)
    {
        Rule.Require(MendedAt is null, "This row has been mended and taken in already.", nameof(Cells));
        Cells = Cell.Write(cells);
        OfferId = offer;
        MendedBy = by;
        MendedAt = at;
    }
}
