using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Pricing;
using GreenLedger.Domain.Samples;
using GreenLedger.Domain.Shipments;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Arrivals;

/// <summary>
/// A signed contract over 550 bags of 69 kg at 321.65 ¢/lb (handbook, trade 8), half of it sailed and not received yet, the other half
/// received 185 kg short, and both of its samples cupped in one closed session.
/// </summary>
internal sealed record ArrivedLot(Id<Contract> Contract, Id<ContractLot> ContractLot, Id<Shipment> Afloat, Id<ShipmentLot> AfloatLot, Id<Arrival> Arrival)
{
    private static readonly DateTimeOffset Noon = new(2026, 11, 24, 12, 0, 0, TimeSpan.Zero);
    private static readonly DateOnly OnBoard = new(2026, 9, 28);

    private static int _count;

    public static async Task<ArrivedLot> FillAsync(HouseFixture house)
    {
        await house.OpenHouseAsync();
        var number = Interlocked.Increment(ref _count);
        return await house.FromLedgerAsync(async db =>
        {
            var buyer = await db.People.FirstAsync(person => person.Roles == Role.Buyer);
            Person[] panel = [await db.People.FirstAsync(person => person.Roles == Role.Cupper), await db.People.FirstAsync(person => person.Roles == Role.LeadCupper), buyer];
            var supplier = new Supplier($"Cerro Alto Exports {number}", SupplierKind.Exporter);
            var lot = new Lot($"CA-{number}", $"Cerro Alto washed {number}", supplier.Id);
            Sample[] samples = [new(lot.Id, SampleKind.PreShipment, $"PS{number}", new DateOnly(2026, 8, 20), Weight.FromGrams(500m)), new(lot.Id, SampleKind.Arrival, $"AR{number}", new DateOnly(2026, 11, 20), Weight.FromGrams(500m))];
            var contract = Domain.Contracts.Contract.Draft($"PT-{number}", supplier.Id, Terms(lot), new Dictionary<Id<Lot>, Id<Decision>>(), buyer.Id, Noon);
            contract.Sign(new DateOnly(2026, 7, 1), null, buyer.Id, Noon);
            var (first, second) = (Sail(contract, $"FIRST-{number}"), Sail(contract, $"SECOND-{number}"));
            contract.Ship(OnBoard, null, buyer.Id, Noon);
            var arrival = new Arrival(first, first.Lots[0].Id, new Receipt(OnBoard.AddDays(31), 274, Weight.FromKilograms(18_790m), new ReceiptCondition(2, 0, 0, false, null, true), null), buyer.Id, Noon);
            arrival.Compare(samples[0], samples[1]);
            var form = await db.CuppingForms.SingleAsync(form => form.Id == CuppingForm.HundredPointId);
            await RateAsync(db, buyer.Id);
            db.AddRange([supplier, lot, .. samples, contract, first, second, arrival, Session(number, samples, panel, form)]);
            await db.SaveChangesAsync();
            return new ArrivedLot(contract.Id, contract.Lots[0].Id, second.Id, second.Lots[0].Id, arrival.Id);
        });
    }

    /// <summary>1.25 USD for a euro, once in a ledger; claims in these tests are settled after that day.</summary>
    private static async Task RateAsync(LedgerContext db, Id<Person> by)
    {
        if (!await db.ExchangeRates.AnyAsync(rate => rate.Currency == Currency.Usd && rate.On == OnBoard))
        {
            db.Add(new ExchangeRate(Currency.Usd, OnBoard, 1.25m, "Test", by, Noon));
        }
    }

    private static Shipment Sail(Contract contract, string @ref)
    {
        var shipment = new Shipment(@ref, new Passage("BL-77", "Linnet", "012E", "COCTG", "DEHAM", null, null, OnBoard, OnBoard.AddDays(28), null));
        shipment.Carry(contract, contract.Lots[0].Id, 275, Weight.FromKilograms(18_975m));
        shipment.Load([("CSQU3054383", "SL1")]);
        return shipment;
    }

    private static CuppingSession Session(int number, Sample[] samples, Person[] panel, CuppingForm form)
    {
        var session = new CuppingSession($"Arrival {number} beside approved", new DateOnly(2026, 11, 23), form, 5, panel[1].Id);
        foreach (var (at, sample) in samples.Index())
        {
            session.Pour(sample, $"{401 + at}");
            foreach (var (seat, cupper) in panel.Index())
            {
                session.Submit($"{401 + at}", cupper, new SheetMarks([.. Enumerable.Repeat(Mark.Of(8m - at * 0.25m - seat * 0.25m), 7)], [5, 5, 5], [0, 0]), Noon);
            }
        }

        session.Close(panel[1].Id, Noon, new ExpectedErrors(1.0, 0.5));
        return session;
    }

    internal static ContractTerms Terms(Lot lot) => new(
        "Sorrel Roasters",
        "Cerro Alto Exports",
        [new ContractedLot(lot.Id, lot.Ref, lot.Name, "2026/27", 550, Weight.FromKilograms(69m))],
        new QualityTerms("Washed arabica, screen 16 and above", Score.Of(84m)),
        PriceTerms.AtPrice(PricePerWeight.FromCentsPerPound(321.65m)),
        new DeliveryTerms(Incoterm.Fob, "Cartagena", new DateOnly(2026, 9, 1), new DateOnly(2026, 9, 30)),
        new WeightTerms(WeightBasis.Shipped, Percent.Of(0.5m), Percent.Of(3m)),
        new ApprovalTerms(ApprovalRule.None, null, null),
        "Net cash against documents on first presentation",
        [],
        new FormTerms("ESCC, 2018, amended January 2021", "London", 21, 28, 45),
        null);
}
