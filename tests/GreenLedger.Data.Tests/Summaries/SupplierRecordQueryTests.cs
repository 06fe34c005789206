using GreenLedger.Data.Arrivals;
using GreenLedger.Data.Summaries;
using GreenLedger.Data.Tests.Arrivals;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Summaries;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Tests.Summaries;

public sealed class SupplierRecordQueryTests(Ledgers ledgers) : IClassFixture<Ledgers>
{
    private static readonly DateOnly Today = new(2026, 11, 26);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory, EveryEngine]
    public async Task A_record_is_read_from_offers_shipments_arrivals_and_closed_sessions(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var arrival = await ArrivalCaseQueryTests.FillAsync(ledger);
        await using (var db = ledger.Open())
        {
            var (supplier, lot) = (await db.Suppliers.SingleAsync(Stop), await db.Lots.SingleAsync(Stop));
            var other = new Lot("CA-18", "Cerro Alto natural", supplier.Id);
            db.AddRange(other, Offer(supplier, lot), Offer(supplier, other));
            await db.SaveChangesAsync(Stop);
        }

        await using var read = ledger.Open();
        var facts = await new SupplierRecordQuery(read).FactsAsync(Stop);

        // By ArrivalCaseQueryTests: on board on 28 September for a period to the 30th, 185 kg lost, seven marks 0.25 lower.
        Assert.Equal(new OfferedFact(facts.Sources().Single(), 2, 0), Assert.Single(facts.Offered));
        Assert.Equal((0, false), (Assert.Single(facts.Shipped).DaysLate, facts.Shipped[0].IsUnapproved));
        Assert.Equal((18_975m, 18_790m), (Assert.Single(facts.Landed).Shipped.Kilograms, facts.Landed[0].Landed.Kilograms));
        var cupped = Assert.Single(facts.Cupped);
        Assert.Equal((arrival, "Cerro Alto washed", Meeting.OneSession), (cupped.ArrivalId, cupped.Lot, cupped.Cup.Meeting));
        Assert.Equal(-1.75m, Math.Round(cupped.Difference, 4));
        Assert.Empty(facts.Claimed);
    }

    [Theory, EveryEngine]
    public async Task A_record_and_its_arrivals_page_give_one_difference_over_two_sessions(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var arrival = await ArrivalCaseQueryTests.FillAsync(ledger, apart: true);
        await using var db = ledger.Open();

        var shown = (await new ArrivalCaseQuery(db).FindAsync(arrival, Stop))!.Evidence!.Difference!;
        var cupped = Assert.Single((await new SupplierRecordQuery(db).FactsAsync(Stop)).Cupped);

        // Worked by hand: seven marks 0.25 lower, and the reference as much: 1.75 points of the session, nothing of the coffee.
        Assert.Equal(Meeting.HeldByReference, shown.Meeting);
        Assert.Equal(shown.Meeting, cupped.Cup.Meeting);
        Assert.Equal(shown.Points, cupped.Cup.Points, 9);
        Assert.Equal((0m, -1.75m), (cupped.Difference, cupped.Arrived.Points - cupped.Approved.Points));
    }

    [Theory, EveryEngine]
    public async Task The_house_asks_for_five_until_it_says_otherwise(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        await using var db = ledger.Open();
        Assert.Equal(5, (await new SupplierRecordQuery(db).HabitsAsync(Stop)).LeastNumber); // handbook, trade 11: below 5 the counts only

        var habits = new RecordHabits();
        habits.Ask(8);
        db.Add(habits);
        await db.SaveChangesAsync(Stop);

        await using var read = ledger.Open();
        Assert.Equal(8, (await new SupplierRecordQuery(read).HabitsAsync(Stop)).LeastNumber);
    }

    private static Offer Offer(Supplier supplier, Lot lot) => new(
        supplier.Id, lot, new Packing(20, Weight.FromKilograms(60), null), Asking.Nothing, new Terms(Incoterm.Fob, "Cartagena", null), OfferState.OnOffer, Today);
}
