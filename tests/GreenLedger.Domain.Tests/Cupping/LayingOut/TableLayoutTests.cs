using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Cupping.LayingOut;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;

namespace GreenLedger.Domain.Tests.Cupping.LayingOut;

public class TableLayoutTests
{
    private static readonly DateTimeOffset Noon = new(2026, 11, 25, 12, 0, 0, TimeSpan.Zero);
    private readonly Person _jonas = new("Jonas Weber", Role.LeadCupper);
    private readonly List<Person> _cuppers = [.. Enumerable.Range(1, 5).Select(number => new Person($"Cupper {number}", Role.Cupper))];

    [Fact]
    public void Ten_samples_get_two_hidden_duplicates_and_a_reference_in_every_flight()
    {
        var reference = NewSample(99);
        var session = Session();

        Layout(10, reference).Fill(session, [], new Random(3));

        // Ten samples and two duplicates (one for each five begun, our own choice) are 12 codes: two flights of at most 8 with the reference in each, 14 codes.
        Assert.Equal(14, session.Samples.Count);
        Assert.Equal(3, session.Samples.Count(sample => sample.IsDuplicate));
        Assert.Equal([1, 2], session.Samples.Where(sample => sample.IsReference).Select(sample => sample.Flight).Order());
        Assert.All(session.Samples.GroupBy(sample => sample.Flight), flight => Assert.Equal(7, flight.Count()));
        Assert.Equal(14, session.Samples.Select(sample => sample.Code).Distinct().Count());
    }

    [Fact]
    public void Everybody_tastes_every_code_once_one_flight_after_the_other()
    {
        var session = Session();

        Layout(10, null).Fill(session, [], new Random(5));

        Assert.Equal(5, session.Panel.Count);
        foreach (var member in session.Panel)
        {
            var served = session.ServedTo(member.PersonId);
            Assert.Equal(session.Samples.Select(sample => sample.Code).Order(), served.Select(sample => sample.Code).Order());
            Assert.Equal(served.Select(sample => sample.Flight).Order(), served.Select(sample => sample.Flight));
        }
    }

    [Fact]
    public void What_is_dropped_is_told()
    {
        var expected = new ExpectedErrors(1.0, 0.5);

        var bare = (Layout(4, null) with { Duplicates = 0 }).Propose(5, expected, new Random(1));
        var whole = Layout(4, NewSample(99)).Propose(5, expected, new Random(1));

        Assert.Equal([Question.Repeatability, Question.Discrimination, Question.Level], bare.Estimables.Where(one => !one.Can).Select(one => one.Question));
        Assert.All(whole.Estimables, one => Assert.True(one.Can, one.Reason));
        // Four samples, one duplicate, one reference.
        Assert.Equal((4, 6), (bare.Codes, whole.Codes));
    }

    [Fact]
    public void Codes_of_earlier_sessions_are_not_used_again()
    {
        var used = Enumerable.Range(500, 400).Select(number => $"{number}").ToList();
        var session = Session();

        Layout(8, null).Fill(session, used, new Random(2));

        Assert.DoesNotContain(session.Samples, sample => used.Contains(sample.Code));
    }

    [Fact]
    public void More_duplicates_than_samples_are_refused()
    {
        Assert.Throws<RuleBrokenException>(() => (Layout(2, null) with { Duplicates = 3 }).Fill(Session(), [], new Random(1)));
        Assert.Throws<RuleBrokenException>(() => (Layout(2, null) with { Duplicates = -1 }).Fill(Session(), [], new Random(1)));
    }

    [Fact]
    public void A_latecomer_gets_an_own_serving_order_and_owes_every_sheet()
    {
        var session = Session();
        Layout(4, null).Fill(session, [], new Random(4));
        var late = new Person("Late Guest", Role.Cupper);

        var member = TableLayout.AddLatecomer(session, late, Noon, new Random(4));

        Assert.Equal(Noon, member.JoinedAt);
        Assert.Equal(session.Samples.Count, session.Missing().Count(missing => missing.Cupper == late.Id));
        Assert.Throws<RuleBrokenException>(() => TableLayout.AddLatecomer(session, late, Noon, new Random(4)));
    }

