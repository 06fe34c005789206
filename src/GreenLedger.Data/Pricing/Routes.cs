using GreenLedger.Domain.Pricing;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Pricing;

public static class Routes
{
    /// <summary>With the legs, in the order of the way.</summary>
    public static IQueryable<Route> Whole(this IQueryable<Route> routes) =>
        routes.Include(route => route.Legs.OrderBy(leg => leg.Position));

    public static IQueryable<Route> InUse(this IQueryable<Route> routes) => routes.Where(route => route.IsInUse);
}
