using GreenLedger.Domain.Costs;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;

namespace GreenLedger.Domain.Tests.Costs;

public sealed class CostAllocationTests
{
    /// <summary>Handbook, trade 3.3 example E and check values 30 and 31: 4,218.75 EUR over three lots.</summary>
    private static readonly CostSharer[] ExampleE = [Sharer(9_000m, 45_000m), Sharer(6_000m, 42_000m), Sharer(3_975m, 39_750m)];

    [Theory]
    [InlineData(ShareBasis.Weight, new[] { 2_000.99, 1_333.99, 883.77 })]
    [InlineData(ShareBasis.Value, new[] { 1_497.78, 1_397.93, 1_323.04 })]
    public void A_container_bill_is_shared_to_the_cent(ShareBasis basis, double[] parts) =>
        Assert.Equal(parts.Select(part => Eur((decimal)part)), CostAllocation.Of(Eur(4_218.75m), basis, ExampleE));

    [Fact]
    public void A_credit_is_shared_as_the_bill_was() =>
        Assert.Equal([Eur(-2_000.99m), Eur(-1_333.99m), Eur(-883.77m)], CostAllocation.Of(Eur(-4_218.75m), ShareBasis.Weight, ExampleE));

    [Fact]
    public void Parts_always_add_up_to_the_whole()
    {
        var chance = new Random(11);
        for (var one = 0; one < 500; one++)
        {
            var amount = Eur(chance.Next(-1_000_000, 1_000_000) / 100m);
            var sharers = Enumerable.Range(0, chance.Next(1, 12)).Select(_ => Sharer(chance.Next(1, 30_000), chance.Next(1, 200_000))).ToList();

            var parts = CostAllocation.Of(amount, one % 2 == 0 ? ShareBasis.Weight : ShareBasis.Value, sharers);

            Assert.Equal(amount, parts.Aggregate((sum, part) => sum + part));
        }
    }

    [Fact]
    public void Nobody_to_share_and_nothing_to_share_by_are_refused()
    {
        Assert.Throws<RuleBrokenException>(() => CostAllocation.Of(Eur(1m), ShareBasis.Weight, []));
        Assert.Throws<RuleBrokenException>(() => CostAllocation.Of(Eur(1m), ShareBasis.Value, [Sharer(10m, 0m)]));
    }

    private static CostSharer Sharer(decimal kilograms, decimal value) => new(Id<Lot>.New(), Weight.FromKilograms(kilograms), value);

    private static Money Eur(decimal amount) => Money.Of(amount, Currency.Eur);
}
