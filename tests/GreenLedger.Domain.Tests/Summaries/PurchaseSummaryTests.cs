using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Pricing;
using GreenLedger.Domain.Summaries;

namespace GreenLedger.Domain.Tests.Summaries;

public sealed class PurchaseSummaryTests
{
    private static readonly DateOnly May = new(2026, 5, 4);

    /// <summary>Worked by hand: (19,200 × 6.20 + 4,800 × 9.40) ÷ 24,000 = 164,160 ÷ 24,000 = 6.84; the simple mean 7.80 would be wrong (handbook, trade 11: Σ price×kg ÷ Σ kg).</summary>
    [Fact]
    public void The_average_price_is_weighted_by_kilograms()
    {
        var summary = Purchases.Summary([Purchases.Lot("Brazil", 19_200m, 119_040m, 82m, May), Purchases.Lot("Kenya", 4_800m, 45_120m, 87m, May)]);

        var total = summary.Total(SummaryFigure.Contracted);

        Assert.Equal((2, 24_000m, Money.Of(164_160m, Currency.Eur), 6.84m), (total.Rows, total.Net.Kilograms, total.Value, total.PerKilogram));
    }

    [Fact]
    public void A_lot_without_a_value_counts_in_kilograms_and_is_said_and_never_makes_the_average_cheaper()
    {
        var summary = Purchases.Summary([Purchases.Lot("Brazil", 1_000m, 6_000m, 82m, May), Purchases.Lot("Brazil", 1_000m, null, 82m, May)]);

        var total = summary.Total(SummaryFigure.Contracted);

        Assert.Equal((2_000m, 6.00m, 1), (total.Net.Kilograms, total.PerKilogram, total.WithoutValue));
    }

    /// <summary>Handbook quality.md section 12, value 4: the bands of 79.99, 80.00, 84.99, 85.00 and 90.00; and 79.9167, which shows as 79.92, is not specialty.</summary>
    [Theory]
    [InlineData(79.99, "below specialty")]
    [InlineData(79.9167, "below specialty")]
    [InlineData(80.00, "very good")]
    [InlineData(84.99, "very good")]
    [InlineData(85.00, "excellent")]
    [InlineData(90.00, "outstanding")]
    public void A_score_falls_into_the_band_of_its_unrounded_value(double score, string expected) =>
        Assert.Equal(expected, new QualityBands().BandOf(Score.Of((decimal)score)));

    /// <summary>Handbook trade.md section 12, value 80: 12 contracts, 9 at the first sample, 2 later, 1 refused: 75.0 % and 91.7 %.</summary>
    [Fact]
    public void Approvals_are_counted_by_the_last_verdict_of_each_lot()
    {
        var lots = Enumerable.Range(0, 12).Select(i => Purchases.Lot("Brazil", 100m, 600m, 82m, May) with
        {
            Judgements = i switch
            {
                < 9 => [new Judged(May, 1, ApprovalVerdict.Approved, null)],
                < 11 => [new Judged(May, 1, ApprovalVerdict.Refused, "Past crop."), new Judged(May.AddDays(9), 2, ApprovalVerdict.ApprovedWithRemarks, "A little dry.")],
                _ => [new Judged(May, 1, ApprovalVerdict.Refused, "Phenolic cup.")],
            },
        });

        var counts = Purchases.Summary([.. lots]).Approvals();

        Assert.Equal((9, 2, 1), (counts.FirstTime, counts.Later, counts.Refused));
        Assert.Equal((0.750m, 0.917m), (counts.FirstTimeShare, Math.Round(counts.ApprovedShare!.Value, 3)));
    }

