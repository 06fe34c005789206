using Microsoft.AspNetCore.WebUtilities;

namespace GreenLedger.Web.Display;

/// <summary>Addresses of a list: filters, sort and page live there, so that a view can be kept and shared.</summary>
public static class ListAddress
{
    /// <summary>The address of this page with some of its query changed; a null value takes a key away.</summary>
    public static string With(HttpRequest request, params (string Key, string? Value)[] changes)
    {
        var query = request.Query
            .Where(pair => changes.All(change => !change.Key.Equals(pair.Key, StringComparison.OrdinalIgnoreCase)))
            .SelectMany(pair => pair.Value, (pair, value) => KeyValuePair.Create(pair.Key, value))
            .Concat(changes.Select(change => KeyValuePair.Create(change.Key, change.Value)))
            .Where(pair => !string.IsNullOrEmpty(pair.Value));
        return QueryHelpers.AddQueryString(request.PathBase + request.Path, query);
    }
}
