using GreenLedger.Data.Cupping;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Cupping.Sealing;

/// <summary>
/// Everything that the running application serves is asked while sessions are open, by cuppers of their panels with every
/// other role besides: no page, search, export, document, history, header or answer pairs a code with its coffee.
/// </summary>
public sealed class SealTests
{
    private static readonly string[] ReachedByNobodyHere =
    [
        "GET /Entrance/FirstAccount", // only a ledger without an account has it
        "GET /Offers/Loading?handler=Progress", // while a list is being taken in
        "GET /Pricing/Calculate?handler=Workbook", // of what was typed into the calculator
    ];

    /// <summary>The rooms that whoever lays out works in; the others are for who may read offers.</summary>
    private static readonly string[] OfTheLead = ["/Cupping", "/Papers", "/Samples", "/Search"];

    /// <summary>
    /// Where a code stands beside its coffee once the seal is off, as a walk through every room found; elsewhere no answer
    /// carries a code of an open session at all (docs/decisions/0006).
    /// </summary>
    private static readonly string[] HeardUnsealed = ["/Due", "/Papers", "/api/due", "/api/papers"];

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Nobody_who_cups_finds_out_what_is_in_the_cups_whatever_else_they_may_do()
    {
        var dry = new DryRun();
        await using var sealing = await SealedHouse.OpenAsync(dry, isSealed: true);
        var panel = new[] { Role.Cupper, Role.Cupper | Role.LeadCupper, Role.Cupper | Role.Buyer, Role.Cupper | Role.Administrator, Role.Cupper | Role.Viewer };
        var cuppers = await Task.WhenAll(panel.Select(roles => sealing.PersonAsync($"Panel {roles}", roles)));
        var (pourer, layer, lead) = (await sealing.PersonAsync("Pourer", Role.Cupper), await sealing.PersonAsync("Layer", SealedHouse.Everything), await sealing.LeadAsync());
        var cupped = await SealedTable.LayOutAsync(sealing.House, "Umbra", 904511, lead, cuppers, pourer);
        var own = await SealedTable.LayOutAsync(sealing.House, "Velata", 806213, layer, [layer], null);
        await sealing.FillAsync(cupped, [.. cuppers, layer]);
        var routes = await AskedRoute.AllAsync(sealing.House.Services);
        var key = routes.Where(route => route.IsOfKey).ToList();
        var walk = new Walk(sealing, [cupped, own]);

        var insiders = await Task.WhenAll([
            .. cuppers.Select(cupper => walk.EnterAsync(cupper, cupped, routes)),
            walk.EnterAsync(layer, own, routes),
            walk.EnterAsync(pourer, cupped, key),
            walk.EnterAsync(lead, cupped, InRoomsOfTheLead(routes))]);
        foreach (var insider in insiders)
        {
            await insider.ReadAllAsync();
        }

        dry.IsOn = true;
        foreach (var insider in insiders)
        {
            await insider.TryAllAsync();
        }

        var told = walk.Leaks.Where(leak => leak.IsOfKey && (leak.To == layer.Id || leak.To == pourer.Id || leak.To == lead.Id)).ToList();
        Assert.Equal(new[] { layer.Id, pourer.Id, lead.Id }.Order(), told.Select(leak => leak.To).Distinct().Order());
        var unreached = routes.Select(route => route.Name).Except(walk.Reached.Keys).Except(ReachedByNobodyHere).Where(name => !Insider.IsOfSignIn(name)).Select(name => $"Nobody reached {name}");
        var wrong = walk.Leaks.Except(told).Select(leak => leak.ToString()).Concat(walk.Faults).Concat(walk.Unknown).Concat(unreached).ToList();
        Assert.True(wrong.Count == 0, $"{walk.Asked} answers, {wrong.Count} wrong:\n{string.Join('\n', wrong)}");
        Assert.Equal(2, await sealing.House.FromLedgerAsync(db => db.CuppingSessions.Open().CountAsync(session => session.Id == cupped.Id || session.Id == own.Id, Stop)));
    }

    [Fact]
    public async Task The_same_walk_through_a_house_without_the_seal_finds_the_coffees()
    {
        await using var sealing = await SealedHouse.OpenAsync(new DryRun(), isSealed: false);
        var cupper = await sealing.PersonAsync("Panel", SealedHouse.Everything);
        var table = await SealedTable.LayOutAsync(sealing.House, "Umbra", 904511, await sealing.LeadAsync(), [cupper], null);
        await SealedGoods.AddAsync(sealing.House, table);
        var walk = new Walk(sealing, [table]);
        var routes = await AskedRoute.AllAsync(sealing.House.Services);

        await (await walk.EnterAsync(cupper, table, [.. routes.Where(route => HeardUnsealed.Contains(RoomOf(route)))])).ReadAllAsync();

        Assert.Equal(HeardUnsealed, walk.Leaks.Select(leak => RoomOf(leak.Address)).Distinct().Order(StringComparer.Ordinal));
        Assert.All(table.Cups, cup => Assert.Contains(walk.Leaks, leak => leak.Cup == cup && leak.Secret == cup.Sample));
        Assert.All(
            new[] { "/api/papers/history?", "/api/papers/changes", "/Papers/Changes" },
            address => Assert.Contains(walk.Leaks, leak => leak.Address.StartsWith(address, StringComparison.Ordinal)));
        Assert.DoesNotContain(walk.Leaks, leak => leak.IsOfKey);
    }

    [Fact]
    public async Task A_code_that_is_planted_beside_its_coffee_is_heard_in_every_room()
    {
        await using var sealing = await SealedHouse.OpenAsync(new DryRun(), isSealed: true, planted: "904511 is QX11UN");
        var cupper = await sealing.PersonAsync("Panel", SealedHouse.Everything);
        var table = await SealedTable.LayOutAsync(sealing.House, "Umbra", 904511, await sealing.LeadAsync(), [cupper], null);
        var walk = new Walk(sealing, [table]);
        var routes = (await AskedRoute.AllAsync(sealing.House.Services)).Where(route => route.IsRead).ToList();
        var once = routes.GroupBy(RoomOf).Select(room => room.OrderBy(route => route.Values.Count(one => one.IsNeeded)).ThenBy(route => route.Values.Count).First()).ToList();

        await (await walk.EnterAsync(cupper, table, once)).ReadAllAsync();

        var heard = walk.Leaks.Where(leak => leak.Secret == table.Cups[0].Label).Select(leak => RoomOf(leak.Address)).ToHashSet();
        Assert.True(once.Count > 30, $"{once.Count} rooms only.");
        // The archive is refused to whoever cups, so that nothing can be planted in it.
        Assert.Equal("/api/archive", string.Join(' ', once.Select(RoomOf).Where(room => !heard.Contains(room))));
    }

    private static string RoomOf(AskedRoute route) => RoomOf("/" + route.Pattern.RawText!.TrimStart('/'));

    /// <summary>The room of an address; of the API what stands behind <c>/api</c>.</summary>
    private static string RoomOf(string address)
    {
        var parts = address.Split('?')[0].Split('/', StringSplitOptions.RemoveEmptyEntries);
        return parts is ["api", var room, ..] ? "/api/" + room : "/" + parts.FirstOrDefault();
    }

    private static IReadOnlyList<AskedRoute> InRoomsOfTheLead(IReadOnlyList<AskedRoute> routes) =>
        [.. routes.Where(route => OfTheLead.Any(room => route.Name.Contains(room, StringComparison.OrdinalIgnoreCase)))];
}
