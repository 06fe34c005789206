using GreenLedger.Data.Tests.Demo;
using GreenLedger.Data.Trace;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Stock;
using GreenLedger.Domain.Trace;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Tests.Trace;

[Collection(FilledDemo.Name)]
public sealed class TraceQueryTests(FilledDemo demo)
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    /// <summary>Issue 6: from any released batch back to plots, and from each plot forward to it; the balance closes.</summary>
    [Theory, EveryEngine]
    public async Task Every_release_of_the_demo_leads_to_its_plots_and_each_of_them_back_to_it(Engine engine)
    {
        await using var db = await demo.OpenAsync(engine);
        var query = new TraceQuery(db);
        var releases = await db.Movements.AsNoTracking().Where(one => one.Kind == MovementKind.Release && db.DueDiligences.Any(held => held.LotId == one.LotId && held.Plots.Any()))
            .OrderBy(one => one.Document).ThenBy(one => one.Id).Select(one => one.Id).Take(3).ToListAsync(Stop);
        Assert.NotEmpty(releases);

        foreach (var release in releases)
        {
            var back = (await query.FindAsync(TraceFrom.Release, release.Value, Stop))!;
            var plots = back.Way().Of(TraceKind.Plot).ToList();

            Assert.NotEmpty(plots);
            Assert.Contains(back.Way().Nodes, node => node.Key.Kind == TraceKind.Shipment && node.Detail!.Contains("seal", StringComparison.Ordinal));
            foreach (var plot in plots)
            {
                var forth = (await query.FindAsync(TraceFrom.Plot, plot.Key.Id, Stop))!;
                Assert.Contains(forth.Way().Nodes, node => node.Key == new TraceKey(TraceKind.Release, release.Value));
            }
        }
    }

    [Theory, EveryEngine]
    public async Task Every_balance_of_the_demo_closes(Engine engine)
    {
        await using var db = await demo.OpenAsync(engine);
        var query = new TraceQuery(db);
        var lots = await db.Holdings.Select(one => one.LotId).Distinct().ToListAsync(Stop);

        foreach (var lot in lots)
        {
            var balance = Assert.Single((await query.FindAsync(TraceFrom.Lot, lot.Value, Stop))!.Balances());
            var left = await db.Holdings.Where(one => one.LotId == lot).SumAsync(one => one.Weighed.Micrograms, Stop);
            Assert.True(balance.Closes);
            Assert.Equal(left, balance.InStock!.After.Micrograms);
        }
    }

    [Theory, EveryEngine]
    public async Task What_a_trace_starts_from_is_found_by_batch_bill_of_lading_and_name(Engine engine)
    {
        await using var db = await demo.OpenAsync(engine);
        var query = new TracePicksQuery(db);
        var batch = await db.Movements.Where(one => one.Kind == MovementKind.Release).OrderBy(one => one.Id).Select(one => one.Document).FirstAsync(Stop);
        var bill = await db.Shipments.Where(one => one.BillOfLading != null).Select(one => new { one.Id, one.BillOfLading }).FirstAsync(Stop);

        Assert.All(await query.ListAsync(batch!.ToLowerInvariant(), Stop), pick => Assert.Equal(TraceFrom.Release, pick.From));
        Assert.Contains(await query.ListAsync(bill.BillOfLading, Stop), pick => pick == new TracePick(TraceFrom.Shipment, bill.Id.Value, pick.Name, bill.BillOfLading));
        Assert.Empty(await query.ListAsync("nothing is called so", Stop));
        Assert.Equal(Enum.GetValues<TraceFrom>().Order(), (await query.ListAsync(null, Stop)).Select(pick => pick.From).Distinct().Order());
    }

    [Theory, EveryEngine]
    public async Task What_is_not_there_is_not_traced(Engine engine)
    {
        await using var db = await demo.OpenAsync(engine);

        foreach (var from in Enum.GetValues<TraceFrom>())
        {
            Assert.Null(await new TraceQuery(db).FindAsync(from, Id<Lot>.New().Value, Stop));
        }
    }
}
