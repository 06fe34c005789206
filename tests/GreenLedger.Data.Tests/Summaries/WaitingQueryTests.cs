using GreenLedger.Data.Cupping;
using GreenLedger.Data.Samples;
using GreenLedger.Data.Summaries;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Pricing;
using GreenLedger.Domain.Samples;

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
        var waiting = await new WaitingQuery(again, new SampleQuery(again)).FindAsync(Today, Seal.None, stop);

        Assert.Equal(new Waiting(0, 2, 1, 2, 0, Today.AddDays(-5), null), waiting);
    }

    private static object[] Ending(string name, DateOnly? on, OfferState state = OfferState.OnOffer)
    {
        var lot = new Lot(name, name, Seller.Id);
        var packing = new Packing(20, Weight.FromKilograms(60m), null);
        return [lot, new Offer(Seller.Id, lot, packing, Asking.Nothing, new Terms(Incoterm.Fob, "Santos", on), state, Today.AddDays(-30))];
    }

    private static ExchangeRate Rate(DateOnly on) => new(Currency.Usd, on, 1.08m, "typed", null, DateTimeOffset.UnixEpoch);
}
