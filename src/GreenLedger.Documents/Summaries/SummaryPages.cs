using GreenLedger.Documents.Layout;
using GreenLedger.Domain.Summaries;

namespace GreenLedger.Documents.Summaries;

/// <summary>What stands on the pages of a purchase summary.</summary>
/// <param name="report">The summary, and for whom.</param>
/// <param name="contents">On which page each section begins, to be listed; null for no contents.</param>
internal sealed class SummaryPages(SummaryReport report, IReadOnlyList<(string Title, int Page)>? contents)
{
    /// <summary>How wide a letter of a table is, in points: columns of text are as wide as their longest text asks, within bounds.</summary>
    private const double Letter = 4.2;

    /// <summary>A heading with its note stays with the chart below it.</summary>
    private const double HeadingRoom = 70;

    private readonly PurchaseSummary _summary = report.Summary;
    private readonly List<(string Title, int Page)> _sections = [];
    private readonly Paper _paper = new(
        $"Purchase summary, {SummaryWords.Scope(report.Summary.Wish)}", report.MadeBy, $"{report.House} · purchase summary · {SummaryWords.Span(report.Summary.Wish.Period)}");

    /// <summary>The paper, and on which page each section begins.</summary>
    public (Paper Paper, IReadOnlyList<(string Title, int Page)> Sections) Compose()
    {
        Opening();
        var charts = SummaryCharts.Of(_summary);
        foreach (var table in SummaryTables.Of(_summary))
        {
            Section(table, charts.GetValueOrDefault(table.Name));
        }

        Notes();
        return (_paper, _sections);
    }

    private void Opening()
    {
        _paper.Text(report.House, TextStyle.Body with { Font = Faces.Bold(9.5), Colour = Ink.Green });
        _paper.Text("Purchase summary", TextStyle.Title);
        _paper.Text($"{SummaryWords.Scope(_summary.Wish)}. Taken out by {report.MadeBy}, {Printed.Moment(report.MadeAt, report.Zone)}.", TextStyle.Small);
        if (contents is { Count: > 0 })
        {
            _paper.Gap(6);
            _paper.Table([new("Contents", 420), new("Page", 40, true)], [.. contents.Select(section => new PaperCell[] { section.Title, Printed.Count(section.Page) })]);
        }
    }

    private void Section(SummaryTable table, ChartSpec? chart)
    {
        if (chart is not null)
        {
            _paper.MakeRoom(HeadingRoom + BarDrawing.HeightOf(chart));
        }

        Heading(table.Title);
        _paper.Text(table.Note, TextStyle.Small);
        if (table.Rows.Count == 0)
        {
            _paper.Text("None.", TextStyle.Body);
            return;
        }

        if (chart is not null)
        {
            _paper.Gap(4);
            _paper.Figure(BarDrawing.HeightOf(chart), chart.Words(), (graphics, box) => BarDrawing.Draw(chart, graphics, box));
        }

        _paper.Gap(4);
        _paper.Table([.. table.Columns.Select((column, at) => new PaperColumn(column.Head, Share(table, at), column.Kind.IsNumber()))], [.. table.Rows.Select(row => Cells(table, row)), .. Totals(table)]);
    }

    private void Notes()
    {
        Heading("What the figures mean");
        foreach (var (of, says) in SummaryWords.Notes(_summary))
        {
            _paper.Text($"{of}: {says}", TextStyle.Small);
        }
    }

    private void Heading(string title)
    {
        _paper.Text(title, TextStyle.Heading);
        _sections.Add((title, _paper.PageCount));
    }

    private PaperCell[] Cells(SummaryTable table, IReadOnlyList<SummaryCell> row) =>
        [.. row.Select((cell, at) => new PaperCell(table.Columns[at].Kind.Text(cell.Value, _summary.Currency)))];

    private IEnumerable<PaperCell[]> Totals(SummaryTable table) => table.Totals is { } totals
        ? [[.. totals.Select((cell, at) => new PaperCell(cell.Value is null ? "" : table.Columns[at].Kind.Text(cell.Value, _summary.Currency)) { IsStrong = true })]]
        : [];

    private double Share(SummaryTable table, int at) => table.Columns[at].Kind switch
    {
        FigureKind.Text => Math.Clamp(table.Rows.Max(row => table.Columns[at].Kind.Text(row[at].Value, _summary.Currency).Length) * Letter, 36, 210),
        FigureKind.Day => 50,
        FigureKind.Count => 28,
        FigureKind.Money => 56,
        _ => 46,
    };
}
