using PdfSharp.Drawing;
using PdfSharp.UniversalAccessibility;

namespace GreenLedger.Documents.Layout;

/// <summary>One column of a printed table: its head with the unit in it, its share of the width, and whether figures stand in it.</summary>
internal sealed record PaperColumn(string Head, double Share, bool IsNumber = false);

/// <summary>One cell: its text, and what stands below it in small soft letters.</summary>
internal sealed record PaperCell(string Text, string? Below = null)
{
    /// <summary>In bold letters, as totals are.</summary>
    public bool IsStrong { get; init; }

    public static implicit operator PaperCell(string text) => new(text);
}

/// <summary>Lays a table over pages: rows are never broken, and each page repeats the head.</summary>
internal sealed class PaperTable
{
    private const double Between = 6;
    private const double Padding = 2.5;
    private const double Leading = 10.5;
    private const double SmallLeading = 9.5;

    private static readonly XFont HeadFont = Faces.Bold(7.5);
    private static readonly XFont Font = Faces.Regular(8.5);
    private static readonly XFont StrongFont = Faces.Bold(8.5);
    private static readonly XFont SmallFont = Faces.Regular(7.5);

    private readonly Paper _paper;
    private readonly IReadOnlyList<PaperColumn> _columns;
    private readonly double[] _lefts;
    private readonly double[] _widths;

    public PaperTable(Paper paper, IReadOnlyList<PaperColumn> columns)
    {
        (_paper, _columns) = (paper, columns);
        var room = Paper.Width - Between * (columns.Count - 1);
        var shares = columns.Sum(column => column.Share);
        _widths = [.. columns.Select(column => room * column.Share / shares)];
        _lefts = new double[columns.Count];
        for (var (i, x) = (0, Paper.Left); i < columns.Count; i++)
        {
            _lefts[i] = x;
            x += _widths[i] + Between;
        }
    }

    public void Flow(IReadOnlyList<IReadOnlyList<PaperCell>> rows)
    {
        var head = Head();
        var waiting = rows.Select(Row).ToList();
        _paper.MakeRoom(head.Height + (waiting.Count > 0 ? waiting[0].Height : 0));
        while (true)
        {
            var part = new List<SetRow> { head };
            var height = head.Height;
            while (waiting.Count >= part.Count && height + waiting[part.Count - 1].Height <= _paper.Room)
            {
                height += waiting[part.Count - 1].Height;
                part.Add(waiting[part.Count - 1]);
            }

            var taken = Math.Max(part.Count - 1, Math.Min(1, waiting.Count));
            Place(taken == part.Count - 1 ? part : [head, waiting[0]]);
            waiting.RemoveRange(0, taken);
            if (waiting.Count == 0)
            {
                return;
            }

            _paper.NewPage();
        }
    }

    /// <summary>One table for each page, with its head, so that a screen reader knows the columns everywhere.</summary>
    private void Place(IReadOnlyList<SetRow> rows)
    {
        var top = _paper.Here;
        _paper.Place(rows.Sum(row => row.Height), stage => stage.Element(PdfBlockLevelElementTag.Table, () =>
        {
            var y = top;
            foreach (var row in rows)
            {
                var at = y;
                stage.Element(PdfBlockLevelElementTag.TableRow, () => Draw(stage, row, at));
                y += row.Height;
            }
        }));
    }

    private void Draw(Stage stage, SetRow row, double top)
    {
        for (var i = 0; i < _columns.Count; i++)
        {
            var column = i;
            stage.Element(row.IsHead ? PdfBlockLevelElementTag.TableHeaderCell : PdfBlockLevelElementTag.TableDataCell, () =>
            {
                var y = top + Padding + (row.IsHead ? row.Height - 2 * Padding - row.Cells[column].Height : 0);
                foreach (var line in row.Cells[column].Lines)
                {
                    var x = _columns[column].IsNumber ? _lefts[column] + _widths[column] - _paper.Breaker.WidthOf(line.Text, line.Font) : _lefts[column];
                    stage.Graphics.DrawString(line.Text, line.Font, line.Colour.Brush(), x, y + line.Leading * 0.78);
                    y += line.Leading;
                }
            });
        }

        var bottom = top + row.Height;
        var pen = row.IsHead ? Ink.Dark.Pen(0.8) : Ink.Rule.Pen(0.5);
        stage.Ornament(() => stage.Graphics.DrawLine(pen, Paper.Left, bottom, Paper.Left + Paper.Width, bottom));
    }

    private SetRow Head() => new([.. _columns.Select((column, i) => new SetCell([.. Set(column.Head, HeadFont, Ink.Soft, SmallLeading, i)]))], true);

    private SetRow Row(IReadOnlyList<PaperCell> cells) => new(
        [.. cells.Select((cell, i) => new SetCell([.. Set(cell.Text, cell.IsStrong ? StrongFont : Font, Ink.Dark, Leading, i), .. Set(cell.Below, SmallFont, Ink.Soft, SmallLeading, i)]))], false);

    private IEnumerable<SetLine> Set(string? text, XFont font, XColor colour, double leading, int column) =>
        string.IsNullOrEmpty(text) ? [] : _paper.Breaker.Lines(text, font, _widths[column]).Select(line => new SetLine(line, font, colour, leading));

    private sealed record SetLine(string Text, XFont Font, XColor Colour, double Leading);

    private sealed record SetCell(IReadOnlyList<SetLine> Lines)
    {
        public double Height => Lines.Sum(line => line.Leading);
    }

    private sealed record SetRow(IReadOnlyList<SetCell> Cells, bool IsHead)
    {
        public double Height { get; } = Cells.Max(cell => cell.Height) + 2 * Padding;
    }
}
