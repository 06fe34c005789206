using GreenLedger.Data.Cupping;
using GreenLedger.Data.Summaries;
using GreenLedger.Data.Tests.Demo;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Tests.Summaries;

/// <summary>Extracts of the demo against counts that the database makes by SQL of its own.</summary>
[Collection(FilledDemo.Name)]
public sealed class ExtractQueryTests(FilledDemo demo)
{
    private static readonly ExtractFilter All = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory, EveryEngine]
    public async Task Every_row_of_a_table_leaves_once(Engine engine)
    {
        await using var db = await demo.OpenAsync(engine);
        var query = new ExtractQuery(db);

        Assert.Equal(await CountAsync(db, "Lots"), await query.Lots(All, Seal.None).CountAsync(Stop));
        Assert.Equal(await CountAsync(db, "Samples"), await query.Samples(All, Seal.None).CountAsync(Stop));
        Assert.Equal(await CountAsync(db, "SampleResults"), await query.Cuppings(All, Seal.None).CountAsync(Stop));
        Assert.Equal(await CountAsync(db, "ContractLots"), await query.Contracts(All, Seal.None).CountAsync(Stop));
        Assert.Equal(await CountAsync(db, "ShipmentLots"), await query.Shipments(All, Seal.None).CountAsync(Stop));
        Assert.Equal(await CountAsync(db, "Arrivals"), await query.Arrivals(All, Seal.None).CountAsync(Stop));
        Assert.Equal(await CountAsync(db, "Decisions"), await query.Decisions(All, Seal.None).CountAsync(Stop));
    }

    [Theory, EveryEngine]
    public async Task Days_and_words_narrow_what_leaves(Engine engine)
    {
        await using var db = await demo.OpenAsync(engine);
        var query = new ExtractQuery(db);
        var day = new DateOnly(2026, 6, 30);

        var before = await query.Decisions(new ExtractFilter(Until: day), Seal.None).ToListAsync(Stop);
        var after = await query.Decisions(new ExtractFilter(From: day.AddDays(1)), Seal.None).ToListAsync(Stop);
        var word = before[0].Lot.Ref;
        var named = await query.Decisions(new ExtractFilter(word), Seal.None).ToListAsync(Stop);

        Assert.Equal(await CountAsync(db, "Decisions"), before.Count + after.Count);
        Assert.NotEmpty(after);
        Assert.All(named, row => Assert.Contains(word, row.Lot.Ref, StringComparison.OrdinalIgnoreCase));
        Assert.NotEmpty(named);
    }

    [Theory, EveryEngine]
    public async Task What_an_open_session_seals_is_in_no_table(Engine engine)
    {
        await using var db = await demo.OpenAsync(engine);
        var query = new ExtractQuery(db);
        var lot = (await query.Decisions(All, Seal.None).FirstAsync(Stop)).Lot.Id;
        var seal = new Seal([], [], [lot], [], isOfEveryCoffee: false);

        Assert.DoesNotContain(await query.Lots(All, seal).ToListAsync(Stop), row => row.Lot.Id == lot);
        Assert.DoesNotContain(await query.Samples(All, seal).ToListAsync(Stop), row => row.Lot.Id == lot);
        Assert.DoesNotContain(await query.Cuppings(All, seal).ToListAsync(Stop), row => row.Lot.Id == lot);
        Assert.DoesNotContain(await query.Decisions(All, seal).ToListAsync(Stop), row => row.Lot.Id == lot);
        Assert.Equal(await CountAsync(db, "Lots") - 1, await query.Lots(All, seal).CountAsync(Stop));
    }

    private static async Task<int> CountAsync(LedgerContext db, string table)
    {
        var count = "SELECT CAST(COUNT(*) AS int) AS \"Value\" FROM \"" + table + "\"";
        return await db.Database.SqlQueryRaw<int>(count).SingleAsync(Stop);
    }
}
