using GreenLedger.Domain.Measures;
using GreenLedger.Examples;

namespace GreenLedger.Web.Tests.Choosing;

/// <summary>An application whose ledger holds the running example, stored once for the tests of a class.</summary>
public sealed class OpenShop : IAsyncLifetime
{
    private OpenMarket? _market;

    public HouseFixture House { get; } = new();

    internal OpenMarket Market => _market!;

    public async ValueTask InitializeAsync()
    {
        await House.OpenHouseAsync();
        _market = await House.FromLedgerAsync(db => OpenMarket.StoreAsync(db, Currency.Eur, DateTimeOffset.UtcNow, CancellationToken.None));
    }

    public ValueTask DisposeAsync() => House.DisposeAsync();
}
