using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Offers.Reading;
using GreenLedger.Domain.Origins;

namespace GreenLedger.Domain.Tests.Offers.Reading;

public sealed class ListReadingTests
{
    private static readonly DateOnly Today = new(2026, 11, 25);

    private static readonly OfferMapping Mapping = new(
        [
            new MappedColumn("Ref", ColumnMeaning.Ref), new MappedColumn("Score", ColumnMeaning.StatedScore), new MappedColumn("Bags", ColumnMeaning.Bags),
            new MappedColumn("kg/bag", ColumnMeaning.BagWeight, WeightUnit.Kilogram), new MappedColumn("USD/kg", ColumnMeaning.Price, null, new PriceQuote("USD", PriceUnit.Kilogram)),
        ],
        new ListTerms());

    [Fact]
    public void Every_fault_of_a_mended_row_has_a_sentence_at_its_own_column()
    {
        var line = new OfferLine(7, [Cell.Of("M-1"), Cell.Of("186"), Cell.Of("-3"), Cell.Of("60"), Cell.Of("to be named")]);

        var (row, problems) = ListReading.Mend(line, Mapping, Reference());

        Assert.Null(row);
        Assert.Equal(["Score", "Bags", "USD/kg"], problems.Select(problem => problem.Column));
        Assert.All(problems, problem => Assert.EndsWith(".", problem.Message, StringComparison.Ordinal));
    }

    // Worked by hand: 3 bags of 60 kg are 180 kg.
    [Fact]
    public void A_row_that_is_right_now_is_read_as_the_list_would_have_been()
    {
        var line = new OfferLine(7, [Cell.Of("M-1"), Cell.Of("86.5"), Cell.Of("3"), Cell.Of("60"), Cell.Of("9,80")]);

        var (row, problems) = ListReading.Mend(line, Mapping, Reference());

        Assert.Empty(problems);
        Assert.Equal(("M-1", 180m, 9.80m), (row!.Ref, row.Packing.Net!.Value.Kilograms, row.Asking.Price!.Value.Amount));
    }

    private static ListReference Reference() => new(StandardCountries.All(), StandardProcessMethods.All(), new ListChecks(), Today);
}
