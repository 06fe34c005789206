using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Offers.Reading;
using GreenLedger.Domain.Origins;

namespace GreenLedger.Domain.Tests.Offers.Reading;

/// <summary>
/// Headings and cells as exporters write them, read by what is proposed from them, without a correction. Expected figures
/// are worked by hand with 1 lb = 0.45359237 kg (International yard and pound agreement, 1959; NIST SP 811).
/// </summary>
public sealed class ListUnitsTests
{
    [Theory]
    [InlineData("Price USD/lb", "3.25", 3.25, PriceUnit.Pound, "USD")]
    [InlineData("Price US cents/lb", "325", 3.25, PriceUnit.Pound, "USD")]
    [InlineData("Precio USD/qq 46 kg", "329.60", 329.60, PriceUnit.Quintal46, "USD")]
    [InlineData("Price USD/t", "7,165", 7165, PriceUnit.Tonne, "USD")]
    [InlineData("Preis EUR/50 kg", "362,50", 362.50, PriceUnit.FiftyKilograms, "EUR")]
    [InlineData("Prix EUR/kg", "7,25", 7.25, PriceUnit.Kilogram, "EUR")]
    [InlineData("Preço USD/kg", "7,25", 7.25, PriceUnit.Kilogram, "USD")]
    public void A_price_is_read_in_the_unit_of_its_heading(string heading, string cell, decimal amount, PriceUnit unit, string currency)
    {
        var (row, problems) = Read(["Ref", heading, "Bags", "kg/bag"], ["L-1", cell, "10", "60"]);

        Assert.Empty(problems);
        Assert.Equal(PricePerWeight.Of(amount, Currency.Of(currency), unit), row!.Asking.Price);
    }

    [Theory]
    [InlineData("Differential c/lb", "KCH27 +18.5", "KCH27", 18.5)]
    [InlineData("Differential USD/t", "RCK27 -40", "RCK27", -40)]
    public void A_differential_keeps_the_unit_of_its_market(string heading, string cell, string month, decimal quoted)
    {
        var (row, problems) = Read(["Ref", heading, "Bags", "kg/bag"], ["L-1", cell, "10", "60"]);

        Assert.Empty(problems);
        Assert.Equal((month, quoted), (row!.Asking.Differential!.Value.Month.ToString(), row.Asking.Differential.Value.Quoted));
    }

    [Theory]
    [InlineData("Net lbs", "1,000", "453.59237")]
    [InlineData("Tonnes", "19.2", "19200")]
    [InlineData("Quantity", "320 x 60 kg", "19200")]
    [InlineData("Quantity", "42,000 lb", "19050.87954")]
    [InlineData("Menge", "19 200 kg", "19200")]
    [InlineData("Cantidad", "320 sacos de 60 kg", "19200")]
    [InlineData("Quantity", "2 big bags 1000 kg", "2000")]
    public void A_quantity_is_exact_in_the_unit_it_is_written_in(string heading, string cell, string kilograms)
    {
        var (row, problems) = Read(["Ref", heading, "USD/kg"], ["L-1", cell, "7.25"]);

        Assert.Empty(problems);
        Assert.Equal(Weight.Parse(kilograms + " kg", null), row!.Packing.Net);
    }

    /// <summary>Headings from common practice, no source; kilograms are as many whole bags of 60 kg as hold them.</summary>
    [Theory]
    [InlineData("MOQ", "5", 5)]
    [InlineData("Min. bags", "5 bags", 5)]
    [InlineData("Minimum lot", "10", 10)]
    [InlineData("MOQ (kg)", "300", 5)]
    [InlineData("Pedido mínimo", "310 kg", 6)]
    [InlineData("Quantidade mínima", "4 sacas", 4)]
    [InlineData("Quantité minimum", "3", 3)]
    [InlineData("Mindestmenge", "12 Sack", 12)]
    [InlineData("Minimum order", "0", null)]
    [InlineData("Minimum order", "", null)]
    public void A_least_lot_is_read_in_bags(string heading, string cell, int? bags)
    {
        var (row, problems) = Read(["Ref", "USD/kg", "Bags", "kg/bag", heading], ["L-1", "7.25", "40", "60", cell]);

        Assert.Empty(problems);
        Assert.Equal(bags, row!.Terms.LeastBags);
        Assert.Equal(40, row.Packing.Bags);
    }

