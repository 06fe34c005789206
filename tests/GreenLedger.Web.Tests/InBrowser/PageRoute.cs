using GreenLedger.Domain.People;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.AspNetCore.Mvc.RazorPages.Infrastructure;
using Microsoft.AspNetCore.Routing;
using Microsoft.AspNetCore.Routing.Patterns;
using Microsoft.Extensions.DependencyInjection;

namespace GreenLedger.Web.Tests.InBrowser;

/// <summary>A page of the running application, and the type of each parameter in its address.</summary>
internal sealed record PageRoute(string Page, RouteEndpoint Endpoint, IReadOnlyDictionary<string, Type> Parameters)
{
    /// <summary>Every page that the application serves, by its shortest address.</summary>
    public static async Task<IReadOnlyList<PageRoute>> AllAsync(IServiceProvider services)
    {
        var loader = services.GetRequiredService<PageLoader>();
        var pages = services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
            .Where(endpoint => endpoint.Metadata.GetMetadata<PageActionDescriptor>() is not null)
            .GroupBy(endpoint => endpoint.Metadata.GetMetadata<PageActionDescriptor>()!.ViewEnginePath)
            .OrderBy(page => page.Key, StringComparer.Ordinal);
        var routes = new List<PageRoute>();
        foreach (var page in pages)
        {
            var endpoint = page.MinBy(one => one.RoutePattern.RawText!.Length)!;
            var descriptor = endpoint.Metadata.GetMetadata<PageActionDescriptor>()!;
            var compiled = await loader.LoadAsync(descriptor, EndpointMetadataCollection.Empty);
            routes.Add(new PageRoute(page.Key, endpoint, TypesOf(compiled)));
        }

        return routes;
    }

    /// <summary>Whether the table of who may do what lets this role open the page.</summary>
    public bool IsOpenTo(Role role) => AreaRequirement.AreaOf(Endpoint) is not { } area || AreaAccess.Of(area, role) >= AreaRequirement.Asked(Endpoint, "GET");

    /// <summary>The page's address with these values in place of its parameters.</summary>
    public string Address(IReadOnlyDictionary<string, string> values) => AddressOf(Endpoint.RoutePattern, values);

    public static string AddressOf(RoutePattern pattern, IReadOnlyDictionary<string, string> values) => "/" + string.Join('/', pattern.PathSegments
        .Select(segment => string.Concat(segment.Parts.Select(part => part switch
        {
            RoutePatternLiteralPart literal => literal.Content,
            RoutePatternParameterPart parameter => Uri.EscapeDataString(values.GetValueOrDefault(parameter.Name, "")),
            _ => "",
        })))
        .Where(segment => segment.Length > 0));

    private static Dictionary<string, Type> TypesOf(CompiledPageActionDescriptor page)
    {
        var types = new Dictionary<string, Type>(StringComparer.OrdinalIgnoreCase);
        var bound = page.BoundProperties.Concat(page.HandlerMethods.SelectMany(handler => handler.Parameters));
        foreach (var parameter in bound)
        {
            types.TryAdd(parameter.BindingInfo?.BinderModelName ?? parameter.Name, parameter.ParameterType);
        }

        return types;
    }
}
