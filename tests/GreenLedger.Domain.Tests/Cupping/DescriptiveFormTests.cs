using GreenLedger.Domain.Cupping;

namespace GreenLedger.Domain.Tests.Cupping;

public class DescriptiveFormTests
{
    private readonly DescriptiveForm _form = DescriptiveForm.Sca103();

    [Fact]
    public void A_list_that_is_typed_as_it_stands_has_the_same_words_and_keys()
    {
        foreach (var list in _form.Rules.Lists)
        {
            Assert.Equal(list.Words, CheckWords.Read(CheckWords.Text(list.Words), list.Words, "Words"));
        }
    }

    [Fact]
    public void A_new_word_gets_a_key_and_a_narrower_one_the_broader_word_before_it()
    {
        var words = CheckWords.Read("fruity\n- berry\n- Stone fruit\nfloral", _form.Rules.Lists[0].Words, "Words");

        CheckWord[] expected = [new("fruity", "fruity"), new("berry", "berry", "fruity"), new("stone-fruit", "Stone fruit", "fruity"), new("floral", "floral")];
        Assert.Equal(expected, words);
    }

    [Fact]
    public void A_revision_counts_one_up_and_keeps_the_reason()
    {
        var revised = _form.Revise(_form.Rules with { Intensities = [.. _form.Rules.Intensities.Select(line => line with { Highest = 10 })] }, "our panel uses ten");

        Assert.Equal((2, "our panel uses ten", 10), (revised.Revision, revised.Reason, revised.Rules.Intensities[0].Highest));
        Assert.Equal((1, 15), (_form.Revision, _form.Rules.Intensities[0].Highest));
        Assert.NotEqual(_form.Id, revised.Id);
    }

    [Theory]
    [InlineData("- berry", "no broader word before it")]
    [InlineData("fruity\nFruity", "'fruity' stands there twice")]
    [InlineData("", "at least one word")]
    [InlineData("fruity", "between 1 and 1 words")]
    public void A_list_that_cannot_be_checked_is_refused(string text, string sentence)
    {
        var refused = Assert.Throws<RuleBrokenException>(() => _form.Revise(
            _form.Rules with { Lists = [.. _form.Rules.Lists.Select(list => list with { Words = CheckWords.Read(text, list.Words, "Words") })] }, "tried"));

        Assert.Contains(sentence, refused.Message, StringComparison.Ordinal);
    }
}
