using GreenLedger.Data;
using GreenLedger.Data.Cupping;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Cupping.LayingOut;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;
using GreenLedger.Web.Cupping;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Api;

/// <summary>What whoever leads a table does: the same acts as on the pages.</summary>
internal static class CuppingLeadingApi
{
    public static void MapLeading(this IEndpointRouteBuilder cupping)
    {
        cupping.MapGet("/people", PeopleAsync).WithName("ListWhoMayCup").WithSummary("Who may cup or pour, by name.");
        cupping.MapPost("/sessions", LayOutAsync).WithName("LayOutSession").WithSummary("Lays out a session: codes, hidden duplicates, flights and serving orders are dealt by chance.")
            .WithDescription("Samples and the house reference go by their label codes, people by name or id. What is left out is as on the page: the house's habits, and as many hidden duplicates as are proposed; 0 drops them.");
        cupping.MapPost("/sessions/propose", ProposeAsync).WithName("ProposeSession").WithSummary("What such a session would give, and what could not be said of it. Stores nothing.");
        cupping.MapGet("/sessions/{id}/plan", PlanAsync).WithName("ReadPlan").WithSummary("The plan of an open table: flights, and the serving order of each cupper.");
        cupping.MapGet("/sessions/{id}/live", LiveAsync).WithName("ReadWhoIsWhere").WithSummary("How far each cupper of an open table has come: codes in, begun and not begun, and where the last change was; no scores.");
        cupping.MapPost("/sessions/{id}/key", KeyAsync).WithName("OpenKey").WithSummary("The key of an open session, for whoever laid it out or pours; each opening is recorded.");
        cupping.MapPost("/sessions/{id}/latecomers", LatecomerAsync).WithName("AddLatecomer").WithSummary("Puts a latecomer on the panel, in the serving order that keeps those of the others most even.");
        cupping.MapGet("/habits", HabitsAsync).WithName("ReadCuppingHabits").WithSummary("What the house does at every table.");
    }

    [InArea("Cupping, leading")]
    private static async Task<Ok<List<PersonReply>>> PeopleAsync(LedgerContext db, CancellationToken cancellationToken) =>
        TypedResults.Ok((await CuppersAsync(db, cancellationToken)).ConvertAll(person => new PersonReply(person.Id.Value, person.Name)));

    [InArea("Cupping, leading")]
    private static async Task<Created<OpenSessionReply>> LayOutAsync(
        LayOutRequest request, LedgerContext db, SessionQuery sessions, HttpContext http, HouseZone house, CancellationToken cancellationToken)
    {
        var form = await CuppingApi.FindFormAsync(db, request.Form, cancellationToken);
        var habits = await db.CuppingHabits.AsNoTracking().SingleAsync(cancellationToken);
        var session = new CuppingSession(
            request.Title, request.HeldOn ?? house.Today, form, request.CupsPerSample ?? FormRules.UsualCups, http.User.Person());
        session.Prepare(request.Plan(habits), await db.NewestProtocolAsync(cancellationToken), await DescriptiveAsync(db, request, habits, cancellationToken));
        (await LayoutAsync(db, request, habits, cancellationToken)).Fill(session, await sessions.RecentCodesAsync(cancellationToken), new Unforeseeable());
        db.Add(session);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Created($"/api/cupping/sessions/{session.Id}", OpenSessionReply.Of(session));
    }

    [InArea("Cupping, leading"), StoresNothing]
    private static async Task<Ok<ProposalReply>> ProposeAsync(LayOutRequest request, LedgerContext db, CancellationToken cancellationToken)
    {
        var habits = await db.CuppingHabits.AsNoTracking().SingleAsync(cancellationToken);
        var layout = await LayoutAsync(db, request, habits, cancellationToken);
        return TypedResults.Ok(ProposalReply.Of(layout.Propose(
            request.CupsPerSample ?? FormRules.UsualCups, await Errors.ExpectedAsync(db, cancellationToken), new Unforeseeable())));
    }

    private static async Task<Results<Ok<PlanReply>, NotFound>> PlanAsync(Id<CuppingSession> id, TableOnPaperQuery query, CancellationToken cancellationToken) =>
        await query.FindAsync(id, cancellationToken) is { } table ? TypedResults.Ok(PlanReply.Of(table)) : TypedResults.NotFound();

    /// <summary>There is nothing of a closed session, whose result says it.</summary>
    [InArea("Cupping, leading")]
    private static async Task<Results<Ok<LiveReply>, NotFound>> LiveAsync(Id<CuppingSession> id, LiveTableQuery query, CancellationToken cancellationToken) =>
        await query.FindAsync(id, cancellationToken) is { IsClosed: false } table ? TypedResults.Ok(LiveReply.Of(table)) : TypedResults.NotFound();

