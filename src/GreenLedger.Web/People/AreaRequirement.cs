using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace GreenLedger.Web.People;

/// <summary>
/// The one rule of who may open what: the area of the route is its page's folder or the word after /api, unless it
/// says otherwise; reading asks for read, everything else for write.
/// </summary>
internal sealed class AreaRequirement : AuthorizationHandler<AreaRequirement>, IAuthorizationRequirement
{
    /// <summary>The area of a route; null for one that belongs to no page and no API.</summary>
    public static string? AreaOf(Endpoint endpoint)
    {
        if (endpoint.Metadata.GetMetadata<InAreaAttribute>() is { } chosen)
        {
            return chosen.Area;
        }

        if (endpoint.Metadata.GetMetadata<PageActionDescriptor>() is { } page)
        {
            var folder = page.ViewEnginePath.Split('/', StringSplitOptions.RemoveEmptyEntries);
            return folder.Length > 1 ? folder[0] : "Home";
        }

        var path = (endpoint as RouteEndpoint)?.RoutePattern.RawText?.Split('/', StringSplitOptions.RemoveEmptyEntries);
        return path is ["api", { Length: > 0 } room, ..] ? char.ToUpperInvariant(room[0]) + room[1..] : null;
    }

    public static Access Asked(Endpoint endpoint, string method) =>
        HttpMethods.IsGet(method) || HttpMethods.IsHead(method) || HttpMethods.IsOptions(method)
        || endpoint.Metadata.GetMetadata<StoresNothingAttribute>() is not null
            ? Access.Read
            : Access.Write;

    protected override Task HandleRequirementAsync(AuthorizationHandlerContext context, AreaRequirement requirement)
    {
        if (context.Resource is HttpContext http && Allows(http, context.User.Roles()))
        {
            context.Succeed(requirement);
        }

        return Task.CompletedTask;
    }

    /// <summary>A path that leads nowhere is let through to its answer 404, a wrong method to 405.</summary>
    private static bool Allows(HttpContext http, Domain.People.Role roles) =>
        http.GetEndpoint() is not RouteEndpoint endpoint
        || (AreaOf(endpoint) is { } area && AreaAccess.Of(area, roles) >= Asked(endpoint, http.Request.Method));
}
