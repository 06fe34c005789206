namespace GreenLedger.Web.Tests.Summaries;

/// <summary>A house that holds the demo, and the twelve months of it that the tests add up.</summary>
public sealed class DemoSummary(DemoLedger demo) : IAsyncLifetime
{
    private HouseFixture? _house;

    /// <summary>As an address asks for it: the months in which the demo buys.</summary>
    internal static string Year { get; } = FormattableString.Invariant($"from={DateTime.UtcNow.AddYears(-1):yyyy-MM}-01&until={DateTime.UtcNow:yyyy-MM}-28");

    public HouseFixture House => _house!;

    public async ValueTask InitializeAsync() => _house = await demo.HouseAsync();

    public ValueTask DisposeAsync() => House.DisposeAsync();
}