    [Fact]
    public void Who_pours_may_open_the_key_and_who_only_cups_may_not()
    {
        var pourer = new Person("Pia Lang", Role.Cupper);
        var session = Session();
        (Layout(3, null) with { Pourers = [pourer] }).Fill(session, [], new Random(1));

        Assert.True(session.MayOpenKey(pourer.Id));
        Assert.True(session.MayOpenKey(_jonas.Id));
        Assert.False(session.MayOpenKey(_cuppers[0].Id));
        Assert.False(session.MemberOf(pourer.Id)!.Cups);
    }

    [Fact]
    public void Whoever_is_not_on_the_panel_hands_in_nothing()
    {
        var session = Session();
        Layout(3, null).Fill(session, [], new Random(1));

        var refused = Assert.Throws<RuleBrokenException>(() => session.Submit(session.Samples[0].Code, new Person("A guest", Role.Cupper), Marks(8m), Noon));

        Assert.Contains("latecomer", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Missing_sheets_stop_the_closing_until_somebody_says_so()
    {
        var session = Session();
        Layout(2, null).Fill(session, [], new Random(1));
        session.Submit(session.Samples[0].Code, _cuppers[0], Marks(8m), Noon);

        var refused = Assert.Throws<RuleBrokenException>(() => session.Close(_jonas.Id, Noon, new ExpectedErrors(1, 0.5), withMissing: false));

        // Five cuppers, three codes (one is a duplicate), one sheet in: 14 are missing.
        Assert.Contains("14 sheets are missing", refused.Message, StringComparison.Ordinal);
        Assert.False(session.IsClosed);
        Assert.Single(session.Close(_jonas.Id, Noon, new ExpectedErrors(1, 0.5), withMissing: true).Samples);
    }

    [Fact]
    public void Sheets_of_a_duplicate_count_as_sheets_of_its_sample()
    {
        var session = Session();
        Layout(2, null).Fill(session, [], new Random(1));
        var duplicate = session.Samples.Single(sample => sample.IsDuplicate);
        var first = session.Samples.Single(sample => sample.SampleId == duplicate.SampleId && !sample.IsDuplicate);
        session.Submit(first.Code, _cuppers[0], Marks(8m), Noon);
        session.Submit(duplicate.Code, _cuppers[0], Marks(7.5m), Noon);

        var result = Assert.Single(session.Close(_jonas.Id, Noon, new ExpectedErrors(1, 0.5)).Samples);

        // Worked by hand: (7 × 8.00 + 30 + 7 × 7.50 + 30) ÷ 2 = 84.25.
        Assert.Equal((Score.Of(84.25m), 2), (result.PlainMean, result.Sheets));
    }

    [Fact]
    public void Whoever_opened_the_key_and_scored_is_not_blind()
    {
        var session = Session();
        (Layout(2, null) with { Pourers = [_cuppers[0]] }).Fill(session, [], new Random(1));
        session.OpenKey(_cuppers[0].Id, Noon);
        session.OpenKey(_jonas.Id, Noon);
        session.Submit(session.Samples[0].Code, _cuppers[0], Marks(8m), Noon);

        Assert.Equal([_cuppers[0].Id], session.NotBlind());
    }

    [Fact]
    public void A_flight_is_poured_before_it_is_extended()
    {
        var session = Session();
        Layout(2, null).Fill(session, [], new Random(1));

        Assert.Throws<RuleBrokenException>(() => session.Extend(1, 5));
        Assert.Throws<RuleBrokenException>(() => session.PourFlight(2, Noon));
        session.PourFlight(1, Noon);
        session.Extend(1, 5);
        session.PourFlight(1, Noon.AddMinutes(2));

        Assert.Equal((Noon.AddMinutes(2), 5), (session.Flights.Single().PouredAt, session.Flights.Single().ExtendedMinutes));
    }

    private TableLayout Layout(int samples, Sample? reference) =>
        new([.. Enumerable.Range(1, samples).Select(NewSample)], reference, null, _cuppers, [], 8);

    private CuppingSession Session() => new("Tuesday table", new DateOnly(2026, 11, 24), CuppingForm.HundredPoint(), 5, _jonas.Id);

    private static Sample NewSample(int number) =>
        new(new Lot($"L-{number}", $"Lot {number}").Id, SampleKind.Offer, $"QX{number}", new DateOnly(2026, 11, 20), Weight.FromGrams(300m));

    private static SheetMarks Marks(decimal mark) => new([.. Enumerable.Repeat(Mark.Of(mark), 7)], [5, 5, 5], [0, 0]);
}
