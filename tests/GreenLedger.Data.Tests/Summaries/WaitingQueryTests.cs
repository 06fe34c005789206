using GreenLedger.Data.Contracts;
using GreenLedger.Data.Cupping;
using GreenLedger.Data.Samples;
using GreenLedger.Data.Summaries;
using GreenLedger.Data.Tests.Cupping;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Pricing;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Tests.Summaries;

public sealed class WaitingQueryTests(Ledgers ledgers)
{
    private static readonly DateOnly Today = new(2026, 11, 25);
    private static readonly Supplier Seller = new("Ribeirão Trading", SupplierKind.Importer);

    [Theory, EveryEngine]
    public async Task What_waits_is_counted_and_what_is_done_or_over_is_not(Engine engine)
    {
        var stop = TestContext.Current.CancellationToken;
        await using var ledger = await ledgers.NewAsync(engine);
        await using (var db = ledger.Open())
        {
            db.Add(Seller);
            db.AddRange([.. Ending("today", Today), .. Ending("in a week", Today.AddDays(7)), .. Ending("in eight days", Today.AddDays(8))]);
            db.AddRange([.. Ending("over", Today.AddDays(-1)), .. Ending("sold", Today, OfferState.Sold), .. Ending("open end", null)]);
            var lot = new Lot("A-1", "Loma Alta");
            var graded = new Sample(lot.Id, SampleKind.Offer, "QX7", Today, Weight.FromGrams(350m));
            var fresh = new Sample(lot.Id, SampleKind.Offer, "QX8", Today, Weight.FromGrams(350m));
            db.AddRange(lot, graded, fresh, new GreenGrade(graded.Id, lot.Id, Today, null, GreenGrade.UsualSample));
            db.AddRange(Rate(Today.AddDays(-9)), Rate(Today.AddDays(-5)));
            await db.SaveChangesAsync(stop);
        }

        await using var again = ledger.Open();
        var waiting = await new WaitingQuery(again, new SampleQuery(again), new ContractQuery(again), new FixingsQuery(again), new ApprovalQuery(again)).FindAsync(Today, Seal.None, stop);

        Assert.Equal(new Waiting(0, 2, 1, 2, 0, 0, 0, null, 0, null, Today.AddDays(-5), null), waiting);
    }

    [Theory, EveryEngine]
    public async Task A_sample_waits_for_a_cupping_until_it_is_on_a_table(Engine engine)
    {
        var stop = TestContext.Current.CancellationToken;
        await using var ledger = await ledgers.NewAsync(engine);
        var table = new OpenTable();
        await table.StoreAsync(ledger);
        Assert.Equal(1, await SamplesToCupAsync(ledger)); // The free one: the covered one is on the open table without a sheet yet.

        await using var db = ledger.Open();
        var session = await db.CuppingSessions.Whole().SingleAsync(stop);
        session.Pour(await db.Samples.SingleAsync(sample => sample.Id == table.FreeSample.Id, stop), new Random(8));
        await db.SaveChangesAsync(stop);
        Assert.Equal(0, await SamplesToCupAsync(ledger));

        session.Submit(session.Samples[0].Code, await db.People.SingleAsync(person => person.Id == table.Cupper.Id, stop), new SheetMarks([.. Enumerable.Repeat(Mark.Of(8m), 7)], [5, 5, 5], [0, 0]), DateTimeOffset.UnixEpoch);
        session.Close(table.Lead.Id, DateTimeOffset.UnixEpoch, new ExpectedErrors(1, 0.5));
        await db.SaveChangesAsync(stop);
        Assert.Equal(1, await SamplesToCupAsync(ledger)); // Nobody wrote a sheet for the second one.
    }

    private static async Task<int> SamplesToCupAsync(Ledger ledger)
    {
        await using var db = ledger.Open();
        return (await new WaitingQuery(db, new SampleQuery(db), new ContractQuery(db), new FixingsQuery(db), new ApprovalQuery(db)).FindAsync(Today, Seal.None, TestContext.Current.CancellationToken)).SamplesToCup;
    }

    private static object[] Ending(string name, DateOnly? on, OfferState state = OfferState.OnOffer)
    {
        var lot = new Lot(name, name, Seller.Id);
        var packing = new Packing(20, Weight.FromKilograms(60m), null);
        return [lot, new Offer(Seller.Id, lot, packing, Asking.Nothing, new Terms(Incoterm.Fob, "Santos", on), state, Today.AddDays(-30))];
    }

    private static ExchangeRate Rate(DateOnly on) => new(Currency.Usd, on, 1.08m, "typed", null, DateTimeOffset.UnixEpoch);
}
