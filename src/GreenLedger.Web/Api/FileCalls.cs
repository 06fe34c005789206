namespace GreenLedger.Web.Api;

/// <summary>
/// Calls that take a file are bound when the program starts, as all were once: of what the framework binds when the program is
/// built, a call without a form answers 500 in place of saying what it takes.
/// </summary>
internal static class FileCalls
{
#pragma warning disable RDG002 // Nobody can resolve this handler before the start: that is what it is for.
    public static RouteHandlerBuilder MapPostFile(this IEndpointRouteBuilder api, string pattern, Delegate handler) => api.MapPost(pattern, handler);
#pragma warning restore RDG002
}
