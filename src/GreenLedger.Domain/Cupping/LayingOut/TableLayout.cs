using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;

namespace GreenLedger.Domain.Cupping.LayingOut;

/// <summary>What a layout would give: its codes and flights, and what its sheets could and could not show.</summary>
public sealed record TableProposal(int Codes, int Duplicates, FlightPlan Plan, IReadOnlyList<Estimable> Estimables);

/// <summary>
/// What whoever lays out has chosen. Places, codes, hidden duplicates, flights and serving orders are dealt by chance, and
/// dealt anew each time.
/// </summary>
/// <param name="Samples">What is cupped, each once.</param>
/// <param name="Reference">A coffee that the house knows; it stands in every flight. Null for a table without.</param>
/// <param name="Duplicates">Samples poured under a second code; null for as many as are proposed.</param>
/// <param name="Cuppers">Who hands in sheets; none leaves the table to whoever may cup.</param>
public sealed record TableLayout(
    IReadOnlyList<Sample> Samples, Sample? Reference, int? Duplicates, IReadOnlyList<Person> Cuppers, IReadOnlyList<Person> Pourers, int MostInFlight)
{
    private IReadOnlyList<Sample> Tasted => [.. Samples.Where(sample => sample.Id != Reference?.Id)];

    private int Doubled => Duplicates ?? HiddenDuplicates.Proposed(Tasted.Count);

    /// <summary>What this layout would give.</summary>
    /// <exception cref="RuleBrokenException">No sample, more duplicates than samples, or a flight without room.</exception>
    public TableProposal Propose(int cupsPerSample, ExpectedErrors expected, Random random)
    {
        var coffees = Deal(random);
        var plan = Plan(coffees, random);
        var ties = coffees.Distinct().Any(coffee => plan.Flights.Count(flight => flight.Codes.Any(code => coffees[code] == coffee)) > 1);
        var samples = coffees.Distinct().Count();
        var layout = new SessionLayout(
            samples, Math.Max(1, Cuppers.Count), cupsPerSample, coffees.Count - samples, Reference is not null, plan.Flights.Count, ties);
        return new TableProposal(coffees.Count, Doubled, plan, Estimable.Of(layout, expected));
    }

    /// <summary>Lays the session out.</summary>
    /// <param name="usedRecently">Codes of the house's last sessions, which are not used again.</param>
    /// <param name="random">Must not be foreseeable: callers pass a cryptographic one.</param>
    /// <exception cref="RuleBrokenException">As for <see cref="Propose"/>, or not enough codes are free.</exception>
    public void Fill(CuppingSession session, IEnumerable<string> usedRecently, Random random)
    {
        ArgumentNullException.ThrowIfNull(session);
        var coffees = Deal(random);
        var plan = Plan(coffees, random);
        var codes = BlindCodes.Draw(coffees.Count, usedRecently, random);
        IReadOnlyList<Sample> samples = Reference is null ? Tasted : [.. Tasted, Reference];
        for (var code = 0; code < coffees.Count; code++)
        {
            var flight = plan.Flights.First(flight => flight.Codes.Contains(code)).Number;
            session.Pour(samples[coffees[code]], codes[code], flight, coffees.Take(code).Contains(coffees[code]), coffees[code] == Tasted.Count);
        }

        for (var cupper = 0; cupper < Cuppers.Count; cupper++)
        {
            session.Seat(Cuppers[cupper], [.. plan.OrderOf(cupper).Select(code => code + 1)], Pourers.Any(one => one.Id == Cuppers[cupper].Id));
        }

        foreach (var pourer in Pourers.Where(one => session.MemberOf(one.Id) is null))
        {
            session.LetPour(pourer);
        }
    }

    /// <summary>Puts a latecomer on the panel, with the serving order that keeps those of the others most even.</summary>
    /// <exception cref="RuleBrokenException">The session is closed, or the person is on the panel.</exception>
    public static PanelMember AddLatecomer(CuppingSession session, Person person, DateTimeOffset at, Random random)
    {
        ArgumentNullException.ThrowIfNull(session);
        var cuppers = session.Panel.Where(member => member.Cups).ToList();
        var order = session.Samples.GroupBy(sample => sample.Flight).OrderBy(flight => flight.Key).SelectMany(flight =>
        {
            var places = flight.Select(sample => sample.Position).Order().ToList();
            var orders = cuppers.Select(member => (IReadOnlyList<int>)[.. member.ServingOrder.Where(places.Contains).Select(place => places.IndexOf(place))]).ToList();
            var last = (orders.Count == 0 ? ServingOrders.For(places.Count, 1, random) : ServingOrders.WithLatecomer(orders, random)).Orders[^1];
            return last.Select(index => places[index]);
        });
        return session.Seat(person, [.. order], joinedAt: at);
    }

    /// <summary>Which coffee goes under each code, by its number; the reference has the last.</summary>
    private List<int> Deal(Random random)
    {
        ArgumentNullException.ThrowIfNull(random);
        Rule.Require(Tasted.Count > 0, "Choose at least one sample for the table.", nameof(Samples));
        Rule.Require(MostInFlight > 0, "A flight holds at least one sample.", nameof(MostInFlight));
        Rule.Require(Doubled >= 0 && Doubled <= Tasted.Count, $"Of {Tasted.Count} samples at most {Tasted.Count} can be poured twice.", nameof(Duplicates));
        List<int> coffees = [.. Enumerable.Range(0, Tasted.Count), .. HiddenDuplicates.Choose(Tasted.Count, Doubled, random)];
        if (Reference is not null)
        {
            // It ties the flights together, so it stands in each of them; with it there may be one flight more.
            do
            {
                coffees.Add(Tasted.Count);
            }
            while (coffees.Count(coffee => coffee == Tasted.Count) < (coffees.Count + MostInFlight - 1) / MostInFlight);
        }

        var dealt = coffees.ToArray();
        random.Shuffle(dealt);
        return [.. dealt];
    }

    private FlightPlan Plan(List<int> coffees, Random random) => FlightPlan.Of(
        coffees, MostInFlight, Math.Max(1, Cuppers.Count), random, Reference is null ? null : Tasted.Count);
}
