using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Tests.Measures;

public sealed class LargestRemainderTests
{
    [Fact] // handbook, trade 1.4: ties by a stable order
    public void Ties_go_to_the_earlier_share() =>
        Assert.Equal([2L, 1L, 1L], LargestRemainder.Split(4, [1m, 1m, 1m]));

    [Fact] // worked by hand: −10 by 1:2 is −3.33 and −6.67, so −3 and −7
    public void A_credit_is_split_like_a_charge() =>
        Assert.Equal([-3L, -7L], LargestRemainder.Split(-10, [1m, 2m]));

    [Fact] // worked by hand: a share of nothing gets nothing
    public void A_share_of_nothing_gets_nothing() =>
        Assert.Equal([0L, 7L], LargestRemainder.Split(7, [0m, 3m]));
}
