using GreenLedger.Data;
using GreenLedger.Data.Choosing;
using GreenLedger.Domain;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Offers;
using GreenLedger.Web.Choosing;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Api;

/// <summary>The shortlist as flat rows, and decisions.</summary>
internal static class ChoosingApi
{
    private const int MostDecisions = 10_000;

    public static void MapChoosingApi(this IEndpointRouteBuilder api)
    {
        var choosing = api.MapGroup("/choosing").WithTags("Choosing");
        choosing.MapGet("/rules", RulesAsync).WithName("ListRules").WithSummary("The rule sets in use, by name.");
        choosing.MapRulesApi();
        choosing.MapGet("/shortlist", ShortlistAsync).WithName("RankOffers")
            .WithSummary("The shortlist by the rules of that name.")
            .WithDescription(
                "Ranked rows first, then lots that fail a gate (rank 0, the gates named), then lots scored on another form. "
                + "Without `rules` the first set by name ranks. Weights given here are tried in place of the rules' own. Chances are shares from 0 to 1.");
        choosing.MapGet("/decisions", DecisionsAsync).WithName("ListDecisions").WithSummary("Decisions, the newest first; at most 10,000.");
        choosing.MapGet("/decisions/{id}", DecisionAsync).WithName("ReadDecision").WithSummary("One decision with rules and figures as they stood.");
        choosing.MapPost("/decisions", DecideAsync).WithName("Decide").WithSummary("Decides on an offer; against the rules' advice a reason is required.")
            .WithDescription("Weights given here are tried in place of the rules' own; the decision keeps the weights it was made on.");
        choosing.MapPost("/decisions/{id}/withdraw", WithdrawAsync).WithName("WithdrawDecision").WithSummary("Withdraws a decision with a reason. It stays in the list.");
        choosing.MapPlanApi();
    }

    private static async Task<Ok<List<RulesReply>>> RulesAsync(LedgerContext db, CancellationToken cancellationToken)
    {
        var rules = await db.BuyingRules.InUse().Whole().AsNoTracking().OrderBy(set => set.Name).ToListAsync(cancellationToken);
        return TypedResults.Ok(rules.ConvertAll(RulesReply.Of));
    }

    private static async Task<Results<Ok<IEnumerable<ShortlistReply>>, ProblemHttpResult>> ShortlistAsync(
        [AsParameters] RankingWish wish, LedgerContext db, ShortlistQuery query, HouseZone house, CancellationToken cancellationToken)
    {
        var rules = await db.BuyingRules.InUse().Whole().AsNoTracking().NamedAsync(wish.Rules, cancellationToken);
        var shortlist = rules is null
            ? null
            : await query.RankAsync(wish.TermsOf(rules), house.Today, new ShortlistFilter(wish.Search), cancellationToken);
        return shortlist is null ? Missing(wish.Rules, "There are no buying rules yet.") : TypedResults.Ok(ShortlistReply.AllOf(shortlist));
    }

    private static async Task<Ok<List<DecisionReply>>> DecisionsAsync(
        DecisionQuery query, CancellationToken cancellationToken, string? search = null, Outcome? outcome = null, bool? withdrawn = null)
    {
        var rows = await query.ListAsync(new DecisionFilter(search, outcome, withdrawn), 0, MostDecisions, cancellationToken);
        return TypedResults.Ok(rows.Select(DecisionReply.Of).ToList());
    }

    private static async Task<Results<Ok<DecisionReply>, NotFound>> DecisionAsync(
        Id<Decision> id, DecisionQuery query, CancellationToken cancellationToken) =>
        await query.FindAsync(id, cancellationToken) is { } row ? TypedResults.Ok(DecisionReply.Of(row)) : TypedResults.NotFound();

    private static async Task<Results<Created<DecisionReply>, ProblemHttpResult>> DecideAsync(
        DecisionRequest request, LedgerContext db, ShortlistQuery query, DecisionQuery decisions, HttpContext http, HouseZone house, TimeProvider clock, CancellationToken cancellationToken)
    {
        var rules = await db.BuyingRules.InUse().Whole().AsNoTracking().NamedAsync(request.Rules, cancellationToken);
        var shortlist = rules is null ? null : await query.RankAsync(request.Wish().TermsOf(rules), house.Today, new ShortlistFilter(), cancellationToken);
        if (rules is null || shortlist?.Find(new Id<Offer>(request.OfferId)) is not { } entry)
        {
            return Missing(rules is null ? request.Rules : null, "This offer does not stand open today.");
        }

        var decision = Decision.Take(
            BuyingRules.Advise(entry, shortlist),
            request.Choice(),
            RulesSnapshot.Of(rules, shortlist.Terms),
            FiguresSnapshot.Of(entry, shortlist),
            entry.Candidate,
            http.User.Person(),
            clock.GetUtcNow());
        db.Add(decision);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Created($"/api/choosing/decisions/{decision.Id}", DecisionReply.Of((await decisions.FindAsync(decision.Id, cancellationToken))!));
    }

    private static async Task<Results<Ok<DecisionReply>, NotFound>> WithdrawAsync(
        Id<Decision> id, WithdrawRequest request, LedgerContext db, DecisionQuery decisions, HttpContext http, TimeProvider clock, CancellationToken cancellationToken)
    {
        if (await db.Decisions.FirstOrDefaultAsync(row => row.Id == id, cancellationToken) is not { } decision)
        {
            return TypedResults.NotFound();
        }

        decision.Withdraw(request.Reason, http.User.Person(), clock.GetUtcNow());
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok(DecisionReply.Of((await decisions.FindAsync(id, cancellationToken))!));
    }

    /// <param name="rules">The name that was asked for; null when none was.</param>
    /// <param name="otherwise">What is missing if not those rules.</param>
    private static ProblemHttpResult Missing(string? rules, string otherwise) => TypedResults.Problem(
        string.IsNullOrEmpty(rules) ? otherwise : $"No buying rules in use are named “{rules}”.", statusCode: StatusCodes.Status404NotFound);
}
