using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Samples;
using GreenLedger.Domain.Shipments;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Arrivals;

/// <summary>Eight arrivals of a supplier before those of a test, shipped in time and level with what was approved or half a point below, in turn.</summary>
internal static class EarlierArrivals
{
    private const int Number = 8;

    public static Task StoreAsync(HouseFixture house, Id<Supplier> supplier) => house.InLedgerAsync(async db =>
    {
        var people = await db.People.OrderBy(person => person.Id).Take(3).ToListAsync();
        var form = await db.CuppingForms.SingleAsync(one => one.Id == CuppingForm.HundredPointId);
        var now = DateTimeOffset.UtcNow;
        foreach (var number in Enumerable.Range(0, Number))
        {
            var lot = new Lot($"EA-{number}", $"Earlier {number}", supplier);
            var received = Ago(100 - number);
            Sample[] samples = [New(SampleKind.PreShipment, "EP"), New(SampleKind.Arrival, "EA")];
            var contract = Contract.Draft($"PE-{number}", supplier, ArrivedLot.Terms(lot) with { Delivery = new DeliveryTerms(Incoterm.Fob, "Santos", Ago(200), Ago(150)) }, new Dictionary<Id<Lot>, Id<Decision>>(), people[0].Id, now);
            contract.Sign(Ago(210), null, people[0].Id, now);
            var shipment = new Shipment($"SE-{number}", new Passage("BL-77", "Linnet", "012E", "BRSSZ", "DEHAM", null, null, Ago(160), Ago(110), null));
            shipment.Carry(contract, contract.Lots[0].Id, 550, Weight.FromKilograms(37_950m));
            contract.Ship(Ago(160), null, people[0].Id, now);
            var arrival = new Arrival(shipment, shipment.Lots[0].Id, new Receipt(received, 550, Weight.FromKilograms(37_950m), new ReceiptCondition(0, 0, 0, false, null, true), null), people[0].Id, now);
            arrival.Compare(samples[0], samples[1]);
            var session = new CuppingSession($"Earlier {number}", received, form, 5, people[0].Id);
            foreach (var (sample, code, lower) in new[] { (samples[0], "401", 0), (samples[1], "402", number % 2 == 0 ? 0 : 2) })
            {
                session.Pour(sample, code);
                people.ForEach(cupper => session.Submit(code, cupper, new SheetMarks([.. Enumerable.Range(0, 7).Select(at => Mark.Of(at < lower ? 7.75m : 8m))], [5, 5, 5], [0, 0]), now));
            }

            session.Close(people[0].Id, now, new ExpectedErrors(1.0, 0.5));
            db.AddRange([lot, .. samples, contract, shipment, arrival, session]);

            Sample New(SampleKind kind, string label) => new(lot.Id, kind, $"{label}{number}", received, Weight.FromGrams(500m));
        }

        await db.SaveChangesAsync();
    });

    private static DateOnly Ago(int days) => DateOnly.FromDateTime(DateTime.UtcNow).AddDays(-days);
}
