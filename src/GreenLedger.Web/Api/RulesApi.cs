using GreenLedger.Data;
using GreenLedger.Data.Choosing;
using GreenLedger.Domain;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Origins;
using GreenLedger.Web.Choosing;
using GreenLedger.Web.Pages.Choosing;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Api;

/// <summary>What the rules say about one process method; `preference` lies from 0 to 1.</summary>
internal sealed record RuleProcessBody(Guid MethodId, bool IsAllowed = true, decimal Preference = 0m);

/// <summary>A rule set as it is written: what is left out counts as on a new page of rules, a gate that is null asks for nothing. Costs are in the house's currency a kilogram, scores in points.</summary>
internal sealed record RulesBody
{
    private static readonly RulesForm New = new();

    /// <summary>As it was read; of no meaning for new rules.</summary>
    public int Version { get; init; }

    public string? Name { get; init; }

    /// <summary>The form that is ranked; the form of a hundred points where it is left out.</summary>
    public Guid? FormId { get; init; }

    public SessionRule Sessions { get; init; } = New.Sessions;

    public bool RanksStatedScores { get; init; }

    public decimal StatedDoubt { get; init; } = New.StatedDoubt;

    public decimal WeightScore { get; init; } = New.WeightScore;

    public decimal LowScore { get; init; } = New.LowScore;

    public decimal HighScore { get; init; } = New.HighScore;

    public decimal WeightCost { get; init; } = New.WeightCost;

    public decimal HighCost { get; init; }

    public decimal LowCost { get; init; }

    public CostPerPointRule CostPerPoint { get; init; } = New.CostPerPoint;

    public decimal BaseScore { get; init; } = New.BaseScore;

    public decimal WeightCostPerPoint { get; init; }

    public decimal HighCostPerPoint { get; init; }

    public decimal LowCostPerPoint { get; init; }

    public decimal WeightProcess { get; init; }

    public bool OtherProcessesAllowed { get; init; } = true;

    public IReadOnlyList<RuleProcessBody> Processes { get; init; } = [];

    public decimal? LeastScore { get; init; }

    public decimal? LeastLowerBound { get; init; }

    public decimal? HighestCostPerKilogram { get; init; }

    public decimal? LeastQuantityKg { get; init; }

    public decimal? LeastMoisture { get; init; }

    public decimal? HighestMoisture { get; init; }

    public decimal? HighestWaterActivity { get; init; }

    public decimal? HighestCategory1 { get; init; }

    public decimal? HighestCategory2 { get; init; }

    public int? HighestQuakers { get; init; }

    public int? Screen { get; init; }

    public decimal? LeastRetained { get; init; }

    public string? EarliestCropYear { get; init; }

    public IReadOnlyList<string> Certificates { get; init; } = [];

    public bool MeasurementsRequired { get; init; }

    public int LeastOffersPerGroup { get; init; } = New.LeastOffersPerGroup;

    public static RulesBody Of(RulesForm form) => new RulesBody
    {
        Version = form.Version,
        Name = form.Name,
        FormId = form.FormId.Value,
        Sessions = form.Sessions,
        RanksStatedScores = form.RanksStatedScores,
        StatedDoubt = form.StatedDoubt,
        WeightScore = form.WeightScore,
        LowScore = form.LowScore,
        HighScore = form.HighScore,
        WeightCost = form.WeightCost,
        HighCost = form.HighCost,
        LowCost = form.LowCost,
        CostPerPoint = form.CostPerPoint,
        BaseScore = form.BaseScore,
        WeightCostPerPoint = form.WeightCostPerPoint,
        HighCostPerPoint = form.HighCostPerPoint,
        LowCostPerPoint = form.LowCostPerPoint,
        WeightProcess = form.WeightProcess,
        OtherProcessesAllowed = form.OtherProcessesAllowed,
        Processes = [.. form.Processes.Where(one => one.Preference > 0m || one.IsAllowed != form.OtherProcessesAllowed).Select(one => new RuleProcessBody(one.MethodId.Value, one.IsAllowed, one.Preference))],
    }.Gated(form);

    public RulesForm Form() => Gates(new RulesForm
    {
        Version = Version,
        Name = Name ?? "",
        FormId = FormId is { } form ? new Id<CuppingForm>(form) : CuppingForm.HundredPointId,
        Sessions = Sessions,
        RanksStatedScores = RanksStatedScores,
        StatedDoubt = StatedDoubt,
        WeightScore = WeightScore,
        LowScore = LowScore,
        HighScore = HighScore,
        WeightCost = WeightCost,
        HighCost = HighCost,
        LowCost = LowCost,
        CostPerPoint = CostPerPoint,
        BaseScore = BaseScore,
        WeightCostPerPoint = WeightCostPerPoint,
        HighCostPerPoint = HighCostPerPoint,
        LowCostPerPoint = LowCostPerPoint,
        WeightProcess = WeightProcess,
        OtherProcessesAllowed = OtherProcessesAllowed,
        Processes = [.. (Processes ?? []).Select(one => new RulesForm.ProcessForm { MethodId = new Id<ProcessMethod>(one.MethodId), IsAllowed = one.IsAllowed, Preference = one.Preference })],
    });