    [Theory]
    [InlineData("10", "690", "6900", "heavier than any in the trade")]
    [InlineData("320", "60", "18000", "320 bags of 60 kg")]
    [InlineData("-3", "60", "180", "bags")]
    public void Bags_that_cannot_be_are_set_aside_with_what_to_do(string bags, string kgBag, string net, string said)
    {
        var (row, problems) = Read(["Ref", "Bags", "kg/bag", "Net kg", "USD/kg"], ["L-1", bags, kgBag, net, "7.25"]);

        Assert.Null(row);
        Assert.Contains(problems, problem => problem.Message.Contains(said, StringComparison.Ordinal));
        Assert.All(problems, problem => Assert.EndsWith(".", problem.Message, StringComparison.Ordinal));
    }

    [Fact]
    public void The_house_says_which_bag_is_too_heavy_and_how_far_weights_may_lie_apart()
    {
        var checks = new ListChecks();
        checks.Change(Weight.FromKilograms(50), Weight.FromKilograms(1500), Percent.Of(10m));

        var (heavy, _) = Read(["Ref", "Bags", "kg/bag", "USD/kg"], ["L-1", "10", "60", "7.25"], checks);
        var (apart, problems) = Read(["Ref", "Bags", "kg/bag", "Net kg", "USD/kg"], ["L-1", "10", "46", "480", "7.25"], checks);

        Assert.Null(heavy);
        Assert.Empty(problems);
        Assert.NotNull(apart);
    }

    [Fact]
    public void The_same_lot_twice_in_a_list_is_set_aside_with_the_row_it_stood_in_first()
    {
        var reading = ReadAll(["Ref", "Bags", "kg/bag", "USD/kg"], ["L-1", "10", "60", "7.25"], ["L-2", "10", "60", "7.30"], ["L-1", "12", "60", "7.25"]);

        Assert.Equal(["L-1", "L-2"], reading.Rows.Select(row => row.Ref));
        var (line, problem) = Assert.Single(reading.SetAside);
        Assert.Equal(4, line.RowNumber);
        Assert.Contains("stands twice in this list (first in row 2)", problem.Message, StringComparison.Ordinal);
    }

    private static (OfferRow? Row, IReadOnlyList<Problem> Problems) Read(string[] headings, string[] cells, ListChecks? checks = null)
    {
        var (lines, mapping, reference) = Proposed(checks ?? new ListChecks(), headings, cells);
        var reading = ListReading.Of(lines, mapping, reference);
        return (reading.Rows.SingleOrDefault(), [.. reading.SetAside.Select(one => one.Problem)]);
    }

    private static ListReading ReadAll(string[] headings, params string[][] rows)
    {
        var (lines, mapping, reference) = Proposed(new ListChecks(), headings, rows);
        return ListReading.Of(lines, mapping, reference);
    }

    private static (List<OfferLine> Lines, OfferMapping Mapping, ListReference Reference) Proposed(ListChecks checks, string[] headings, params string[][] rows)
    {
        List<OfferLine> lines = [.. rows.Prepend(headings).Select((cells, at) => new OfferLine(at + 1, [.. cells.Select(Cell.Of)]))];
        var reference = new ListReference(StandardCountries.All(), StandardProcessMethods.All(), checks, new DateOnly(2026, 11, 25));
        return (lines, MappingProposal.Of(ListLook.Of(lines, "list.csv"), reference), reference);
    }
}