    /// <summary>Worked by hand: made in the year 639.09, older and open 1,200.00, older and settled left out: 1,839.09 claimed, 400.00 settled.</summary>
    [Fact]
    public void Claims_of_the_period_stand_beside_older_ones_that_are_open()
    {
        Claimed Claim(string name, DateOnly on, decimal amount, bool isOpen, decimal? settled) =>
            new(Id<Domain.Arrivals.Claim>.New(), name, on, Money.Of(amount, Currency.Eur), isOpen, isOpen ? "open" : "settled", settled is { } paid ? Money.Of(paid, Currency.Eur) : null);
        var lot = Purchases.Lot("Peru", 690m, 6_000m, 86m, May) with
        {
            Claims = [Claim("C26-001", May, 639.09m, false, 400m), Claim("C25-004", new DateOnly(2025, 11, 2), 1_200m, true, null), Claim("C25-001", new DateOnly(2025, 2, 2), 90m, false, 90m)],
        };

        var table = SummaryTables.Of(Purchases.Summary([lot])).Single(one => one.Name == "Claims");

        Assert.Equal(["C26-001", "C25-004"], table.Rows.Select(row => row[0].Value));
        Assert.Equal((1_839.09m, 400m), ((decimal)table.Totals![5].Value!, (decimal)table.Totals[7].Value!));
    }

    [Fact]
    public void Scores_bought_stand_beside_scores_offered_by_whole_points()
    {
        LotFacts Offered(decimal score) => new(Id<Lot>.New(), "O", "Offered", "Anybody", "Peru", "washed", [], Score.Of(score));
        decimal[] scores = [86.00m, 86.99m, 84.50m];
        var offered = scores.Select(score => new OfferedLot(Id<Offer>.New(), May, Offered(score))).Append(new OfferedLot(Id<Offer>.New(), May.AddYears(-1), Offered(86m)));

        var lines = Purchases.Summary([Purchases.Lot("Peru", 690m, 6_000m, 86.75m, May)], offered: [.. offered]).ScoreLines();

        Assert.Equal([new ScoreLine(86, 2, 1, Weight.FromKilograms(690m)), new ScoreLine(84, 1, 0, Weight.Zero)], lines);
    }

    [Fact]
    public void Lots_with_several_certificates_stand_in_one_group_of_all_of_them()
    {
        var lots = new[] { Purchases.Lot("Peru", 690m, 6_000m, 86m, May, certificates: ["fairtrade", "organic"]), Purchases.Lot("Peru", 300m, 2_000m, 84m, May, certificates: ["organic"]), Purchases.Lot("Peru", 60m, 500m, 84m, May) };

        var groups = Purchases.Summary(lots, new SummaryWish(Purchases.Year, Cut.Certificate)).Groups();

        Assert.Equal([("fairtrade + organic", 690m), ("organic", 300m), ("none", 60m)], groups.Select(group => (group.Name, group.Contracted.Net.Kilograms)));
    }

    [Theory]
    [InlineData("2026-01-01", "2026-12-31", "2025-01-01", "2025-12-31")]
    [InlineData("2026-03-01", "2026-03-31", "2026-02-01", "2026-02-28")]
    [InlineData("2026-04-01", "2026-06-30", "2026-01-01", "2026-03-31")]
    [InlineData("2026-03-10", "2026-03-19", "2026-02-28", "2026-03-09")] // ten days
    public void The_period_before_has_as_many_whole_months_or_as_many_days(string from, string until, string beforeFrom, string beforeUntil)
    {
        var before = Period.Of(Day(from), Day(until)).Before;

        Assert.Equal((Day(beforeFrom), Day(beforeUntil)), (before.From, before.Until));
    }

    [Fact]
    public void What_was_bought_before_is_told_apart_by_day()
    {
        var summary = Purchases.Summary([Purchases.Lot("Peru", 690m, 6_000m, 86m, new DateOnly(2026, 1, 1)), Purchases.Lot("Peru", 300m, 2_000m, 84m, new DateOnly(2025, 12, 31))]);

        Assert.Equal((690m, 300m), (summary.Total(SummaryFigure.Contracted).Net.Kilograms, summary.Total(SummaryFigure.Contracted, isBefore: true).Net.Kilograms));
    }

