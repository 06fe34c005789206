using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Tests.Choosing;

/// <summary>Neighbours on the front of the running example: C 84.00, B 85.25, A 86.50, E 87.50 (handbook quality.md section 5).</summary>
public sealed class SeparationTests
{
    /// <summary>Worked by hand: the interval reaches 1.96 × error to each side; 0.39, 0.59 or 0.78 points against steps of 1.25, 1.25 and 1.00.</summary>
    [Theory]
    [InlineData(0.2, "")]
    [InlineData(0.3, "A-E")]
    [InlineData(0.4, "C-B B-A A-E")]
    public void Neighbours_are_not_separated_while_their_intervals_overlap(double error, string pairs)
    {
        var shortlist = Demo.Ranked([.. Demo.RunningExample.Select(lot => lot.With(results: [Demo.Result(lot.Results[0].Score.Points, error)]))]);

        var close = Separation.Of(shortlist.Front);

        Assert.Equal(pairs, string.Join(" ", close.Select(pair => $"{pair.Cheaper.Candidate.Ref}-{pair.Dearer.Candidate.Ref}")));
        Assert.All(close, pair => Assert.Equal("not separated by this cupping", pair.Says));
    }

    [Fact]
    public void The_reasons_name_the_neighbour_and_a_lot_off_the_front_has_none()
    {
        var shortlist = Demo.Ranked(Demo.RunningExample);
        var words = new ShortlistWords(shortlist);
        var (b, d) = (Entry(shortlist, "B"), Entry(shortlist, "D"));

        Assert.Equal(["not separated by this cupping from C and A"], words.NotSeparated(b));
        Assert.Contains("Not separated by this cupping from A, its neighbour on the front: the 95 % intervals of 85.25 and 86.50 overlap.", words.Reasons(b));
        Assert.Empty(words.NotSeparated(d));
    }

    [Fact]
    public void A_score_of_the_seller_is_no_cupping_of_ours()
    {
        var stated = Demo.RunningExample[3].With(results: [], stated: Score.Of(88.5m));
        var rules = Demo.Rules with { RanksStatedScores = true, StatedDoubt = Score.Of(1m) };

        var close = Separation.Of(Demo.Ranked([Demo.Lot("C", 88m, 6.90m), stated], rules).Front);

        Assert.Equal("not separated by these scores", Assert.Single(close).Says);
    }

    [Fact]
    public void Two_offers_of_one_lot_are_not_told_apart_by_their_score()
    {
        var lot = Demo.Lot("A", 86m, 8m);

        Assert.Empty(Separation.Of(Demo.Ranked([lot, lot]).Front));
    }

    private static ShortlistEntry Entry(Shortlist shortlist, string name) => shortlist.Ranked.Single(entry => entry.Candidate.Ref == name);
}
