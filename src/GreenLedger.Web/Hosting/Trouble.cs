using System.Text.Json;
using System.Text.RegularExpressions;
using GreenLedger.Data;
using GreenLedger.Domain;
using Microsoft.AspNetCore.Diagnostics;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Hosting;

/// <summary>
/// Answers of the API when something is wrong, as problem details of RFC 9457: 400 a value cannot be read, 422 a rule
/// refuses, 409 somebody was faster, 500 our mistake. A field that is at fault is named under <c>errors</c>.
/// </summary>
internal sealed partial class Trouble(IProblemDetailsService problems, ILogger<Trouble> log) : IExceptionHandler
{
    public async ValueTask<bool> TryHandleAsync(
        HttpContext httpContext, Exception exception, CancellationToken cancellationToken)
    {
        // The request's own path is /Error by now.
        var path = new PathString(httpContext.Features.Get<IExceptionHandlerPathFeature>()?.Path ?? httpContext.Request.Path);
        if (!path.StartsWithSegments("/api"))
        {
            return false;
        }

        var details = Details(exception);
        if (details.Status == StatusCodes.Status500InternalServerError)
        {
            log.LogError(exception, "The API failed at {Path}.", path);
        }

        httpContext.Response.StatusCode = details.Status!.Value;
        return await problems.TryWriteAsync(new ProblemDetailsContext { HttpContext = httpContext, ProblemDetails = details });
    }

    private static ProblemDetails Details(Exception exception) => exception switch
    {
        RuleBrokenException broken => Naming(broken.Field, broken.Message, StatusCodes.Status422UnprocessableEntity, "A rule refuses this."),
        BadHttpRequestException { InnerException: JsonException json } =>
            Naming(json.Path?.TrimStart('$', '.'), "This value cannot be read.", StatusCodes.Status400BadRequest, "The request cannot be read."),
        BadHttpRequestException bad => Unread(bad),
        DbUpdateConcurrencyException => new ProblemDetails
        {
            Status = StatusCodes.Status409Conflict,
            Title = "Somebody was faster.",
            Detail = "This record was changed meanwhile: read it again, then send your change.",
        },
        DbUpdateException taken when taken.IsTaken() => new ProblemDetails
        {
            Status = StatusCodes.Status409Conflict,
            Title = "Somebody was faster.",
            Detail = "The same was stored a moment ago, or what this stands on is gone: read again, then send it if it is still needed.",
        },
        _ => new ProblemDetails { Status = StatusCodes.Status500InternalServerError, Title = "Something went wrong here.", Detail = "Nothing was changed. The log of the server says more." },
    };

    /// <summary>The framework's sentence names the parameter and its type in our code: the caller is told the first.</summary>
    private static ProblemDetails Unread(BadHttpRequestException bad)
    {
        var (value, missing) = (Unbound().Match(bad.Message), Missing().Match(bad.Message));
        return value.Success
            ? Naming(value.Groups["name"].Value, $"“{value.Groups["value"].Value}” cannot be read here: the API document says what it takes.", bad.StatusCode, "The request cannot be read.")
            : missing.Success
                ? Naming(missing.Groups["name"].Value, "This is needed: the API document says what it takes.", bad.StatusCode, "The request cannot be read.")
                : new ProblemDetails { Status = bad.StatusCode, Title = "The request cannot be read.", Detail = bad.Message };
    }

    private static ProblemDetails Naming(string? field, string message, int status, string title)
    {
        var details = new ProblemDetails { Status = status, Title = title, Detail = message };
        if (!string.IsNullOrEmpty(field))
        {
            var name = JsonNamingPolicy.CamelCase.ConvertName(field);
            details.Extensions["errors"] = new Dictionary<string, string[]> { [name] = [message] };
        }

        return details;
    }

    [GeneratedRegex("""^Failed to bind parameter "[^"]* (?<name>\w+)" from "(?<value>.*)"\.$""", RegexOptions.Singleline)]
    private static partial Regex Unbound();

    [GeneratedRegex("""^Required parameter "[^"]* (?<name>\w+)" was not provided""")]
    private static partial Regex Missing();
}
