using System.Reflection;

namespace GreenLedger.Web.Hosting;

/// <summary>
/// Names the value of an address that cannot be read. The code that the framework makes when the program is built says so itself
/// of a value that is needed; of one that may be left out it answers 400 without a word.
/// </summary>
internal sealed class UnreadValues : IEndpointFilter
{
    public ValueTask<object?> InvokeAsync(EndpointFilterInvocationContext context, EndpointFilterDelegate next)
    {
        if (context.HttpContext.Response.StatusCode == StatusCodes.Status400BadRequest
            && Read(context).FirstOrDefault(one => IsUnread(one.Value, Sent(context.HttpContext, one.Name))) is { Name: { } name })
        {
            throw new BadHttpRequestException($"Failed to bind parameter \"value {name}\" from \"{Sent(context.HttpContext, name)}\".");
        }

        return next(context);
    }

    /// <summary>What was read for each value that the call takes, those that it gathers in one included.</summary>
    private static IEnumerable<(string Name, object? Value)> Read(EndpointFilterInvocationContext context)
    {
        var parameters = context.HttpContext.GetEndpoint()?.Metadata.GetMetadata<MethodInfo>()?.GetParameters() ?? [];
        return parameters.Zip(context.Arguments).SelectMany(one => one.First.IsDefined(typeof(AsParametersAttribute)) && one.Second is { } gathered
            ? gathered.GetType().GetProperties().Select(property => (property.Name, property.GetValue(gathered)))
            : [(one.First.Name!, one.Second)]);
    }

    /// <summary>Something was sent, and the value is none or what its type begins with.</summary>
    private static bool IsUnread(object? value, string? sent) => sent is not null
        && (value is null || (value is ValueType && value.Equals(Activator.CreateInstance(value.GetType())) && !sent.Equals(value.ToString(), StringComparison.OrdinalIgnoreCase)));

    private static string? Sent(HttpContext http, string name) =>
        http.Request.Query.TryGetValue(name, out var values) && values.ToString() is { Length: > 0 } sent ? sent : null;
}
