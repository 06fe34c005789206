namespace GreenLedger.Web.Hosting;

/// <summary>How the application is started.</summary>
internal static class Start
{
    private const string DemoSwitch = "--demo";
    private const string ReadBackSwitch = "--read-back";

    public static bool WantsDemo(string[] args) => args.Contains(DemoSwitch);

    /// <summary>The archive that an empty ledger is to be opened from: <c>--read-back FILE</c>. Null where none is named.</summary>
    public static string? ArchiveToReadBack(string[] args) =>
        Array.IndexOf(args, ReadBackSwitch) is >= 0 and var at ? args.ElementAtOrDefault(at + 1) ?? "" : null;

    /// <summary>
    /// Files that belong to the application lie beside it; the working folder is left to the ledger's data.
    /// </summary>
    public static WebApplicationOptions Options(string[] args) => new()
    {
        Args = [.. args.Where((argument, at) => argument is not (DemoSwitch or ReadBackSwitch) && args.ElementAtOrDefault(at - 1) != ReadBackSwitch)],
        ApplicationName = typeof(Start).Assembly.GetName().Name,
        ContentRootPath = AppContext.BaseDirectory,
    };
}
