using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Tests.Contracts;

/// <summary>Figures of the handbook, trade 2.3: example A (fixing), example C (robusta); values 16 to 21 of its section 12.</summary>
public sealed class FixingPositionTests
{
    private static readonly Weight Net = Weight.FromKilograms(1250 * 69m);
    private static readonly Weight FiveLots = FuturesMarket.Arabica.LotWeight() * 5;

    [Theory] // handbook, trade 12 no. 16
    [InlineData(19_200, "1.1288")]
    [InlineData(18_975, "1.1155")]
    [InlineData(17_250, "1.0141")]
    [InlineData(86_250, "5.0706")]
    [InlineData(192_000, "11.2877")]
    public void A_weight_in_lots_of_New_York(int kilograms, string lots) =>
        Assert.Equal(decimal.Parse(lots, System.Globalization.CultureInfo.InvariantCulture), Math.Round(PriceTerms.LotsOf(FuturesMarket.Arabica, Weight.FromKilograms(kilograms)), 4, MidpointRounding.AwayFromZero));

    [Theory]
    [InlineData(86_250, 5)] // handbook, example A
    [InlineData(19_200, 1)] // worked by hand: 1.1288
    [InlineData(17_009, null)] // worked by hand: below 17,009.713875 kg is less than one lot
    [InlineData(26_000, 2)] // worked by hand: 1.5286
    public void Usual_lots_are_the_nearest_whole_and_none_below_one(int kilograms, int? lots) =>
        Assert.Equal(lots, PriceTerms.UsualLots(FuturesMarket.Arabica, Weight.FromKilograms(kilograms)));

    [Fact] // handbook, example A and no. 18 and 19
    public void Fixings_are_averaged_by_their_lots_and_never_simply()
    {
        var position = Of((2, 285.40m), (1, 279.15m), (2, 291.65m));

        Assert.Equal(286.65m, position.AverageLevel);
        Assert.Equal(321.65m, position.Final);
        Assert.Equal("611613.30 USD", position.FinalValue(Net).ToString());
        Assert.True(position.IsFixed);
    }

    [Fact] // handbook, example A "before fixation 3" and no. 20
    public void Before_the_last_fixing_the_price_is_provisional()
    {
        var position = Of((2, 285.40m), (1, 279.15m));

        Assert.Equal(324.99m, position.Provisional(300.00m));
        Assert.Equal(2m, position.OpenLots);
        Assert.Equal("7500.00 USD", position.Exposure(10m).ToString());
        Assert.Null(position.Final);
        Assert.Null(position.FinalValue(Net));
    }

    [Fact] // worked by hand: 190,148.7011 lb at 3.2499 USD = 617,964.26 USD; 80 % of it 494,371.41 USD
    public void A_provisional_invoice_asks_for_the_agreed_share_and_the_final_one_for_the_rest()
    {
        var provisional = InvoiceValue.Of(Of((2, 285.40m), (1, 279.15m)), Net, 300.00m, Percent.Of(80m))!;
        var final = InvoiceValue.Of(Of((2, 285.40m), (1, 279.15m), (2, 291.65m)), Net, null, Percent.Of(80m))!;

        Assert.Equal((true, "617964.26 USD", "494371.41 USD"), (provisional.IsProvisional, provisional.Value.ToString(), provisional.Due.ToString()));
        Assert.Equal((false, "611613.30 USD", "611613.30 USD"), (final.IsProvisional, final.Value.ToString(), final.Due.ToString()));
        Assert.Equal("117241.89 USD", final.Balance(provisional.Due).ToString()); // worked by hand: 611,613.30 - 494,371.41
    }

    [Fact]
    public void Without_a_settlement_what_is_open_has_no_value() =>
        Assert.Null(InvoiceValue.Of(Of((2, 285.40m)), Net, null, null));

    [Fact] // handbook, example C: RC 4,000 USD/t less 150, 19.2 t
    public void Robusta_is_fixed_in_dollars_a_tonne()
    {
        var month = FuturesMonth.Of(FuturesMarket.Robusta, 2027, 5);
        var position = FixingPosition.Of(month, -150m, Weight.FromKilograms(20_000m), [new FixedPart(month, Weight.FromKilograms(20_000m), 4_000m, -150m)]);

        Assert.Equal(3_850m, position.Final);
        Assert.Equal("73920.00 USD", position.FinalValue(Weight.FromKilograms(19_200m)).ToString());
    }

    [Fact] // worked by hand: (3,000 kg at 285.40 + 6,000 kg at 291.65) / 9,000 kg = 289.5666…; with 35.00 = 324.5666…; 9,000 kg = 19,841.6036 lb; 64,399.23 USD
    public void Below_one_lot_weights_are_averaged_and_the_average_is_not_rounded_on_the_way_to_money()
    {
        var position = FixingPosition.Of(ContractDemo.May, 35.00m, Weight.FromKilograms(9_000m), [Part(3_000m, 285.40m), Part(6_000m, 291.65m)]);

        Assert.Equal(289.5667m, Math.Round(position.AverageLevel!.Value, 4, MidpointRounding.AwayFromZero));
        Assert.Equal("64399.23 USD", position.FinalValue(Weight.FromKilograms(9_000m)).ToString());
    }

    [Fact]
    public void More_than_agreed_cannot_be_fixed()
    {
        var refusal = ContractDemo.Refusal(() => Of((2, 285.40m), (4, 279.15m)));

        Assert.Equal("6 lots of KC would be fixed, but only 5 lots of KC are agreed: fix less, or amend the contract first.", refusal);
    }

    [Fact] // handbook, trade 12 no. 21
    public void A_level_between_two_ticks_is_refused() =>
        Assert.Contains("steps of 0.05 US cents/lb", ContractDemo.Refusal(() => Of((2, 285.42m))), StringComparison.Ordinal);

    [Theory] // handbook, trade 2.2: November to January H, February and March K, April and May N, June and July U, August to October Z
    [InlineData(2026, 11, "KCH27")]
    [InlineData(2026, 12, "KCH27")]
    [InlineData(2027, 1, "KCH27")]
    [InlineData(2027, 2, "KCK27")]
    [InlineData(2027, 3, "KCK27")]
    [InlineData(2027, 4, "KCN27")]
    [InlineData(2027, 5, "KCN27")]
    [InlineData(2027, 6, "KCU27")]
    [InlineData(2027, 7, "KCU27")]
    [InlineData(2027, 8, "KCZ27")]
    [InlineData(2027, 10, "KCZ27")]
    public void The_usual_month_follows_the_last_month_of_shipment(int year, int month, string symbol) =>
        Assert.Equal(symbol, PriceTerms.UsualMonth(FuturesMarket.Arabica, new DateOnly(year, month, 28)).ToString());

    private static FixingPosition Of(params (int Lots, decimal Level)[] fixings) => FixingPosition.Of(
        ContractDemo.May, 35.00m, FiveLots,
        [.. fixings.Select(fixing => new FixedPart(ContractDemo.May, FuturesMarket.Arabica.LotWeight() * fixing.Lots, fixing.Level, 35.00m))]);

    private static FixedPart Part(decimal kilograms, decimal level) => new(ContractDemo.May, Weight.FromKilograms(kilograms), level, 35.00m);
}
