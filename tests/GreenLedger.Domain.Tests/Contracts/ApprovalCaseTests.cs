using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Samples;

namespace GreenLedger.Domain.Tests.Contracts;

/// <summary>Grams stated by hand.</summary>
public sealed class ApprovalCaseTests
{
    [Fact]
    public void Where_no_offer_sample_came_a_sentence_says_so_and_nothing_is_laid_out()
    {
        var waiting = new ApprovalCase("Cerro Alto washed", Found("PS1", SampleKind.PreShipment, 500m), [], false);

        Assert.Equal("No offer sample of Cerro Alto washed was kept here: there is nothing to hold this one against but the contract’s description.", Assert.Single(waiting.Sentences()));
        Assert.Null(waiting.Kept);
    }

    [Fact]
    public void The_graded_one_is_looked_at_and_another_of_which_some_is_left_is_cupped()
    {
        var graded = Found("OF1", SampleKind.Offer, 0m, isGraded: true);
        var waiting = new ApprovalCase("Cerro Alto washed", Found("PS1", SampleKind.PreShipment, 500m), [Found("OF2", SampleKind.Offer, 120m), graded], false);

        Assert.Same(graded, waiting.Offer);
        Assert.Equal("OF2", waiting.Kept!.Sample.LabelCode);
        Assert.Equal(["Offer sample OF1 was graded, and not cupped in a session that is closed.", "120 g of OF2 and 500 g of PS1 are left."], waiting.Sentences());
    }

    [Theory]
    [InlineData(0, 500, "No offer sample was kept: nothing is left to cup the two together.")]
    [InlineData(120, 0, "Nothing is left of PS1 to cup the two together.")]
    public void Without_something_of_both_they_are_not_laid_out(int offered, int sent, string sentence)
    {
        var waiting = new ApprovalCase("Cerro Alto washed", Found("PS1", SampleKind.PreShipment, sent), [Found("OF1", SampleKind.Offer, offered)], false);

        Assert.Null(waiting.Kept);
        Assert.Equal(sentence, waiting.Sentences()[^1]);
    }

    [Fact]
    public void What_an_open_session_seals_is_not_told()
    {
        var waiting = new ApprovalCase("Cerro Alto washed", Found("PS1", SampleKind.PreShipment, 500m), [], true);

        Assert.Equal("What was found of it is shown when the open cupping session is closed.", Assert.Single(waiting.Sentences()));
    }

    private static SampleFindings Found(string label, SampleKind kind, decimal left, bool isGraded = false)
    {
        var sample = new Sample(ContractDemo.Lot, kind, label, ContractDemo.Today, Weight.FromGrams(500m));
        return new SampleFindings(sample, Weight.FromGrams(left), null, isGraded ? new GreenGrade(sample.Id, sample.LotId, ContractDemo.Today, null, GreenGrade.UsualSample) : null);
    }
}