    /// <summary>Handbook trade 9.4: EUR/USD 1.1600. Worked by hand: 300.00 ¢/lb = 6.613868 USD/kg = 5.701610 EUR/kg; 320.00 at 1.20: 5.878993; the mean 5.790302.</summary>
    [Fact]
    public void Futures_are_averaged_day_by_day_in_the_house_currency_each_at_its_own_rate()
    {
        var (first, second) = (new DateOnly(2026, 5, 4), new DateOnly(2026, 5, 5));
        var july = FuturesMonth.Of(FuturesMarket.Arabica, 2026, 7);
        FuturesQuote Quote(FuturesMonth month, DateOnly on, decimal quoted) => new(month, on, quoted, "typed", null, DateTimeOffset.UnixEpoch);
        var rates = new ExchangeRates([new ExchangeRate(Currency.Usd, first, 1.16m, "typed", null, DateTimeOffset.UnixEpoch), new ExchangeRate(Currency.Usd, second, 1.20m, "typed", null, DateTimeOffset.UnixEpoch)]);
        FuturesQuote[] quotes = [Quote(july, first, 300m), Quote(july, second, 320m), Quote(july.Following(1)[0], first, 250m), Quote(FuturesMonth.Of(FuturesMarket.Robusta, 2026, 7), first, 4_000m)];

        var average = FuturesAverage.Of(FuturesMarket.Arabica, Purchases.Year, quotes, rates, Currency.Eur)!;

        Assert.Equal((5.790302m, 310m, 2), (Math.Round(average.PerKilogram, 6), average.Quoted, average.Days));
    }

    [Fact]
    public void Bands_of_the_house_are_refused_where_a_score_would_have_none_or_two()
    {
        var bands = new QualityBands();

        Assert.Contains("begins at 0", Refusal([new QualityBand("good", Score.Of(80m))]), StringComparison.Ordinal);
        Assert.Contains("same score", Refusal([new QualityBand("good", Score.Of(0m)), new QualityBand("fine", Score.Of(0m))]), StringComparison.Ordinal);
        Assert.Contains("same name", Refusal([new QualityBand("good", Score.Of(80m)), new QualityBand("Good", Score.Of(0m))]), StringComparison.Ordinal);

        string Refusal(IReadOnlyList<QualityBand> stated) => Assert.Throws<RuleBrokenException>(() => bands.State(bands.FormId, stated)).Message;
    }

    /// <summary>Worked by hand: 1,000 kg at 6.50 and 500 kg at 8.00 are 10,500.00 EUR, 7.00 EUR/kg; 200 kg without a bill count in kilograms alone.</summary>
    [Fact]
    public void What_arrived_is_averaged_by_kilograms_at_what_was_billed_for_it()
    {
        var summary = Purchases.Summary([Arrived(1_000m, 6.5m), Arrived(500m, 8m), Arrived(200m, null)]);

        var line = Assert.Single(summary.LandedLines());

        Assert.Equal((3, 1_700m, 1_500m, 10_500m, 7m), (line.Now.Rows, line.Now.Net.Kilograms, line.Now.Valued.Kilograms, line.Now.Value.Amount, line.Now.PerKilogram));
        Assert.Equal((1, 0), (line.Now.WithoutValue, line.Before.Rows));

        static PurchasedLot Arrived(decimal kilograms, decimal? landed)
        {
            var lot = Purchases.Lot("Kenya", kilograms, 5m * kilograms, 87m, Purchases.Today);
            return lot with { Lot = lot.Lot with { LandedPerKilogram = landed }, Entries = [new PurchaseEntry(PurchaseStep.Arrived, Purchases.Today, lot.Net, lot.Value)] };
        }
    }

    [Fact]
    public void Purchases_can_be_told_by_the_programme_they_count_to()
    {
        var (own, other) = (Purchases.Lot("Kenya", 300m, 2_000m, 87m, Purchases.Today), Purchases.Lot("Peru", 690m, 4_000m, 84m, Purchases.Today));

        var groups = Purchases.Summary([own with { Lot = own.Lot with { Programme = "Three harvests" } }, other], new SummaryWish(Purchases.Year, Cut.Programme)).Groups();

        Assert.Equal([("none", 690m), ("Three harvests", 300m)], groups.Select(group => (group.Name, group.Contracted.Net.Kilograms)));
    }

    private static DateOnly Day(string text) => DateOnly.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
}
