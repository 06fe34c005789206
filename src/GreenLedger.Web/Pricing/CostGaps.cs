using GreenLedger.Domain;
using GreenLedger.Domain.Pricing;
using Route = GreenLedger.Domain.Pricing.Route;

namespace GreenLedger.Web.Pricing;

/// <summary>Where a figure that a landed cost lacks is filled in.</summary>
internal static class CostGaps
{
    /// <summary>The page, what the link to it says, and the route to open; null where the figure belongs to the offer itself.</summary>
    public static (string Page, string Word, string? Id)? PageOf(CostGap gap, Id<Route>? route) => gap switch
    {
        CostGap.ExchangeRate => ("/Pricing/Rate", "Type the rate", null),
        CostGap.FuturesQuote => ("/Pricing/Quote", "Type the quote", null),
        CostGap.Route => ("/Pricing/Route", "Add a route", ""),
        CostGap.Stage => ("/Pricing/Route", "Open the route", route?.ToString()),
        _ => null,
    };
}
