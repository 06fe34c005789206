using GreenLedger.Data.Arrivals;
using GreenLedger.Data.Shipments;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Shipments;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Tests.Demo;

[Collection(FilledDemo.Name)]
public sealed class DemoArrivalsTests(FilledDemo demo)
{
    private static CancellationToken Token => TestContext.Current.CancellationToken;

    [Theory, EveryEngine]
    public async Task What_sailed_travels_under_a_shipment_and_what_landed_was_received(Engine engine)
    {
        await using var db = await demo.OpenAsync(engine);

        var shipments = await db.Shipments.AsNoTracking().Whole().ToListAsync(Token);
        var arrivals = await db.Arrivals.AsNoTracking().ToListAsync(Token);
        var landed = await db.Contracts.CountAsync(contract => contract.Goods == GoodsState.Arrived || contract.Goods == GoodsState.Closed, Token);

        Assert.All(shipments, shipment => Assert.NotEmpty(shipment.Containers));
        Assert.All(shipments.SelectMany(shipment => shipment.Containers), container => Assert.True(ContainerNumber.Of(container.Number).HasRightCheckDigit));
        Assert.All(shipments, shipment => Assert.NotEmpty(shipment.Documents));
        Assert.Contains(shipments, shipment => shipment.MissingDocuments == 0);
        Assert.Contains(shipments, shipment => shipment.MissingDocuments > 0);
        Assert.Contains(shipments, shipment => shipment.DischargedOn is null);
        var lots = shipments.SelectMany(shipment => shipment.Lots).ToDictionary(lot => lot.Id);
        Assert.Equal(landed, arrivals.Select(arrival => lots[arrival.ShipmentLotId].ContractId).Distinct().Count());
        Assert.Contains(shipments, shipment => shipment.Lots.Select(lot => lot.ContractId).Distinct().Count() == 2);
        Assert.All(arrivals, arrival => Assert.InRange(arrival.Landed.Kilograms / arrival.Shipped.Kilograms, 0.98m, 1m));
    }

    [Theory, EveryEngine]
    public async Task One_arrival_matches_one_is_short_with_an_open_claim_and_an_earlier_claim_is_settled(Engine engine)
    {
        await using var db = await demo.OpenAsync(engine);
        var cases = new ArrivalCaseQuery(db);

        var compared = await db.Arrivals.AsNoTracking().Where(arrival => arrival.ArrivalSampleId != null).Select(arrival => arrival.Id).ToListAsync(Token);
        var outcomes = new List<ArrivalOutcome>();
        foreach (var id in compared)
        {
            outcomes.Add((await cases.FindAsync(id, Token))!.Quality().Outcome);
        }

        var claims = await db.Claims.AsNoTracking().Whole().ToListAsync(Token);
        Assert.Contains(ArrivalOutcome.Matches, outcomes);
        Assert.Contains(ArrivalOutcome.Short, outcomes);
        var open = Assert.Single(claims, claim => claim.IsOpen);
        Assert.Equal([ClaimGround.Cup, ClaimGround.Weight, ClaimGround.Condition], open.Case.Grounds());
        Assert.False(open.IsLate);
        Assert.Contains(claims, claim => claim is { Outcome: ClaimOutcome.Allowance, Settled: not null, Notes.Count: 2 });
        Assert.True(claims.Max(claim => claim.At) <= FilledDemo.Now);
    }
}
