using GreenLedger.Data;
using GreenLedger.Data.Summaries;
using GreenLedger.Documents.Layout;
using GreenLedger.Documents.Summaries;
using GreenLedger.Domain;
using GreenLedger.Domain.Summaries;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using GreenLedger.Web.Summaries;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Summaries;

/// <summary>What was bought in a period, and what is open as it stands.</summary>
public sealed class IndexModel(LedgerContext db, PurchaseSummaryQuery query, HouseZone zone, TimeProvider clock) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public SummaryAsk Ask { get; set; } = new();

    public PurchaseSummary? Summary { get; private set; }

    public IReadOnlyList<SummaryTable> Tables { get; private set; } = [];

    /// <summary>By the name of the table that each belongs to.</summary>
    public IReadOnlyDictionary<string, ChartSpec> Charts { get; private set; } = new Dictionary<string, ChartSpec>();

    /// <summary>Every group of the cut with something bought, by name.</summary>
    public IReadOnlyList<string> Groups { get; private set; } = [];

    /// <summary>Why there is no summary, in a sentence; null where there is one.</summary>
    public string? Trouble { get; private set; }

    public string FromDay => Summary is { } summary ? SummaryAsk.Day(summary.Wish.Period.From) : Ask.From is { } day ? SummaryAsk.Day(day) : "";

    public string UntilDay => Summary is { } summary ? SummaryAsk.Day(summary.Wish.Period.Until) : Ask.Until is { } day ? SummaryAsk.Day(day) : "";

    public IReadOnlyList<(string Word, SummaryFigure Figure)> Headlines { get; } =
        [("contracted", SummaryFigure.Contracted), ("shipped", SummaryFigure.Shipped), ("arrived", SummaryFigure.Arrived), ("still to come", SummaryFigure.ToCome), ("in stock", SummaryFigure.InStock)];

    public IReadOnlyList<(string Word, Period Period)> Periods { get; private set; } = [];

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        var today = zone.Today;
        Periods = Usual(today);
        try
        {
            Rule.Require(ModelState.IsValid, "A day is written as 2026-11-26: please check both days.");
            var wish = Ask.Wish(today);
            var whole = await query.FindAsync(wish with { Group = null }, today, cancellationToken);
            Groups = whole is null ? [] : [.. whole.Lots.Select(lot => lot.Lot).Concat(whole.Stock.Select(lot => lot.Lot)).Select(lot => wish.Cut.GroupOf(lot)).Distinct().Order(StringComparer.OrdinalIgnoreCase)];
            Summary = wish.Group is null ? whole : whole?.Of(wish);
            Tables = Summary is null ? [] : SummaryTables.Of(Summary);
            Charts = Summary is null ? Charts : SummaryCharts.Of(Summary);
            Trouble = Summary is null ? "No house is set up yet." : null;
        }
        catch (RuleBrokenException broken)
        {
            // Days in an address are typed by hand: the sentence stands in place of the summary.
            Trouble = broken.Message;
        }
    }

    /// <summary>What the page shows, for management.</summary>
    public Task<IActionResult> OnGetPdfAsync(CancellationToken cancellationToken) => AsFileAsync(SummaryPdf.Write, SummaryPdf.MediaType, ".pdf", cancellationToken);

    /// <summary>What the page shows, as a workbook that goes on computing.</summary>
    public Task<IActionResult> OnGetWorkbookAsync(CancellationToken cancellationToken) => AsFileAsync(SummaryWorkbook.Write, TableWorkbook.MediaType, ".xlsx", cancellationToken);

    public string Anchor(SummaryTable table) => "t-" + table.Name.ToLowerInvariant().Replace(' ', '-');

    public IDictionary<string, string?> RouteOf(Period period) => SummaryAsk.RouteOf(new SummaryWish(period, Ask.By, Ask.Of));

    private async Task<IActionResult> AsFileAsync(Action<SummaryReport, Stream> write, string mediaType, string ending, CancellationToken cancellationToken)
    {
        await OnGetAsync(cancellationToken);
        if (Summary is null)
        {
            return NotFound();
        }

        var house = await db.Houses.AsNoTracking().Select(row => row.Name).SingleAsync(cancellationToken);
        var report = new SummaryReport(house, User.PersonName(), clock.GetUtcNow(), zone.Zone, Summary);
        var stream = new MemoryStream();
        write(report, stream);
        stream.Position = 0;
        return File(stream, mediaType, report.FileName + ending);
    }

    private static IReadOnlyList<(string Word, Period Period)> Usual(DateOnly today)
    {
        var quarter = new DateOnly(today.Year, (today.Month - 1) / 3 * 3 + 1, 1);
        return
        [
            ("this quarter", Period.Of(quarter, quarter.AddMonths(3).AddDays(-1))),
            ("the quarter before", Period.Of(quarter.AddMonths(-3), quarter.AddDays(-1))),
            ("this year", Period.YearOf(today)),
            ("last year", Period.YearOf(today.AddYears(-1))),
        ];
    }
}
