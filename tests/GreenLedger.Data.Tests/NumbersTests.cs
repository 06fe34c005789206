using GreenLedger.Data.Shipments;
using GreenLedger.Domain.Shipments;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Tests;

public sealed class NumbersTests(Ledgers ledgers) : IClassFixture<Ledgers>
{
    private static readonly DateOnly Today = new(2026, 11, 26);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory, EveryEngine]
    public async Task People_who_number_a_record_at_once_get_numbers_one_after_the_other(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);

        await Task.WhenAll(Enumerable.Range(0, 6).Select(_ => Task.Run(() => AddAsync(ledger), Stop)));

        await using var db = ledger.Open();
        var numbers = await db.Shipments.OrderBy(shipment => shipment.Ref).Select(shipment => shipment.Ref).ToListAsync(Stop);
        Assert.Equal(["S26-001", "S26-002", "S26-003", "S26-004", "S26-005", "S26-006"], numbers);
    }

    [Theory, EveryEngine]
    public async Task A_number_that_was_not_stored_is_given_again(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        await using (var db = ledger.Open())
        await using (var turn = await db.NumberAsync(Stop))
        {
            Assert.Equal("S26-001", await db.Shipments.NextRefAsync(Today, Stop));
        }

        await AddAsync(ledger);

        await using var read = ledger.Open();
        Assert.Equal("S26-001", await read.Shipments.Select(shipment => shipment.Ref).SingleAsync(Stop));
    }

    private static async Task AddAsync(Ledger ledger)
    {
        await using var db = ledger.Open();
        await using var turn = await db.NumberAsync(Stop);
        db.Add(new Shipment(await db.Shipments.NextRefAsync(Today, Stop), new Passage(null, null, null, "COBUN", "DEHAM", null, null, null, null, null)));
        await db.SaveChangesAsync(Stop);
        await turn.CommitAsync(Stop);
    }
}
