using System.Reflection;
using GreenLedger.Domain;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Metadata;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.AspNetCore.Mvc.RazorPages.Infrastructure;
using Microsoft.AspNetCore.Routing;
using Microsoft.AspNetCore.Routing.Patterns;
using Microsoft.AspNetCore.StaticAssets;
using Microsoft.Extensions.DependencyInjection;

namespace GreenLedger.Web.Tests.Cupping.Sealing;

/// <summary>What a route can be told in its address.</summary>
internal sealed record AskedValue(string Name, Type Type, bool IsNeeded)
{
    /// <summary>The type of one value: without question mark, and without the list around it.</summary>
    public static Type Single(Type type) => Nullable.GetUnderlyingType(type)
        ?? (type.IsGenericType && typeof(System.Collections.IEnumerable).IsAssignableFrom(type) ? type.GetGenericArguments()[0] : type);

    public static bool CanBeTold(Type type)
    {
        var one = Single(type);
        return one == typeof(string) || one == typeof(Guid) || one == typeof(DateOnly) || one.IsPrimitive || one == typeof(decimal) || one.IsEnum
            || (one.IsGenericType && one.GetGenericTypeDefinition() == typeof(Id<>));
    }
}

/// <summary>One way to ask the running application: a handler of a page, or a route of the API.</summary>
internal sealed record AskedRoute(string Name, string Method, RoutePattern Pattern, string? Handler, IReadOnlyList<AskedValue> Values, Type? Body, bool IsPage)
{
    /// <summary>The framework's own answer for a file that is not there, while built files are served from their folders.</summary>
    private const string MissingFile = "{**path:file}";

    public bool IsRead => Method == HttpMethods.Get;

    public bool IsOfKey => Name.Contains("/Cupping/Key", StringComparison.Ordinal) || Name.EndsWith("/key", StringComparison.Ordinal);

    /// <summary>Every page handler and every route that the application serves, files that were built with it left out.</summary>
    public static async Task<IReadOnlyList<AskedRoute>> AllAsync(IServiceProvider services)
    {
        var endpoints = services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
            .Where(endpoint => endpoint.Metadata.GetMetadata<StaticAssetDescriptor>() is null && endpoint.RoutePattern.RawText != MissingFile)
            .ToLookup(endpoint => endpoint.Metadata.GetMetadata<PageActionDescriptor>()?.ViewEnginePath);
        var routes = endpoints[null].SelectMany(OfApi).ToList();
        var loader = services.GetRequiredService<PageLoader>();
        foreach (var page in endpoints.Where(page => page.Key is not null))
        {
            var endpoint = page.MinBy(one => one.RoutePattern.RawText!.Length)!;
            var compiled = await loader.LoadAsync(endpoint.Metadata.GetMetadata<PageActionDescriptor>()!, EndpointMetadataCollection.Empty);
            routes.AddRange(OfPage(page.Key!, endpoint.RoutePattern, compiled));
        }

        return routes;
    }

    private static IEnumerable<AskedRoute> OfPage(string page, RoutePattern pattern, CompiledPageActionDescriptor compiled)
    {
        var bound = compiled.BoundProperties.OfType<PageBoundPropertyDescriptor>()
            .Where(one => one.Property.GetCustomAttribute<BindPropertyAttribute>()?.SupportsGet == true)
            .SelectMany(one => Told(one.BindingInfo?.BinderModelName ?? one.Name, one.ParameterType)).ToList();
        var handlers = compiled.HandlerMethods.Select(one => (one.HttpMethod, one.Name, one.Parameters)).ToList();
        if (!handlers.Exists(one => one is { HttpMethod: "Get", Name: null }))
        {
            handlers.Add(("Get", null!, []));
        }

        foreach (var (method, name, parameters) in handlers)
        {
            var own = parameters.SelectMany(one => Told(one.BindingInfo?.BinderModelName ?? one.Name, one.ParameterType));
            var isRead = method.Equals("Get", StringComparison.OrdinalIgnoreCase);
            yield return new AskedRoute(
                $"{method.ToUpperInvariant()} {page}{(name is null ? "" : "?handler=" + name)}", method.ToUpperInvariant(), pattern, name,
                InPath(pattern, [.. bound, .. own]), null, IsPage: true);
        }
    }

    /// <summary>A value, or the values of a form that a page reads from its address.</summary>
    private static IEnumerable<AskedValue> Told(string name, Type type) => AskedValue.CanBeTold(type)
        ? [new AskedValue(name, type, false)]
        : type.Namespace?.StartsWith("GreenLedger", StringComparison.Ordinal) == true
            ? type.GetProperties().Where(member => member.CanWrite && AskedValue.CanBeTold(member.PropertyType)).Select(member => new AskedValue($"{name}.{member.Name}", member.PropertyType, false))
            : [];

    private static IEnumerable<AskedRoute> OfApi(RouteEndpoint endpoint)
    {
        var told = (endpoint.Metadata.GetMetadata<MethodInfo>()?.GetParameters() ?? [])
            .Where(one => AskedValue.CanBeTold(one.ParameterType) && one.GetCustomAttribute<FromFormAttribute>() is null)
            .Select(one => new AskedValue(one.Name!, one.ParameterType, !one.HasDefaultValue)).ToList();
        var body = endpoint.Metadata.GetMetadata<IAcceptsMetadata>()?.RequestType;
        return (endpoint.Metadata.GetMetadata<IHttpMethodMetadata>()?.HttpMethods ?? [HttpMethods.Get]).Select(method => new AskedRoute(
            $"{method} /{endpoint.RoutePattern.RawText!.TrimStart('/')}", method, endpoint.RoutePattern, null, InPath(endpoint.RoutePattern, told), body, IsPage: false));
    }

    /// <summary>What stands in the path must be told, whatever the code calls it; the rest stays as it is.</summary>
    private static List<AskedValue> InPath(RoutePattern pattern, List<AskedValue> told)
    {
        var path = pattern.Parameters.Select(part => new AskedValue(
            part.Name, told.Find(one => one.Name.Equals(part.Name, StringComparison.OrdinalIgnoreCase))?.Type ?? typeof(string), true));
        return [.. path, .. told.Where(one => pattern.Parameters.All(part => !part.Name.Equals(one.Name, StringComparison.OrdinalIgnoreCase))).DistinctBy(one => one.Name)];
    }

    /// <summary>The address with these values: those of the path in their place, the others behind it.</summary>
    public string Address(IReadOnlyDictionary<string, string> values)
    {
        var path = InBrowser.PageRoute.AddressOf(Pattern, values);
        var query = values.Where(value => Pattern.Parameters.All(part => !part.Name.Equals(value.Key, StringComparison.OrdinalIgnoreCase)))
            .Select(value => $"{Uri.EscapeDataString(value.Key)}={Uri.EscapeDataString(value.Value)}").ToList();
        if (Handler is not null)
        {
            query.Insert(0, "handler=" + Handler);
        }

        return query.Count == 0 ? path : $"{path}?{string.Join('&', query)}";
    }
}
