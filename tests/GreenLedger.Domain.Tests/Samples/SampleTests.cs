using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;

namespace GreenLedger.Domain.Tests.Samples;

public sealed class SampleTests
{
    private static readonly Id<Person> Lead = Id<Person>.New();
    private static readonly Id<Supplier> Sender = Id<Supplier>.New();
    private static readonly DateOnly Asked = new(2026, 11, 2);
    private static readonly DateTimeOffset Now = new(2026, 11, 20, 10, 0, 0, TimeSpan.Zero);

    [Fact]
    public void It_is_asked_for_sent_and_received_each_with_day_and_person()
    {
        var sample = New();

        sample.Send(Asked.AddDays(3), "Air courier", "VK1", Lead);
        sample.Receive(Asked.AddDays(9), Weight.FromGrams(480m), "torn", Lead);

        Assert.Equal(SampleStep.Received, sample.Step);
        Assert.Equal((Asked, Asked.AddDays(3), Asked.AddDays(9)), (sample.AskedOn!.Value, sample.SentOn!.Value, sample.ReceivedOn!.Value));
        Assert.Equal([Lead, Lead, Lead], [sample.AskedBy, sample.SentBy, sample.ReceivedBy]);
        Assert.Equal((500m, 480m, "torn"), (sample.AskedWeight!.Value.Grams, sample.Weight!.Value.Grams, sample.BagCondition));
    }

    [Fact]
    public void What_was_asked_for_has_neither_weight_nor_day_of_receipt()
    {
        var sample = New();

        Assert.Equal((SampleStep.Asked, false), (sample.Step, sample.IsReceived));
        Assert.Null(sample.ReceivedOn);
        Assert.Null(sample.Weight);
    }

    [Fact]
    public void It_cannot_come_before_it_was_asked_for_or_sent()
    {
        var sample = New();
        sample.Send(Asked.AddDays(5), null, null, Lead);

        Assert.Equal("ReceivedOn", Assert.Throws<RuleBrokenException>(() => sample.Receive(Asked.AddDays(4), Weight.FromGrams(350m), null, Lead)).Field);
        Assert.Equal("SentOn", Assert.Throws<RuleBrokenException>(() => sample.Send(Asked.AddDays(-1), null, null, Lead)).Field);
        Assert.Null(sample.ReceivedOn);
    }

    [Fact]
    public void A_receipt_that_was_a_mistake_is_taken_back_with_its_reason_and_stays_on_record()
    {
        var sample = New();
        sample.Send(Asked.AddDays(3), "Air courier", "VK1", Lead);
        sample.Receive(Asked.AddDays(9), Weight.FromGrams(480m), "torn", Lead);

        sample.TakeBack("Another bag was meant.", isUsed: false, Lead, Now);

        Assert.Equal(SampleStep.OnTheWay, sample.Step);
        Assert.Null(sample.Weight);
        var back = Assert.Single(sample.SetBacks);
        Assert.Equal((1, SampleStep.Received, Asked.AddDays(9), "Another bag was meant.", Now), (back.Number, back.Step, back.On, back.Reason, back.At));
        Assert.Contains("torn", back.Said, StringComparison.Ordinal);
        sample.TakeBack("It was never sent.", isUsed: false, Lead, Now);
        Assert.Equal((SampleStep.Asked, 2), (sample.Step, sample.SetBacks.Count));
    }

    [Theory]
    [InlineData("", false, "reason is missing")]
    [InlineData("A mistake.", true, "graded, roasted or laid out")]
    public void Going_back_needs_a_reason_and_a_bag_that_nothing_was_found_on(string reason, bool isUsed, string sentence)
    {
        var sample = New();
        sample.Receive(Asked.AddDays(9), Weight.FromGrams(480m), null, Lead);

        var refused = Assert.Throws<RuleBrokenException>(() => sample.TakeBack(reason, isUsed, Lead, Now));

        Assert.Contains(sentence, refused.Message, StringComparison.Ordinal);
        Assert.Equal((SampleStep.Received, 0), (sample.Step, sample.SetBacks.Count));
    }

    [Fact]
    public void What_came_unasked_has_no_step_to_go_back_to()
    {
        var sample = new Sample(Id<Lot>.New(), SampleKind.Stock, "QX7", Asked, Weight.FromGrams(350m));

        Assert.Throws<RuleBrokenException>(() => sample.TakeBack("A mistake.", isUsed: false, Lead, Now));
    }

    [Fact]
    public void A_second_receipt_is_refused()
    {
        var sample = New();
        sample.Receive(Asked.AddDays(9), Weight.FromGrams(480m), null, Lead);

        Assert.Throws<RuleBrokenException>(() => sample.Receive(Asked.AddDays(10), Weight.FromGrams(300m), null, Lead));
        Assert.Equal(480m, sample.Weight!.Value.Grams);
    }

    [Fact]
    public void What_is_not_here_yet_is_not_poured()
    {
        var session = new CuppingSession("Tuesday table", new DateOnly(2026, 11, 24), CuppingForm.HundredPoint(), 5, Lead);

        Assert.Contains("has not come yet", Assert.Throws<RuleBrokenException>(() => session.Pour(New(), new Random(1))).Message, StringComparison.Ordinal);
    }

    private static Sample New() => Sample.Ask(Id<Lot>.New(), SampleKind.PreShipment, "QX7", Sender, Weight.FromGrams(500m), Asked, Lead);
}
