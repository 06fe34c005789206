using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Web.Tests.Offers;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Api;

/// <summary>The lists in tests/inputs, loaded twice; apart from what comes out of them, which a first loading shows.</summary>
public sealed class ListsLoadedAgainTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    public static TheoryData<string> Lists() => ReceivedLists.Names();

    [Theory]
    [MemberData(nameof(Lists))]
    public async Task The_same_list_again_leaves_every_table_equal_and_is_one_line_of_history(string name)
    {
        using var script = await house.ScriptAsync(Role.Buyer);
        await ReceivedLists.LoadAsync(script, name);
        var before = await house.FromLedgerAsync(LedgerTables.ReadAsync);

        var again = await ReceivedLists.LoadAsync(script, name);

        Assert.Equal((0, 0, false), (again.GetProperty("accepted").GetInt32(), again.GetProperty("revised").GetInt32(), again.GetProperty("stored").GetBoolean()));
        Assert.Equal(ReceivedLists.Expected(name).GetProperty("offers").GetInt32(), again.GetProperty("unchanged").GetInt32());
        Assert.Equal(before, await house.FromLedgerAsync(LedgerTables.ReadAsync));
        Assert.Equal(1, await house.FromLedgerAsync(db => db.Changes.CountAsync(change => change.RecordKind == nameof(OfferList) && change.RecordName == name)));
    }
}
