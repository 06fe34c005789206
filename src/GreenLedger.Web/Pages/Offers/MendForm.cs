using GreenLedger.Data.Offers;
using GreenLedger.Domain.Offers;

namespace GreenLedger.Web.Pages.Offers;

/// <summary>The cells of a row as a buyer mends them, in the order of the list's columns.</summary>
public sealed class MendForm
{
    public int Version { get; set; }

    public IList<MendCell> Cells { get; init; } = [];

    public static MendForm Of(SetAsideCase set) => new()
    {
        Version = set.Row.Version,
        Cells = [.. set.Mapping.Columns.Select((column, at) => new MendCell { Heading = column.Heading, Text = set.Row.Line[at].Text })],
    };

    /// <summary>The row with what was typed; a cell that was left alone stays the number or the text that it was.</summary>
    public OfferLine Onto(SetAsideCase set)
    {
        var line = set.Row.Line;
        return line with
        {
            Cells = [.. set.Mapping.Columns.Select((_, at) => at < Cells.Count && (Cells[at].Text ?? "") != (line[at].Text ?? "") ? Cell.Of(Cells[at].Text) : line[at])],
        };
    }
}

/// <summary>One cell: the heading of its column, and what stands in it.</summary>
public sealed class MendCell
{
    public string Heading { get; set; } = "";

    public string? Text { get; set; }
}
