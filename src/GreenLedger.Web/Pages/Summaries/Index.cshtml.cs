using GreenLedger.Data.Summaries;
using GreenLedger.Domain;
using GreenLedger.Domain.Summaries;
using GreenLedger.Web.Display;
using GreenLedger.Web.Summaries;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace GreenLedger.Web.Pages.Summaries;

/// <summary>What was bought in a period, and what is open as it stands.</summary>
public sealed class IndexModel(PurchaseSummaryQuery query, HouseZone zone) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public SummaryAsk Ask { get; set; } = new();

    public PurchaseSummary? Summary { get; private set; }

    public IReadOnlyList<SummaryTable> Tables { get; private set; } = [];

    /// <summary>Every group of the cut with something bought, by name.</summary>
    public IReadOnlyList<string> Groups { get; private set; } = [];

    /// <summary>Why there is no summary, in a sentence; null where there is one.</summary>
    public string? Trouble { get; private set; }

    public string FromDay => Summary is { } summary ? SummaryAsk.Day(summary.Wish.Period.From) : Ask.From is { } day ? SummaryAsk.Day(day) : "";

    public string UntilDay => Summary is { } summary ? SummaryAsk.Day(summary.Wish.Period.Until) : Ask.Until is { } day ? SummaryAsk.Day(day) : "";

    public IReadOnlyList<(string Word, SummaryFigure Figure)> Headlines { get; } =
        [("contracted", SummaryFigure.Contracted), ("shipped", SummaryFigure.Shipped), ("arrived", SummaryFigure.Arrived), ("still to come", SummaryFigure.ToCome)];

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
            Groups = whole is null ? [] : [.. whole.Lots.Select(lot => wish.Cut.GroupOf(lot.Lot)).Distinct().Order(StringComparer.OrdinalIgnoreCase)];
            Summary = wish.Group is null ? whole : whole?.Of(wish);
            Tables = Summary is null ? [] : SummaryTables.Of(Summary);
            Trouble = Summary is null ? "No house is set up yet." : null;
        }
        catch (RuleBrokenException broken)
        {
            // Days in an address are typed by hand: the sentence stands in place of the summary.
            Trouble = broken.Message;
        }
    }

    public string Anchor(SummaryTable table) => "t-" + table.Name.ToLowerInvariant().Replace(' ', '-');

    public IDictionary<string, string?> RouteOf(Period period) => SummaryAsk.RouteOf(new SummaryWish(period, Ask.By, Ask.Of));

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
