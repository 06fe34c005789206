using GreenLedger.Data.Cupping;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Cupping.LayingOut;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Web.Api;

/// <summary>A session to lay out. Samples and the reference by label code, people by name or id.</summary>
internal sealed record LayOutRequest(
    string Title,
    IReadOnlyList<string> Samples,
    string? Form = null,
    DateOnly? HeldOn = null,
    int? CupsPerSample = null,
    int? CupMilliliters = null,
    decimal? DoseGrams = null,
    string? Water = null,
    bool? DescriptiveForm = null,
    string? Reference = null,
    int? Duplicates = null,
    int? MostInFlight = null,
    IReadOnlyList<string>? Cuppers = null,
    IReadOnlyList<string>? Pourers = null)
{
    /// <summary>The dose is that of the house's ratio where none was said.</summary>
    public TablePlan Plan(CuppingHabits habits)
    {
        var cup = CupMilliliters ?? habits.CupMilliliters;
        return new TablePlan(cup, DoseGrams is { } grams ? Weight.FromGrams(grams) : TablePlan.ProposedDose(cup, habits.DosePerLiter.Grams), Water ?? habits.Water);
    }
}

/// <summary>Who joins late, by name or id.</summary>
internal sealed record LatecomerRequest(string Person);

internal sealed record PersonReply(Guid Id, string Name);

/// <summary>Whether a question could be answered by such a table, and why.</summary>
internal sealed record EstimableReply(Question Question, bool Can, string Reason);

/// <summary>What a layout would give; which samples are doubled and the orders are dealt anew when it is laid out.</summary>
internal sealed record ProposalReply(int Codes, int Duplicates, int Flights, IReadOnlyList<string> Balance, IReadOnlyList<EstimableReply> Estimables)
{
    public static ProposalReply Of(TableProposal proposal) => new(
        proposal.Codes, proposal.Duplicates, proposal.Plan.Flights.Count, proposal.Plan.Sentences,
        [.. proposal.Estimables.Select(one => new EstimableReply(one.Question, one.Can, one.Reason))]);
}

/// <summary>Codes in their order; of a flight, or as one cupper is served them.</summary>
internal sealed record PlanFlightReply(int Flight, IReadOnlyList<string> Codes);

internal sealed record PlanCupperReply(string? Cupper, IReadOnlyList<PlanFlightReply> Served);

/// <summary>The plan of a table; it says codes and no coffee.</summary>
internal sealed record PlanReply(
    string Title, int CupsPerSample, int? CupMilliliters, decimal? DoseGrams, string? Water, bool IsByPlace,
    IReadOnlyList<PlanFlightReply> Flights, IReadOnlyList<PlanCupperReply> Cuppers, IReadOnlyList<string> Pourers)
{
    public static PlanReply Of(TableOnPaper table) => new(
        table.Title, table.CupsPerSample, table.Plan?.CupMilliliters, table.Plan?.Dose.Grams, table.Plan?.Water, table.IsByPlace,
        Of(table.Flights), [.. table.Cuppers.Select(cupper => new PlanCupperReply(cupper.Name, Of(cupper.Served)))], table.Pourers);

    private static List<PlanFlightReply> Of(IReadOnlyList<FlightOnPaper> flights) =>
        [.. flights.Select(flight => new PlanFlightReply(flight.Number, flight.Codes))];
}

/// <summary>How far one cupper has come; <see cref="At"/> is the code of the last change, null before the first.</summary>
internal sealed record LiveCupperReply(
    Guid Id, string Name, bool IsLatecomer, IReadOnlyList<string> In, IReadOnlyList<string> Begun, IReadOnlyList<string> NotBegun, string? At, DateTimeOffset? ChangedAt);

/// <summary>Who is where at an open table, without a score; <see cref="Missing"/> counts sheets of all cuppers together.</summary>
internal sealed record LiveReply(string Title, int Codes, int Missing, IReadOnlyList<LiveCupperReply> Cuppers)
{
    public static LiveReply Of(LiveTable table) => new(
        table.Title, table.Codes, table.Missing,
        [.. table.Cuppers.Select(cupper => new LiveCupperReply(
            cupper.PersonId.Value, cupper.Name, cupper.IsLate, cupper.In, cupper.Begun, cupper.NotBegun, cupper.At, cupper.ChangedAt))]);
}

/// <summary>What stands under a code of an open session.</summary>
internal sealed record KeyReply(int Position, string Code, int Flight, string Label, string Ref, string Lot, bool IsDuplicate, bool IsReference)
{
    public static KeyReply Of(TableSampleRow row) => new(
        row.Position, row.Code, row.Flight, row.LabelCode, row.LotRef, row.LotName, row.Repeat > 0, row.IsReference);
}

/// <summary>What the house does at every table unless a session says otherwise.</summary>
internal sealed record HabitsReply(int Version, int CupMilliliters, decimal DoseGramsPerLiter, string? Water, int MostInFlight, bool DescriptiveForm, decimal? StatedRepeatability)
{
    public static HabitsReply Of(CuppingHabits habits) => new(
        habits.Version, habits.CupMilliliters, habits.DosePerLiter.Grams, habits.Water, habits.MostInFlight, habits.UsesDescriptiveForm, habits.StatedRepeatability?.Points);
}
