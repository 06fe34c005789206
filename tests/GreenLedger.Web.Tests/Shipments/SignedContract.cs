using GreenLedger.Data.Contracts;
using GreenLedger.Domain;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Shipments;

/// <summary>A signed contract over 550 bags of 69 kg (handbook, trade 8: 275 of them are 18,975 kg), to be shipped in September 2026.</summary>
internal sealed record SignedContract(Id<Contract> Id, Id<ContractLot> LotId, Id<Supplier> Supplier, string Ref)
{
    private static readonly DateTimeOffset Noon = new(2026, 8, 3, 12, 0, 0, TimeSpan.Zero);

    private static int _count;

    public static async Task<SignedContract> StoreAsync(HouseFixture house, ApprovalRule approval = ApprovalRule.None, Incoterm incoterm = Incoterm.Fob, string country = "CO", params string[] certificates)
    {
        await house.OpenHouseAsync();
        var number = Interlocked.Increment(ref _count);
        return await house.FromLedgerAsync(async db =>
        {
            var buyer = await db.People.FirstAsync(person => person.Roles == Role.Buyer);
            var supplier = new Supplier($"Casa Mirador {number}", SupplierKind.Exporter, country);
            var lot = new Lot($"CM-{number}", $"Mirador washed {number}", supplier.Id);
            var terms = new ContractTerms(
                "Sorrel Roasters",
                supplier.Name,
                [new ContractedLot(lot.Id, lot.Ref, lot.Name, "2025/26", 550, Weight.FromKilograms(69m))],
                new QualityTerms("Washed arabica", Score.Of(84m)),
                PriceTerms.AtPrice(PricePerWeight.FromCentsPerPound(321.65m)),
                new DeliveryTerms(incoterm, "Buenaventura", new DateOnly(2026, 9, 1), new DateOnly(2026, 9, 30)),
                new WeightTerms(WeightBasis.Shipped, Percent.Of(0.5m), Percent.Of(3m)),
                new ApprovalTerms(approval, approval == ApprovalRule.Replace ? 3 : null, null),
                "Net cash against documents on first presentation",
                certificates,
                new FormTerms("ESCC, 2018, amended January 2021", "London", 21, 28, 45),
                null);
            var contract = Contract.Draft($"PS-{number}", supplier.Id, terms, new Dictionary<Id<Lot>, Id<Decision>>(), buyer.Id, Noon);
            contract.Sign(new DateOnly(2026, 8, 1), null, buyer.Id, Noon);
            db.AddRange(supplier, lot, contract);
            await db.SaveChangesAsync();
            return new SignedContract(contract.Id, contract.Lots[0].Id, supplier.Id, contract.Ref);
        });
    }

    public Task<Contract> FindAsync(HouseFixture house) =>
        house.FromLedgerAsync(db => db.Contracts.AsNoTracking().Whole().SingleAsync(contract => contract.Id == Id));
}
