using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Summaries;

namespace GreenLedger.Domain.Tests.Summaries;

public sealed class SupplierRecordTests
{
    private static readonly Source Ours = new(Id<Supplier>.New(), null, "CO");
    private static readonly Source Other = new(Id<Supplier>.New(), null, "ET");
    private static readonly DateOnly Day = new(2026, 3, 1);

    [Fact] // handbook, trade, check value 80: 12 contracts, 9 at once, 2 later, 1 refused: 75.0 % and 91.7 %
    public void Approval_at_once_and_in_the_end_are_counted_by_lots()
    {
        var judged = Enumerable.Repeat(Judged(true), 9).Concat([Judged(false, true), Judged(false, true), Judged(false)]);

        var record = SupplierRecord.Of(Facts() with { Judged = [.. judged] });

        Assert.Equal((9, 12, 75.0m), (record.FirstTime.Count, record.FirstTime.Of, record.FirstTime.Percent!.Value.Points));
        Assert.Equal(91.7m, Math.Round(record.InTheEnd.Percent!.Value.Points, 1));
        Assert.Equal((11, 14), (record.ApprovedSamples.Count, record.ApprovedSamples.Of)); // worked by hand: 9 + 2 of 9 + 2 x 2 + 1
    }

    [Fact] // NIST/SEMATECH e-Handbook 6.3.2.2, its example of ten flow rates: centre 50.81, limits 55.8041 and 45.8159
    public void The_run_chart_has_the_limits_of_the_published_example()
    {
        decimal[] flow = [49.6m, 47.6m, 49.9m, 51.3m, 47.8m, 51.2m, 52.6m, 52.4m, 53.6m, 52.1m];

        var differences = SupplierRecord.Of(Facts() with { Cupped = [.. flow.Select((value, at) => Cupped(value, Day.AddDays(at)))] }).Differences;

        Assert.Equal((50.81, 55.8041, 45.8159), (Math.Round(differences.Chart!.Mean, 2), Math.Round(differences.Chart.Upper, 4), Math.Round(differences.Chart.Lower, 4)));
        Assert.Empty(differences.Chart.Outside);
    }

    [Fact]
    public void Differences_have_their_mean_spread_and_share_far_below()
    {
        var differences = SupplierRecord.Of(Facts() with { Cupped = [Cupped(-0.5m, Day.AddDays(2)), Cupped(-2m, Day), Cupped(1m, Day.AddDays(1))] }).Differences;

        // Worked by hand: mean -0.5; squares 0, 2.25, 2.25 over 2 give 2.25, its root 1.5; one below -1; oldest first.
        Assert.Equal((3, -0.5, 1.5), (differences.Number, differences.Mean, differences.Deviation));
        Assert.Equal([-2m, 1m, -0.5m], differences.Arrivals.Select(fact => fact.Difference));
        Assert.Equal((1, 3), (differences.FarBelow.Count, differences.FarBelow.Of));
        Assert.Null(differences.Chart);
    }

    [Fact] // handbook, trade 11: sum landed / sum shipped - 1; section 8's part: 18,975 kg shipped, 18,790 kg landed
    public void Weights_are_summed_before_they_are_compared()
    {
        var record = SupplierRecord.Of(Facts() with { Landed = [Landed(18_975m, 18_790m), Landed(18_975m, 18_900m)] });

        Assert.Equal(-0.6851m, record.Weight.Difference!.Value.Points); // worked by hand: 37,690 / 37,950 - 1 = -0.68511 %
        Assert.Null(SupplierRecord.Of(Facts()).Weight.Difference);
    }

    [Fact]
    public void Claims_are_told_by_how_they_ended_and_money_by_currency()
    {
        var claims = SupplierRecord.Of(Facts() with
        {
            Landed = [Landed(100m, 99m), Landed(100m, 99m), Landed(100m, 99m)],
            Claimed =
            [
                new ClaimedFact(Ours, ClaimOutcome.Allowance, Money.Of(639.09m, Currency.Usd)), new ClaimedFact(Ours, ClaimOutcome.Allowance, Money.Of(100m, Currency.Usd)),
                new ClaimedFact(Ours, null, null), new ClaimedFact(Ours, ClaimOutcome.Withdrawn, null),
            ],
        }).Claims;

        Assert.Equal((3, 3, 1), (claims.OfReceived.Count, claims.OfReceived.Of, claims.Open));
        Assert.Equal([(ClaimOutcome.Allowance, 2), (ClaimOutcome.Withdrawn, 1)], claims.Outcomes);
        Assert.Equal(739.09m, claims.Settled.Single().Amount); // worked by hand: 639.09 + 100.00
    }

    [Fact]
    public void Shipped_in_time_and_without_approval_are_counted_by_parts_of_the_source_asked_for()
    {
        var facts = Facts() with { Shipped = [new ShippedFact(Ours, 0, false), new ShippedFact(Ours, 3, true), new ShippedFact(Other, 9, false)] };

        var record = SupplierRecord.Of(facts.Where(source => source.Origin == "CO"));

        Assert.Equal((1, 2), (record.InTime.Count, record.InTime.Of));
        Assert.Equal((1, 2), (record.Unapproved.Count, record.Unapproved.Of));
        Assert.Equal(2, facts.Sources().Count());
    }

    [Fact]
    public void Too_few_are_ranked_below_without_a_place_and_level_ones_share_a_place()
    {
        var rows = RecordRanking.Of([("few", InTime(2, 2)), ("half", InTime(3, 6)), ("all", InTime(5, 5)), ("also all", InTime(6, 6)), ("none", InTime(0, 0))], RankedBy.InTime, 5);

        Assert.Equal(["also all", "all", "half", "few", "none"], rows.Select(row => row.Key));
        Assert.Equal([1, 1, 3, null, null], rows.Select(row => row.Place));
        Assert.Equal(2, rows[3].Number);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(101)]
    public void The_least_number_lies_between_2_and_100(int least) => Assert.Throws<RuleBrokenException>(() => new RecordHabits().Ask(least));

    private static RecordFacts Facts() => new([], [], [], [], [], []);

    private static JudgedFact Judged(params bool[] rounds) => new(Ours, rounds);

    private static LandedFact Landed(decimal shipped, decimal landed) => new(Ours, Weight.FromKilograms(shipped), Weight.FromKilograms(landed));

    private static CuppedFact Cupped(decimal difference, DateOnly on) => new(Ours, Id<Arrival>.New(), "CA-17", on, new CupDifference(Meeting.OneSession, 20, (double)(20m + difference), (double)difference, null, null, null, 3, 3, null, null));

    private static SupplierRecord InTime(int inTime, int all) =>
        SupplierRecord.Of(Facts() with { Shipped = [.. Enumerable.Range(0, all).Select(at => new ShippedFact(Ours, at < inTime ? 0 : 1, false))] });
}
