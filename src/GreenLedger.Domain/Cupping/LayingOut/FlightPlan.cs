namespace GreenLedger.Domain.Cupping.LayingOut;

/// <summary>Codes that are poured and cupped at one time.</summary>
/// <param name="Number">Counted from 1, in the order in which the flights are poured.</param>
/// <param name="Codes">Which of the session's codes stand in it, counted from 0.</param>
/// <param name="Orders">Of each cupper these codes as they are served.</param>
public sealed record Flight(int Number, IReadOnlyList<int> Codes, IReadOnlyList<IReadOnlyList<int>> Orders, ServingBalance Balance);

/// <summary>
/// Splits a session into flights that one palate can take, as equal in size as possible, and gives every cupper an own
/// serving order in each. The codes of one coffee stand in one flight, so that a repeat shows the cupper alone and no drift.
/// </summary>
/// <remarks>
/// Which code stands in which flight is dealt by chance. The flights themselves come in one order for all, since a flight is
/// poured at once from one kettle under one timer: what tires a palate from flight to flight can therefore not be balanced
/// away, only shown, by a coffee that stands in several flights.
/// </remarks>
public sealed record FlightPlan(IReadOnlyList<Flight> Flights, int MostInFlight)
{
    /// <summary>All of one cupper's codes as served, flight after flight.</summary>
    public IReadOnlyList<int> OrderOf(int cupper) => [.. Flights.SelectMany(flight => flight.Orders[cupper])];

    public IReadOnlyList<string> Sentences => Flights.Count == 1 ? [Flights[0].Balance.Sentence] : [Split(), .. Balances()];

    /// <param name="coffees">Of each code which coffee is in it: equal numbers are one coffee under several codes.</param>
    /// <param name="mostInFlight">What one palate takes in a flight: the house's setting.</param>
    /// <param name="reference">The coffee that is the house reference, whose codes always go to different flights: it ties them together.</param>
    /// <exception cref="RuleBrokenException">No code, no cupper, or no room in a flight.</exception>
    public static FlightPlan Of(
        IReadOnlyList<int> coffees, int mostInFlight, int cuppers, Random random, int? reference = null)
    {
        ArgumentNullException.ThrowIfNull(coffees);
        ArgumentNullException.ThrowIfNull(random);
        Rule.Require(coffees.Count > 0, "Choose at least one sample for the table.", nameof(coffees));
        Rule.Require(mostInFlight > 0, "A flight holds at least one sample.", nameof(mostInFlight));
        var count = (coffees.Count + mostInFlight - 1) / mostInFlight;
        var flights = Enumerable.Range(0, count).Select(flight => (Codes: new List<int>(), Size: (coffees.Count + count - 1 - flight) / count)).ToArray();
        var groups = Enumerable.Range(0, coffees.Count).GroupBy(code => coffees[code]).ToArray();
        random.Shuffle(groups);
        random.Shuffle(flights);
        foreach (var group in groups.OrderByDescending(group => group.Count()))
        {
            Place([.. group], flights, group.Key == reference);
        }

        return new FlightPlan([.. flights.Select((flight, number) => Serve(number + 1, flight.Codes, cuppers, random))], mostInFlight);
    }

    /// <summary>A coffee's codes go apart or, as long as one flight has room for all of them, together.</summary>
    private static void Place(List<int> codes, (List<int> Codes, int Size)[] flights, bool apart)
    {
        var together = flights.Where(flight => Room(flight) >= codes.Count).ToList();
        if (!apart && together.Count > 0)
        {
            together.MaxBy(Room).Codes.AddRange(codes);
            return;
        }

        foreach (var code in codes)
        {
            flights.Where(flight => Room(flight) > 0)
                .OrderBy(flight => flight.Codes.Intersect(codes).Count()).ThenByDescending(Room).First().Codes.Add(code);
        }
    }

    private static int Room((List<int> Codes, int Size) flight) => flight.Size - flight.Codes.Count;

    private static Flight Serve(int number, List<int> codes, int cuppers, Random random)
    {
        var orders = ServingOrders.For(codes.Count, cuppers, random);
        return new Flight(number, [.. codes.Order()], [.. orders.Orders.Select(order => (IReadOnlyList<int>)[.. order.Select(place => codes[place])])], orders.Balance);
    }

    private string Split()
    {
        var sizes = Flights.Select(flight => flight.Codes.Count).ToList();
        var (all, how) = (sizes.Sum(), sizes.Min() == sizes.Max() ? $"{sizes[0]} codes each" : $"{sizes.Min()} or {sizes.Max()} codes");
        return $"{all} codes are more than the {MostInFlight} that a palate takes at once: {Flights.Count} flights of {how}, dealt by chance. Everyone takes the flights in the same order, because a flight is poured at once; within a flight each cupper has an own order.";
    }

    private IEnumerable<string> Balances() => Flights.GroupBy(flight => flight.Balance.Sentence)
        .Select(group => $"{(group.Count() == 1 ? "Flight" : "Flights")} {string.Join(", ", group.Select(flight => flight.Number))}: {group.Key}");
}
