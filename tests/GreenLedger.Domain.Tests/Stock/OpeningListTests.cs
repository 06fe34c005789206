using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Stock.Reading;

namespace GreenLedger.Domain.Tests.Stock;

public sealed class OpeningListTests
{
    /// <summary>Common practice, no source: a stock list has a title, a line of headings and a row for each lot and place.</summary>
    [Theory]
    [InlineData("Lot;Bags;As weighed (kg);Day")]
    [InlineData("Lote;Sacos;Peso (kg);Fecha")]
    [InlineData("Lote;Sacas;Estoque [kg];Data")]
    [InlineData("Numéro de lot;Sacs;Poids pesé kg;Date")]
    [InlineData("Partie;Säcke;Gewicht (kg);Stichtag")]
    public void Headings_are_read_in_five_languages_below_a_title(string headings)
    {
        var list = List("Our stock", "", headings, "CV-12;10;598.5;31.10.2026");

        var row = Assert.Single(list.Rows);
        Assert.Equal(("CV-12", 10, 598.5m, new DateOnly(2026, 10, 31)), (row.Lot, row.Amount.Bags, row.Amount.Weighed.Kilograms, row.On));
        Assert.Empty(list.SetAside);
    }

    [Fact]
    public void What_only_the_scales_say_stands_for_the_papers_too_and_both_are_kept_apart_where_both_are_given()
    {
        var list = List("Lot;Bags;As packed (kg);As weighed (kg)", "A;10;;598,5", "B;10;600;598,5");

        Assert.Equal([(598.5m, 598.5m), (600m, 598.5m)], list.Rows.Select(row => (row.Amount.Packed.Kilograms, row.Amount.Weighed.Kilograms)));
    }

    /// <summary>By hand: 598.5 kg at 6.4321 EUR/kg are 3,849.61185 EUR, rounded once to 3,849.61.</summary>
    [Fact]
    public void A_cost_a_kilogram_becomes_money_once_and_a_whole_cost_wins()
    {
        var list = List("Lot;Weighed;Cost per kg;Cost;Currency", "A;598.5;6.4321;;", "B;598.5;6.4321;4000;usd", "C;60;;;");

        Assert.Equal([Money.Of(3_849.61m, Currency.Eur), Money.Of(4_000m, Currency.Usd), null], list.Rows.Select(row => row.Cost));
    }

    [Theory]
    [InlineData(";10;600;", "Lot", "The lot is missing")]
    [InlineData("A;ten;600;", "Bags", "'ten' is not a number")]
    [InlineData("A;1.5;600;", "Bags", "is no number of bags")]
    [InlineData("A;10;;", "Weighed", "The kilograms are missing")]
    [InlineData("A;10;-600;", "Weighed", "not above zero")]
    [InlineData("A;1;59880;", "Weighed", "is more than bags hold")]
    [InlineData("A;10;600;soon", "Day", "is not a day")]
    public void A_row_that_cannot_be_is_set_aside_with_its_column_and_a_sentence_and_the_others_are_taken(string row, string column, string sentence)
    {
        var list = List("Lot;Bags;Weighed;Day", row, "B;10;600;2026-10-31");

        Assert.Equal("B", Assert.Single(list.Rows).Lot);
        var aside = Assert.Single(list.SetAside);
        Assert.Equal((2, column), (aside.Row, aside.Problem.Column));
        Assert.Contains(sentence, aside.Problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_row_that_stands_twice_is_taken_once()
    {
        var list = List("Lot;Bags;Weighed", "A;10;600", "A;10;600", "A;10;601");

        Assert.Equal([2, 4], list.Rows.Select(row => row.Row));
        Assert.Contains("row 2 once more", Assert.Single(list.SetAside).Problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_names_no_columns_is_refused_with_what_to_write() => Assert.Contains(
        "the first row should say", Assert.Throws<RuleBrokenException>(() => List("A;10;600", "B;5;300")).Message, StringComparison.Ordinal);

    private static OpeningList List(params string[] lines) => OpeningList.Of(
        [.. lines.Select((line, at) => new OfferLine(at + 1, [.. line.Split(';').Select(Cell.Of)]))], Currency.Eur);
}
