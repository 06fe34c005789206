using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Cupping;

/// <summary>The people at the table: who cups in which order, who pours, and the table's clock.</summary>
public sealed partial class CuppingSession
{
    private readonly List<PanelMember> _panel = [];
    private readonly List<PouredFlight> _flights = [];

    /// <summary>Who cups and who pours. Without a panel, whoever may cup hands in sheets, in the order of the table.</summary>
    public IReadOnlyList<PanelMember> Panel => _panel;

    /// <summary>The flights that were poured so far.</summary>
    public IReadOnlyList<PouredFlight> Flights => _flights;

    /// <summary>Puts somebody on the panel who cups in this order of places; a latecomer with the time of joining.</summary>
    /// <exception cref="RuleBrokenException">The session is closed, the person is on the panel, or the order leaves a place out.</exception>
    public PanelMember Seat(Person cupper, IReadOnlyList<int> servingOrder, bool pours = false, DateTimeOffset? joinedAt = null)
    {
        ArgumentNullException.ThrowIfNull(cupper);
        ArgumentNullException.ThrowIfNull(servingOrder);
        Rule.Require(servingOrder.Order().SequenceEqual(_samples.Select(sample => sample.Position).Order()), "A serving order has every sample of the table once.", nameof(Panel));
        Rule.Require(servingOrder.Count > 0, "There is nothing on the table to cup.", nameof(Panel));
        return Seat(cupper, pours, servingOrder, joinedAt);
    }

    /// <summary>Puts somebody on the panel who weighs, grinds or pours and does not cup.</summary>
    /// <exception cref="RuleBrokenException">The session is closed.</exception>
    public PanelMember LetPour(Person person)
    {
        ArgumentNullException.ThrowIfNull(person);
        if (MemberOf(person.Id) is { } member && !IsClosed)
        {
            member.Pour();
            return member;
        }

        return Seat(person, pours: true, [], null);
    }

    /// <summary>Water meets coffee: the table's clock for this flight begins, or begins again.</summary>
    /// <exception cref="RuleBrokenException">The session is closed or has no such flight.</exception>
    public PouredFlight PourFlight(int number, DateTimeOffset at)
    {
        Rule.Require(!IsClosed, "This session is closed.", nameof(Flights));
        Rule.Require(_samples.Exists(sample => sample.Flight == number), $"There is no flight {number} at this table.", nameof(Flights));
        if (_flights.Find(flight => flight.Number == number) is { } poured)
        {
            poured.PourAgain(at);
            return poured;
        }

        var flight = new PouredFlight(number, at);
        _flights.Add(flight);
        return flight;
    }

    /// <summary>Gives a poured flight more minutes for tasting.</summary>
    /// <exception cref="RuleBrokenException">The session is closed, or the flight is not poured yet.</exception>
    public void Extend(int number, int minutes)
    {
        Rule.Require(!IsClosed, "This session is closed.", nameof(Flights));
        var flight = _flights.Find(flight => flight.Number == number);
        Rule.Require(flight is not null, $"Flight {number} is not poured yet: there is nothing to extend.", nameof(Flights));
        flight.Extend(minutes);
    }

    /// <summary>The sheets that the panel still owes, cupper by cupper in the order of serving; none without a panel.</summary>
    public IReadOnlyList<(Id<Person> Cupper, string Code)> Missing()
    {
        var codes = _samples.ToDictionary(sample => sample.Position);
        return [.. _panel.SelectMany(member => member.ServingOrder
            .Select(place => codes[place])
            .Where(sample => SheetOf(sample, member.PersonId) is null or { IsReopened: true })
            .Select(sample => (member.PersonId, sample.Code)))];
    }

    /// <summary>Who is on the panel under this identity; null where nobody is.</summary>
    public PanelMember? MemberOf(Id<Person> person) => _panel.Find(member => member.PersonId == person);

    /// <summary>Codes in the order in which this person tastes; the order of the table for who has none of their own.</summary>
    public IReadOnlyList<SessionSample> ServedTo(Id<Person> person) => MemberOf(person) is { Cups: true } member
        ? [.. member.ServingOrder.Select(place => _samples.Single(sample => sample.Position == place))]
        : [.. _samples.OrderBy(sample => sample.Flight).ThenBy(sample => sample.Position)];

    /// <summary>Laid it out or pours: may open the key before the session is closed.</summary>
    public bool MayOpenKey(Id<Person> person) => LaidOutBy == person || MemberOf(person)?.Pours == true;

    /// <summary>Who handed in a sheet after opening the key.</summary>
    public IReadOnlyList<Id<Person>> NotBlind() => [.. _keyOpenings
        .Where(opening => _sheets.Exists(sheet => sheet.CupperId == opening.By && sheet.WrittenAt >= opening.At))
        .Select(opening => opening.By).Distinct()];

    private PanelMember Seat(Person person, bool pours, IReadOnlyList<int> servingOrder, DateTimeOffset? joinedAt)
    {
        Rule.Require(!IsClosed, "This session is closed.", nameof(Panel));
        Rule.Require(MemberOf(person.Id) is null, $"{person.Name} is already on the panel.", nameof(Panel));
        var member = new PanelMember(person.Id, _panel.Count + 1, pours, servingOrder, joinedAt);
        _panel.Add(member);
        return member;
    }
}
