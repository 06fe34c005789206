using GreenLedger.Domain.Cupping;

namespace GreenLedger.Domain.Tests.Cupping;

public sealed class BlindRuleTests
{
    private static readonly PanelScore[] Scores = [new(0, 0, 84), new(1, 0, 85), new(0, 1, 86), new(1, 1, 87), new(2, 1, 88)];

    private static readonly string[] Names = ["Jonas", "Marthe"];

    [Fact]
    public void Where_all_were_blind_everything_counts()
    {
        var counted = new BlindRule(LeavesOut: true).Of(Scores, new HashSet<int>(), Names);

        Assert.Equal(Scores, counted.Counted);
        Assert.Equal("Nobody who scored had opened the key.", counted.Sentence);
    }

    [Fact]
    public void Who_opened_the_key_counts_if_the_house_says_so_and_is_named()
    {
        var counted = new BlindRule(LeavesOut: false).Of(Scores, new HashSet<int> { 1 }, Names);

        Assert.Equal(Scores, counted.Counted);
        Assert.Equal("Marthe opened the key and is marked not blind; by the house's rule the scores count all the same.", counted.Sentence);
    }

    [Fact]
    public void Left_out_scores_are_kept_apart_and_a_sample_without_others_has_no_result()
    {
        var counted = new BlindRule(LeavesOut: true).Of(Scores, new HashSet<int> { 1 }, Names);

        Assert.Equal(Scores[..2], counted.Counted);
        Assert.Equal(Scores[2..], counted.LeftOut);
        Assert.Equal([2], counted.WithoutScore);
        Assert.EndsWith("not counted. One sample was scored by nobody else and has no result.", counted.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_nobody_was_blind_the_scores_count_and_it_is_said()
    {
        var counted = new BlindRule(LeavesOut: true).Of(Scores, new HashSet<int> { 0, 1 }, Names);

        Assert.Equal(Scores, counted.Counted);
        Assert.Contains("nobody scored blind", counted.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_result_says_how_blind_it_was()
    {
        var said = Enum.GetValues<Blindness>().Select(BlindRule.Says).ToList();

        Assert.Equal(said.Count, said.Distinct().Count());
        Assert.StartsWith("Open:", BlindRule.Says(Blindness.Open), StringComparison.Ordinal);
    }
}
