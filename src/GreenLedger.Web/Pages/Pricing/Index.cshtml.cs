using GreenLedger.Data;
using GreenLedger.Data.Pricing;
using GreenLedger.Documents.Layout;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Pricing;
using GreenLedger.Web.Display;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;
using Route = GreenLedger.Domain.Pricing.Route;

namespace GreenLedger.Web.Pages.Pricing;

public sealed class IndexModel(LedgerContext db) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public string? Search { get; set; }

    [BindProperty(SupportsGet = true)]
    public bool All { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? Sort { get; set; }

    public bool HasAny { get; private set; }

    public IReadOnlyList<Route> Routes { get; private set; } = [];

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        var routes = await db.Routes.Whole().AsNoTracking().ToListAsync(cancellationToken);
        HasAny = routes.Count > 0;
        var part = SearchText.Of(Search);
        Routes = [.. Sorted(routes.Where(route => (All || route.IsInUse)
            && SearchText.Of(route.Name, route.PortOfLoading, route.PortOfDestination, route.Warehouse, route.OriginCountry).Contains(part, StringComparison.Ordinal)))];
    }

    public async Task<IActionResult> OnGetWorkbookAsync(CancellationToken cancellationToken)
    {
        await OnGetAsync(cancellationToken);
        var legs = Routes.SelectMany(route => route.Legs, (route, leg) => (Route: route, Leg: leg.Line));
        return await this.WorkbookAsync("Routes", RouteColumns.All, legs, cancellationToken);
    }

    private IEnumerable<Route> Sorted(IEnumerable<Route> routes) => Sort switch
    {
        "-name" => routes.OrderByDescending(route => route.Name, StringComparer.OrdinalIgnoreCase),
        "origin" => routes.OrderBy(route => route.OriginCountry, StringComparer.Ordinal).ThenBy(route => route.Name, StringComparer.OrdinalIgnoreCase),
        "-origin" => routes.OrderByDescending(route => route.OriginCountry, StringComparer.Ordinal).ThenBy(route => route.Name, StringComparer.OrdinalIgnoreCase),
        _ => routes.OrderBy(route => route.Name, StringComparer.OrdinalIgnoreCase),
    };

    private static class RouteColumns
    {
        public static TableColumn<(Route Route, LegLine Leg)>[] All { get; } =
        [
            TableColumn<(Route Route, LegLine Leg)>.Text("Route", row => row.Route.Name),
            TableColumn<(Route Route, LegLine Leg)>.Text("Origin", row => row.Route.OriginCountry ?? "any", 10),
            TableColumn<(Route Route, LegLine Leg)>.Text("Port of loading", row => row.Route.PortOfLoading),
            TableColumn<(Route Route, LegLine Leg)>.Text("Port of destination", row => row.Route.PortOfDestination),
            TableColumn<(Route Route, LegLine Leg)>.Text("Warehouse", row => row.Route.Warehouse),
            TableColumn<(Route Route, LegLine Leg)>.Number("Fill, kg", row => row.Route.Fill.Kilograms, 0),
            TableColumn<(Route Route, LegLine Leg)>.Text("Stage", row => row.Leg.Stage.Word()),
            TableColumn<(Route Route, LegLine Leg)>.Text("Leg", row => row.Leg.Name),
            TableColumn<(Route Route, LegLine Leg)>.Text("Answer", row => row.Leg.Way.Word(), 30),
            TableColumn<(Route Route, LegLine Leg)>.Number("Amount or %", row => row.Leg.Figure, 4),
            TableColumn<(Route Route, LegLine Leg)>.Text("Currency", row => row.Leg.Currency?.Code, 10),
            TableColumn<(Route Route, LegLine Leg)>.Count("Days or months", row => row.Leg.Time),
        ];
    }
}