    private RulesBody Gated(RulesForm form) => this with
    {
        LeastScore = form.LeastScore,
        LeastLowerBound = form.LeastLowerBound,
        HighestCostPerKilogram = form.HighestCostPerKilogram,
        LeastQuantityKg = form.LeastQuantityKg,
        LeastMoisture = form.LeastMoisture,
        HighestMoisture = form.HighestMoisture,
        HighestWaterActivity = form.HighestWaterActivity,
        HighestCategory1 = form.HighestCategory1,
        HighestCategory2 = form.HighestCategory2,
        HighestQuakers = form.HighestQuakers,
        Screen = form.Screen,
        LeastRetained = form.LeastRetained,
        EarliestCropYear = form.EarliestCropYear,
        Certificates = (form.Certificates ?? "").Split(", ", StringSplitOptions.RemoveEmptyEntries),
        MeasurementsRequired = form.MeasurementsRequired,
        LeastOffersPerGroup = form.LeastOffersPerGroup,
    };

    private RulesForm Gates(RulesForm form)
    {
        (form.LeastScore, form.LeastLowerBound, form.HighestCostPerKilogram, form.LeastQuantityKg) = (LeastScore, LeastLowerBound, HighestCostPerKilogram, LeastQuantityKg);
        (form.LeastMoisture, form.HighestMoisture, form.HighestWaterActivity) = (LeastMoisture, HighestMoisture, HighestWaterActivity);
        (form.HighestCategory1, form.HighestCategory2, form.HighestQuakers) = (HighestCategory1, HighestCategory2, HighestQuakers);
        (form.Screen, form.LeastRetained, form.EarliestCropYear) = (Screen, LeastRetained, EarliestCropYear);
        (form.Certificates, form.MeasurementsRequired, form.LeastOffersPerGroup) = (string.Join(", ", Certificates ?? []), MeasurementsRequired, LeastOffersPerGroup);
        return form;
    }
}

/// <summary>A rule set as it stands.</summary>
internal sealed record RuleSetReply(Guid Id, int Revision, bool IsInUse, string Currency, RulesBody Rules)
{
    public static RuleSetReply Of(BuyingRules rules, IReadOnlyList<ProcessMethod> methods) => new(rules.Id.Value, rules.Revision, rules.IsInUse, rules.Terms.Currency.Code, RulesBody.Of(RulesForm.Of(rules, methods)));
}

/// <summary>Rule sets, written by scripts as the page writes them.</summary>
internal static class RulesApi
{
    public static void MapRulesApi(this RouteGroupBuilder choosing)
    {
        choosing.MapGet("/rules/{id}", ReadAsync).WithName("ReadRules").WithSummary("One rule set with every gate and weight, and the version that a change is sent with.");
        choosing.MapPost("/rules", AddAsync).WithName("AddRules").WithSummary("Writes a new rule set.");
        choosing.MapPut("/rules/{id}", ChangeAsync).WithName("ChangeRules").WithSummary("Writes a rule set anew; what stood stays on record with the decisions made on it.")
            .WithDescription("All of it is sent, with the version that was read; 409 when somebody was faster.");
        choosing.MapPost("/rules/{id}/put-away", PutAwayAsync).WithName("PutRulesAway").WithSummary("Puts a rule set away: nothing is ranked by it.");
        choosing.MapPost("/rules/{id}/take-up", TakeUpAsync).WithName("TakeRulesUp").WithSummary("Uses a rule set again that was put away.");
    }

    private static async Task<Results<Ok<RuleSetReply>, NotFound>> ReadAsync(Id<BuyingRules> id, LedgerContext db, CancellationToken cancellationToken) =>
        await db.BuyingRules.AsNoTracking().Whole().SingleOrDefaultAsync(one => one.Id == id, cancellationToken) is { } rules
            ? TypedResults.Ok(RuleSetReply.Of(rules, await db.ProcessMethods.AsNoTracking().ToListAsync(cancellationToken)))
            : TypedResults.NotFound();

    private static async Task<Created<RuleSetReply>> AddAsync(RulesBody body, RulesActs acts, LedgerContext db, HttpContext http, CancellationToken cancellationToken)
    {
        var rules = (await acts.WriteAsync(null, body.Form(), http.User.Person(), cancellationToken))!;
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Created($"/api/choosing/rules/{rules.Id}", RuleSetReply.Of(rules, await db.ProcessMethods.AsNoTracking().ToListAsync(cancellationToken)));
    }

    private static async Task<Results<Ok<RuleSetReply>, NotFound>> ChangeAsync(Id<BuyingRules> id, RulesBody body, RulesActs acts, LedgerContext db, HttpContext http, CancellationToken cancellationToken)
    {
        if (await acts.WriteAsync(id, body.Form(), http.User.Person(), cancellationToken) is null)
        {
            return TypedResults.NotFound();
        }

        await db.SaveChangesAsync(cancellationToken);
        return await ReadAsync(id, db, cancellationToken);
    }

    private static Task<Results<Ok<RuleSetReply>, NotFound>> PutAwayAsync(Id<BuyingRules> id, LedgerContext db, CancellationToken cancellationToken) => WithAsync(id, rules => rules.PutAway(), db, cancellationToken);

    private static Task<Results<Ok<RuleSetReply>, NotFound>> TakeUpAsync(Id<BuyingRules> id, LedgerContext db, CancellationToken cancellationToken) => WithAsync(id, rules => rules.TakeUpAgain(), db, cancellationToken);

    private static async Task<Results<Ok<RuleSetReply>, NotFound>> WithAsync(Id<BuyingRules> id, Action<BuyingRules> act, LedgerContext db, CancellationToken cancellationToken)
    {
        if (await db.BuyingRules.Whole().SingleOrDefaultAsync(one => one.Id == id, cancellationToken) is not { } rules)
        {
            return TypedResults.NotFound();
        }

        act(rules);
        await db.SaveChangesAsync(cancellationToken);
        return await ReadAsync(id, db, cancellationToken);
    }
}
