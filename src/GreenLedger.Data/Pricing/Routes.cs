using GreenLedger.Domain;
using GreenLedger.Domain.Pricing;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Pricing;

public static class Routes
{
    /// <summary>With the legs, in the order of the way.</summary>
    public static IQueryable<Route> Whole(this IQueryable<Route> routes) =>
        routes.Include(route => route.Legs.OrderBy(leg => leg.Position));

    public static IQueryable<Route> InUse(this IQueryable<Route> routes) => routes.Where(route => route.IsInUse);

    /// <exception cref="RuleBrokenException">Another route has this name.</exception>
    public static async Task RequireFreeNameAsync(this IQueryable<Route> routes, Route route, CancellationToken cancellationToken) => Rule.Require(
        !await routes.AnyAsync(other => other.Name == route.Name && other.Id != route.Id, cancellationToken),
        $"There is another route called '{route.Name}': choose another name.",
        nameof(Route.Name));
}
