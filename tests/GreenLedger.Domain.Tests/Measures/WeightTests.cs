using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Tests.Measures;

public sealed class WeightTests
{
    [Fact]
    public void Keeps_the_promises_of_a_measure() =>
        MeasureContract.Holds(
            Weight.FromKilograms(-1), Weight.Zero, new Weight(1), Weight.FromPounds(1), Weight.FromKilograms(60), Weight.FromKilograms(19_200.125m));

    [Fact]
    public void Text_that_is_no_weight_is_not_read() =>
        MeasureContract.IsNotRead<Weight>(null, "", "kg", "sixty kg", "60 bags", "1,000", "99999999999");

    [Fact] // handbook, trade 12 no. 1
    public void A_pound_is_exact()
    {
        Assert.Equal(0.45359237m, Weight.FromPounds(1).Kilograms);
        Assert.Equal(Weight.MicrogramsPerPound, Weight.Parse("1 lb", null).Micrograms);
    }

    [Theory] // handbook, trade 12 no. 2, 3, 4
    [InlineData(1000, 2204.622622)]
    [InlineData(60, 132.277357)]
    [InlineData(69, 152.118961)]
    [InlineData(70, 154.323584)]
    [InlineData(46, 101.412641)]
    public void Kilograms_are_pounds_to_six_decimals(int kilograms, double pounds) =>
        Assert.Equal((decimal)pounds, Math.Round(Weight.FromKilograms(kilograms).Pounds, 6));

    [Fact] // handbook, trade 12 no. 14
    public void An_arabica_futures_lot_is_37500_pounds() =>
        Assert.Equal(17_009.713875m, Weight.FromPounds(37_500).Kilograms);

    [Theory] // handbook, trade 12 no. 16 and 17
    [InlineData(19_200, 1.1288)]
    [InlineData(18_975, 1.1155)]
    [InlineData(17_250, 1.0141)]
    [InlineData(86_250, 5.0706)]
    [InlineData(192_000, 11.2877)]
    public void Kilograms_are_futures_lots_to_four_decimals(int kilograms, double lots) =>
        Assert.Equal((decimal)lots, Math.Round(Weight.FromKilograms(kilograms).Pounds / 37_500m, 4));

    [Fact] // handbook, trade 12 no. 17
    public void A_futures_lot_is_283_bags_and_a_half() =>
        Assert.Equal(283.495m, Math.Round(Weight.FromPounds(37_500).Kilograms / 60m, 3));

    [Fact] // worked by hand: 275 × 69 = 18,975
    public void Bags_of_one_weight_make_the_lot()
    {
        var lot = Weight.FromKilograms(69) * 275;

        Assert.Equal(Weight.FromKilograms(18_975), lot);
        Assert.Equal(Weight.FromKilograms(18_906), lot - Weight.FromKilograms(69));
        Assert.True(lot > Weight.FromKilograms(69) && Weight.Zero <= lot);
    }

    [Fact]
    public void A_weight_beyond_the_ledger_overflows_and_does_not_wrap() =>
        Assert.Throws<OverflowException>(() => Weight.FromKilograms(9_000_000_000m) * 2);

    [Theory]
    [InlineData("10000000000")]
    [InlineData("79228162514264337593543950335")]
    public void A_figure_beyond_the_ledger_is_refused_with_a_sentence(string kilograms) =>
        Assert.StartsWith("This weight is beyond any", Assert.Throws<RuleBrokenException>(() => Weight.FromKilograms(decimal.Parse(kilograms, System.Globalization.CultureInfo.InvariantCulture))).Message, StringComparison.Ordinal);
}
