using GreenLedger.Domain.Cupping.LayingOut;

namespace GreenLedger.Domain.Tests.Cupping.LayingOut;

public sealed class FlightPlanTests
{
    public static TheoryData<int> Seeds => [.. Enumerable.Range(1, 25)];

    /// <summary>Worked by hand: as few flights as the most allows, sizes that differ by one at most.</summary>
    [Theory]
    [InlineData(6, 6, "6")]
    [InlineData(7, 6, "3 4")]
    [InlineData(10, 6, "5 5")]
    [InlineData(11, 4, "3 4 4")]
    [InlineData(25, 8, "6 6 6 7")]
    public void Codes_are_split_into_flights_as_equal_as_possible(int codes, int most, string sizes)
    {
        var plan = FlightPlan.Of([.. Enumerable.Range(0, codes)], most, 5, new Random(codes));

        Assert.Equal(sizes, string.Join(' ', plan.Flights.Select(flight => flight.Codes.Count).Order()));
        Assert.Equal(Enumerable.Range(0, codes), plan.Flights.SelectMany(flight => flight.Codes).Order());
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Everyone_is_served_every_code_once_flight_after_flight(int seed)
    {
        var plan = FlightPlan.Of([0, 1, 2, 3, 4, 5, 6, 7, 2, 5, 0], 4, 7, new Random(seed));

        for (var cupper = 0; cupper < 7; cupper++)
        {
            var served = plan.OrderOf(cupper);
            Assert.Equal(Enumerable.Range(0, 11), served.Order());
            Assert.Equal(plan.Flights.Select(flight => string.Join(' ', flight.Codes)), Pieces(served, plan).Select(piece => string.Join(' ', piece.Order())));
        }
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Codes_of_one_coffee_stand_in_one_flight(int seed)
    {
        int[] coffees = [0, 1, 2, 3, 4, 5, 6, 7, 2, 5];

        var together = FlightPlan.Of(coffees, 5, 4, new Random(seed));

        Assert.All([(2, 8), (5, 9)], pair => Assert.Equal(FlightOf(together, pair.Item1), FlightOf(together, pair.Item2)));
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void The_reference_stands_in_every_flight_and_duplicates_stay_together(int seed)
    {
        // Coffee 9 is the reference with three codes, coffee 0 a hidden duplicate.
        int[] coffees = [0, 1, 2, 3, 4, 5, 6, 9, 9, 9, 0];

        var plan = FlightPlan.Of(coffees, 4, 4, new Random(seed), reference: 9);

        Assert.Equal(3, Enumerable.Range(7, 3).Select(code => FlightOf(plan, code)).Distinct().Count());
        Assert.Equal(FlightOf(plan, 0), FlightOf(plan, 10));
    }

    [Fact]
    public void A_coffee_with_more_codes_than_a_flight_holds_is_spread_evenly()
    {
        var plan = FlightPlan.Of([0, 0, 0, 0, 1, 2], 3, 2, new Random(1));

        Assert.All(plan.Flights, flight => Assert.Equal(2, flight.Codes.Count(code => code < 4)));
    }

    [Fact]
    public void Within_a_flight_the_orders_are_balanced_as_for_any_table()
    {
        var plan = FlightPlan.Of([.. Enumerable.Range(0, 8)], 4, 4, new Random(2));

        Assert.All(plan.Flights, flight => Assert.True(flight.Balance.IsBalanced));
        Assert.All(plan.Flights, flight => Assert.Equal(4, flight.Orders.Select(order => order[0]).Distinct().Count()));
    }

    [Fact]
    public void One_flight_says_only_how_its_orders_are_balanced()
    {
        var plan = FlightPlan.Of([0, 1, 2, 3], 6, 4, new Random(2));

        Assert.Equal([plan.Flights[0].Balance.Sentence], plan.Sentences);
    }

    [Fact]
    public void Several_flights_say_why_and_how_large_they_are()
    {
        var plan = FlightPlan.Of([.. Enumerable.Range(0, 7)], 6, 4, new Random(2));

        Assert.StartsWith("7 codes are more than the 6 that a palate takes at once: 2 flights of 3 or 4 codes", plan.Sentences[0], StringComparison.Ordinal);
        Assert.Equal(3, plan.Sentences.Count);
    }

    [Theory]
    [InlineData(0, 6)]
    [InlineData(6, 0)]
    public void Nothing_to_pour_or_no_room_is_refused(int codes, int most)
    {
        Assert.Throws<RuleBrokenException>(() => FlightPlan.Of([.. Enumerable.Range(0, codes)], most, 4, new Random(1)));
    }

    private static int FlightOf(FlightPlan plan, int code) => plan.Flights.Single(flight => flight.Codes.Contains(code)).Number;

    private static IEnumerable<IReadOnlyList<int>> Pieces(IReadOnlyList<int> served, FlightPlan plan)
    {
        var from = 0;
        foreach (var flight in plan.Flights)
        {
            yield return [.. served.Skip(from).Take(flight.Codes.Count)];
            from += flight.Codes.Count;
        }
    }
}
