using System.Reflection;
using Microsoft.Extensions.Primitives;

namespace GreenLedger.Web.Hosting;

/// <summary>
/// The API answers a choice as <c>awaitingApproval</c>. An address may spell it in the same way, whatever its capitals; without this
/// the framework reads only the names of the code.
/// </summary>
internal static class ChoicesInAddresses
{
    public static RouteGroupBuilder ReadChoices(this RouteGroupBuilder api)
    {
        ((IEndpointConventionBuilder)api).Add(endpoint =>
        {
            var choices = endpoint.Metadata.OfType<MethodInfo>().SelectMany(handler => handler.GetParameters()).SelectMany(Choices).ToList();
            if (choices.Count > 0 && endpoint.RequestDelegate is { } next)
            {
                endpoint.RequestDelegate = http =>
                {
                    http.Request.Query = Read(http.Request.Query, choices);
                    foreach (var (name, choice) in choices)
                    {
                        if (http.Request.RouteValues.TryGetValue(name, out var word) && Meant(choice, word as string) is { } meant)
                        {
                            http.Request.RouteValues[name] = meant;
                        }
                    }

                    return next(http);
                };
            }
        });
        return api;
    }

    /// <summary>A parameter that is a choice, or the choices of one that gathers several.</summary>
    private static IEnumerable<(string Name, Type Choice)> Choices(ParameterInfo parameter)
    {
        var type = Nullable.GetUnderlyingType(parameter.ParameterType) ?? parameter.ParameterType;
        return type.IsEnum ? [(parameter.Name!, type)]
            : parameter.IsDefined(typeof(AsParametersAttribute)) ? type.GetConstructors().SelectMany(one => one.GetParameters()).SelectMany(Choices)
            : [];
    }

    private static QueryCollection Read(IQueryCollection asked, IEnumerable<(string Name, Type Choice)> choices)
    {
        var read = asked.ToDictionary(one => one.Key, one => one.Value, StringComparer.OrdinalIgnoreCase);
        foreach (var (name, choice) in choices)
        {
            if (read.TryGetValue(name, out var words) && Meant(choice, words.ToString()) is { } meant)
            {
                read[name] = new StringValues(meant);
            }
        }

        return new QueryCollection(read);
    }

    private static string? Meant(Type choice, string? word) => Enum.GetNames(choice).FirstOrDefault(known => known.Equals(word, StringComparison.OrdinalIgnoreCase));
}
