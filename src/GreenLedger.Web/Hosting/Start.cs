namespace GreenLedger.Web.Hosting;

/// <summary>How the application is started.</summary>
internal static class Start
{
    private const string DemoSwitch = "--demo";

    public static bool WantsDemo(string[] args) => args.Contains(DemoSwitch);

    /// <summary>
    /// Files that belong to the application lie beside it; the working folder is left to the ledger's data.
    /// </summary>
    public static WebApplicationOptions Options(string[] args) => new()
    {
        Args = [.. args.Where(argument => argument != DemoSwitch)],
        ApplicationName = typeof(Start).Assembly.GetName().Name,
        ContentRootPath = AppContext.BaseDirectory,
    };
}
