using GreenLedger.Documents.Layout;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Offers.Reading;

namespace GreenLedger.Documents.Offers;

/// <summary>A row that was set aside, to be written: its cells as received and why.</summary>
public sealed record SetAsideLine(OfferLine Line, string Reason)
{
    public static SetAsideLine Of(SetAsideRow row) => new(row.Line, row.Reason);
}

/// <summary>
/// The rows that a list had set aside, under the list's own headings, so that they can be put right in a spreadsheet
/// program, sent back to the supplier, or loaded again.
/// </summary>
public static class SetAsideTable
{
    public static IReadOnlyList<TableColumn<SetAsideLine>> Columns(OfferMapping mapping) =>
    [
        .. mapping.Columns.Select((column, at) => TableColumn<SetAsideLine>.AsReceived(column.Heading, row => row.Line[at])),
        TableColumn<SetAsideLine>.Count("Row in the list", row => row.Line.RowNumber, 14),
        TableColumn<SetAsideLine>.Text("Sheet", row => row.Line.Sheet, 16),
        TableColumn<SetAsideLine>.Text("Why it was set aside", row => row.Reason, 60),
    ];
}
