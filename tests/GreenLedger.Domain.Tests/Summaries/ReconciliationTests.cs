using CsCheck;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Summaries;

namespace GreenLedger.Domain.Tests.Summaries;

/// <summary>Over generated purchases: whatever the cut, the parts add up to the whole, to the cent and to the microgram.</summary>
public sealed class ReconciliationTests
{
    private static readonly Gen<PurchasedLot> Lots =
        from origin in One("Brazil", "Colombia", "Kenya", "Peru")
        from supplier in One("Cerro Alto Exports", "Ribeirão Trading", "Kilele Coffee")
        from process in One<string?>("washed", "natural", null)
        from certificates in One<IReadOnlyList<string>>([], ["organic"], ["fairtrade", "organic"])
        from grams in Gen.Long[1, 40_000_000]
        from cents in Gen.Long[1, 30_000_000]
        from isValued in Gen.Int[0, 9]
        from score in Gen.Int[7600, 9300]
        from isCupped in Gen.Int[0, 9]
        from day in Gen.Int[0, 729]
        from open in Gen.Int[0, 3]
        select Purchases.Lot(
            origin, grams / 1000m, isValued == 0 ? null : cents / 100m, isCupped == 0 ? null : score / 100m, new DateOnly(2025, 1, 1).AddDays(day), supplier, certificates, process,
            open == 0 ? FuturesMonth.Of(FuturesMarket.Arabica, 2027, 3) : null);

    [Fact]
    public void The_groups_of_every_cut_add_up_to_the_whole() => Lots.Array[0, 60].Sample(lots =>
    {
        foreach (var cut in Enum.GetValues<Cut>())
        {
            var stock = lots.Select(lot => new LotInStock(lot.Lot, lot.Net, lot.Value)).ToList();
            var summary = Purchases.Summary(lots, new SummaryWish(Purchases.Year, cut), stock: stock);
            var (whole, groups) = (summary.Total(SummaryFigure.Contracted), summary.Groups());

            Assert.Equal(whole.Net.Micrograms, groups.Sum(group => group.Contracted.Net.Micrograms));
            Assert.Equal(whole.Value.MinorUnits, groups.Sum(group => group.Contracted.Value.MinorUnits));
            Assert.Equal((whole.Rows, whole.WithoutValue), (groups.Sum(group => group.Contracted.Rows), groups.Sum(group => group.Contracted.WithoutValue)));
            Assert.Equal(summary.Total(SummaryFigure.ToCome).Value.MinorUnits, groups.Sum(group => group.ToCome.Value.MinorUnits));
            Assert.Equal(stock.Sum(lot => lot.Net.Micrograms), groups.Sum(group => group.InStock.Net.Micrograms));
            Assert.Equal(stock.Sum(lot => lot.Value?.MinorUnits ?? 0), groups.Sum(group => group.InStock.Value.MinorUnits));
        }
    }, iter: 200);

    [Fact]
    public void A_group_asked_for_alone_has_the_figures_that_it_has_among_the_others() => Lots.Array[1, 40].Sample(lots =>
    {
        var summary = Purchases.Summary(lots, new SummaryWish(Purchases.Year, Cut.Supplier));
        foreach (var group in summary.Groups())
        {
            Assert.Equal(group.Contracted, summary.Of(summary.Wish with { Group = group.Name }).Total(SummaryFigure.Contracted));
        }
    }, iter: 100);

    [Fact]
    public void Bands_and_months_add_up_to_the_whole_too() => Lots.Array[0, 60].Sample(lots =>
    {
        var summary = Purchases.Summary(lots);
        var open = summary.Total(SummaryFigure.Open);

        Assert.Equal(summary.Total(SummaryFigure.Contracted).Value.MinorUnits, summary.BandLines().Sum(line => line.Now.Value.MinorUnits));
        Assert.Equal(open.Net.Micrograms, summary.PricedMonths().Sum(month => month.Priced.Micrograms + month.Unpriced.Micrograms));
        Assert.Equal(summary.PricedMonths().Sum(month => month.Unpriced.Micrograms), summary.UnpricedMonths().Sum(month => month.Net.Micrograms));
    }, iter: 200);

    [Fact]
    public void The_totals_of_every_table_are_those_of_its_rows() => Lots.Array[1, 40].Sample(lots =>
    {
        var summary = Purchases.Summary(lots);
        foreach (var table in SummaryTables.Of(summary).Where(table => table.Totals is not null))
        {
            foreach (var (at, column) in table.Columns.Index().Where(one => one.Item.Total is { Over: null }))
            {
                Assert.Equal(table.Rows.Sum(row => (decimal?)row[at].Value ?? 0m), (decimal)table.Totals![at].Value!);
            }
        }

        Assert.Equal(summary.Total(SummaryFigure.Contracted).Value.Amount, SummaryTables.Of(summary).Single(table => table.Name == "By origin").Totals?[3].Value as decimal? ?? 0m); // the group table's money
    }, iter: 60);

    private static Gen<T> One<T>(params T[] choices) => Gen.Int[0, choices.Length - 1].Select(at => choices[at]);
}