    /// <summary>There is no key for anybody else, and none of a closed session, whose result says it.</summary>
    private static async Task<Results<Ok<List<KeyReply>>, NotFound>> KeyAsync(
        Id<CuppingSession> id, LedgerContext db, SessionQuery query, HttpContext http, TimeProvider clock, CancellationToken cancellationToken)
    {
        var session = await db.CuppingSessions.Open().Include(session => session.Panel).SingleOrDefaultAsync(session => session.Id == id, cancellationToken);
        if (session?.MayOpenKey(http.User.Person()) != true)
        {
            return TypedResults.NotFound();
        }

        session.OpenKey(http.User.Person(), clock.GetUtcNow());
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok((await query.KeyAsync(id, cancellationToken)).Select(KeyReply.Of).ToList());
    }

    [InArea("Cupping, leading")]
    private static async Task<Results<Ok<PlanReply>, NotFound>> LatecomerAsync(
        Id<CuppingSession> id, LatecomerRequest request, LedgerContext db, TableOnPaperQuery query, TimeProvider clock, CancellationToken cancellationToken)
    {
        await using var turn = await db.TakeTurnAsync(id, cancellationToken);
        if (await db.CuppingSessions.Whole().SingleOrDefaultAsync(session => session.Id == id, cancellationToken) is not { } session)
        {
            return TypedResults.NotFound();
        }

        var person = Named(await CuppersAsync(db, cancellationToken), request.Person, nameof(request.Person));
        TableLayout.AddLatecomer(session, person, clock.GetUtcNow(), new Unforeseeable());
        await db.SaveChangesAsync(cancellationToken);
        await turn.CommitAsync(cancellationToken);
        return TypedResults.Ok(PlanReply.Of((await query.FindAsync(id, cancellationToken))!));
    }

    [InArea("Cupping, leading")]
    private static async Task<Ok<HabitsReply>> HabitsAsync(LedgerContext db, CancellationToken cancellationToken) =>
        TypedResults.Ok(HabitsReply.Of(await db.CuppingHabits.AsNoTracking().SingleAsync(cancellationToken)));

    private static async Task<TableLayout> LayoutAsync(LedgerContext db, LayOutRequest request, CuppingHabits habits, CancellationToken cancellationToken)
    {
        Rule.Require(request.Samples is { Count: > 0 } && request.Samples.All(label => label is not null), "Choose at least one sample, each by its label code.", nameof(request.Samples));
        var labels = request.Samples.Append(request.Reference ?? "").Select(Label).ToList();
        var found = await db.Samples.Where(sample => labels.Contains(sample.LabelCode)).ToDictionaryAsync(sample => sample.LabelCode, cancellationToken);
        var people = await CuppersAsync(db, cancellationToken);
        return new TableLayout(
            [.. request.Samples.Select(label => Of(found, label, nameof(request.Samples))).DistinctBy(sample => sample.Id)],
            request.Reference is null ? null : Of(found, request.Reference, nameof(request.Reference)),
            request.Duplicates,
            [.. (request.Cuppers ?? []).Select(name => Named(people, name, nameof(request.Cuppers))).DistinctBy(person => person.Id)],
            [.. (request.Pourers ?? []).Select(name => Named(people, name, nameof(request.Pourers))).DistinctBy(person => person.Id)],
            request.MostInFlight ?? habits.MostInFlight);
    }

    private static Sample Of(Dictionary<string, Sample> found, string label, string field)
    {
        Rule.Require(found.TryGetValue(Label(label), out var sample), $"No sample here has the label code {Label(label)}.", field);
        return sample!;
    }

    private static string Label(string label) => label.Trim().ToUpperInvariant();

    /// <summary>Everybody of the house who may write in this room.</summary>
    private static async Task<List<Person>> CuppersAsync(LedgerContext db, CancellationToken cancellationToken) =>
        (await db.People.Where(person => person.IsActive).OrderBy(person => person.Name).ToListAsync(cancellationToken))
            .FindAll(person => AreaAccess.Of("Cupping", person.Roles) == Access.Write);

    private static Person Named(List<Person> people, string? said, string field)
    {
        var named = people.FindAll(person => string.Equals(person.Name, said?.Trim(), StringComparison.OrdinalIgnoreCase) || $"{person.Id}" == said?.Trim());
        Rule.Require(named.Count > 0, $"Nobody here who may cup is called '{said}'.", field);
        Rule.Require(named.Count == 1, $"{named.Count} people here are called '{said}': name the one you mean by id.", field);
        return named[0];
    }

    private static async Task<DescriptiveForm?> DescriptiveAsync(LedgerContext db, LayOutRequest request, CuppingHabits habits, CancellationToken cancellationToken)
    {
        return request.DescriptiveForm ?? habits.UsesDescriptiveForm ? await db.NewestDescriptiveAsync(cancellationToken) : null;
    }
}
