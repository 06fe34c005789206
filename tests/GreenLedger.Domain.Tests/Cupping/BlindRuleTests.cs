using GreenLedger.Domain.Cupping;

namespace GreenLedger.Domain.Tests.Cupping;

public sealed class BlindRuleTests
{
    [Fact]
    public void A_result_says_how_blind_it_was()
    {
        var said = Enum.GetValues<Blindness>().Select(BlindRule.Says).ToList();

        Assert.Equal(said.Count, said.Distinct().Count());
        Assert.StartsWith("Open:", BlindRule.Says(Blindness.Open), StringComparison.Ordinal);
    }
}
