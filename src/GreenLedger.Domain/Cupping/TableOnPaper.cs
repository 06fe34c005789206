using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Cupping;

/// <summary>Codes that are poured together, in the order of the table; the number counts from 1.</summary>
public sealed record FlightOnPaper(int Number, IReadOnlyList<string> Codes);

/// <summary>One cupper's codes as they are served, flight after flight; without a name it is whoever takes the sheets.</summary>
public sealed record CupperOnPaper(string? Name, IReadOnlyList<FlightOnPaper> Served);

/// <summary>
/// What the printed papers of an open table may say: codes, flights, serving orders and people. Like everything that cuppers
/// hold in their hands it has no member for a coffee (docs/decisions/0006).
/// </summary>
public sealed record TableOnPaper(
    string House,
    string Title,
    DateOnly HeldOn,
    string Form,
    FormRules Rules,
    int CupsPerSample,
    TablePlan? Plan,
    IReadOnlyList<TastingStep> Steps,
    IReadOnlyList<FlightOnPaper> Flights,
    IReadOnlyList<CupperOnPaper> Cuppers,
    IReadOnlyList<string> Pourers,
    bool IsByPlace,
    DescriptiveRules? Descriptive = null)
{
    /// <param name="descriptive">The form beside the score; null where the session has none.</param>
    /// <param name="names">What to call everybody of the panel; for a table by place, whoever laid it out too.</param>
    /// <returns>Cuppers in the order of their seats. A table without a panel has one without a name, in the order of the table.</returns>
    public static TableOnPaper Of(string house, CuppingSession session, TastingProtocol protocol, IReadOnlyDictionary<Id<Person>, string> names, DescriptiveForm? descriptive = null)
    {
        ArgumentNullException.ThrowIfNull(session);
        ArgumentNullException.ThrowIfNull(protocol);
        ArgumentNullException.ThrowIfNull(names);
        var cuppers = session.Panel.Where(member => member.Cups)
            .Select(member => new CupperOnPaper(names[member.PersonId], InFlights(session.ServedTo(member.PersonId)))).ToList();
        var table = InFlights([.. session.Samples.OrderBy(sample => sample.Flight).ThenBy(sample => sample.Position)]);
        return new TableOnPaper(
            house, session.Title, session.HeldOn, session.Form.ToString(), session.Form.Rules, session.CupsPerSample, session.Plan, protocol.Steps,
            table,
            session.IsByPlace ? [new CupperOnPaper(session.LaidOutBy is { } alone ? names[alone] : null, [new FlightOnPaper(1, session.Places)])]
                : cuppers.Count > 0 ? cuppers : [new CupperOnPaper(null, table)],
            [.. session.Panel.Where(member => member.Pours).Select(member => names[member.PersonId])],
            session.IsByPlace,
            descriptive?.Rules);
    }

    private static List<FlightOnPaper> InFlights(IReadOnlyList<SessionSample> served) =>
        [.. served.GroupBy(sample => sample.Flight).OrderBy(flight => flight.Key).Select(flight => new FlightOnPaper(flight.Key, [.. flight.Select(sample => sample.Code)]))];
}
