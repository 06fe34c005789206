using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using GreenLedger.Web.Choosing;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Http.HttpResults;

namespace GreenLedger.Web.Api;

/// <summary>A purchase plan for needs and offers as they are sent.</summary>
internal static class PlanApi
{
    public static void MapPlanApi(this IEndpointRouteBuilder choosing)
    {
        choosing.MapPost("/plan", MakeAsync).WithName("MakePlan").WithSummary("A plan for what the house's purposes need, from the shortlist of today; stores nothing");
        choosing.MapPost("/plan/decisions", DecideAsync).WithName("DecidePlan").WithSummary("Decides to buy so many bags of each of these offers, all or none");
        choosing.MapPost("/calculate/plan", Calculate).WithName("CalculatePlan").WithSummary("Which offers to buy of, how many bags, in which month; stores nothing")
            .WithDescription("Needs have one weight for each month; `quality` goes from 0, the least cost, to 1, the most points. Where nothing meets the needs, `conflicts` says what stands against it. `gap` is a share; 0 is proven best.");
    }

    [StoresNothing]
    private static async Task<Ok<HousePlanReply>> MakeAsync(PlanWish wish, PlanDesk desk, HouseZone house, CancellationToken cancellationToken)
    {
        var basis = await desk.LayOutAsync(wish, house.Today, cancellationToken);
        var plan = basis.Request is { } request ? PlanSolver.Solve(request, TimeSpan.FromSeconds(wish.Seconds)) : null;
        return TypedResults.Ok(new HousePlanReply(
            basis.Trouble, basis.Months,
            [.. basis.Request?.Needs.Select(need => new NeedAsked(need.Name, [.. need.ByMonth.Select(kg => kg.Kilograms)], need.Process, need.LeastScore?.Points, need.Flavour)) ?? []],
            basis.Decided.Kilograms, plan is null ? null : PurchasePlanReply.Of(plan), [.. plan?.Buys.Select(buy => new PlanLineAsked(buy.Offer.OfferId.Value, buy.Bags)) ?? []]));
    }

    private static async Task<Results<NoContent, NotFound>> DecideAsync(PlanDecisionsAsked asked, PlanDesk desk, LedgerContext db, HttpContext http, CancellationToken cancellationToken)
    {
        Rule.Require(asked.Lines is { Count: > 0 and <= PlanRequest.MostOffers }, "Send the offers that are to be bought of, with their bags.", nameof(asked.Lines));
        if (!await desk.DecideAsync(asked.Wish ?? new PlanWish(), [.. asked.Lines.Select(line => (new Id<Offer>(line.OfferId), line.Bags))], asked.Reason, http.User.Person(), cancellationToken))
        {
            return TypedResults.NotFound();
        }

        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.NoContent();
    }

    [StoresNothing]
    private static Ok<PurchasePlanReply> Calculate(PlanAsked asked)
    {
        Rule.Require(asked.Seconds is >= 1 and <= PlanWish.MostSeconds, $"Give a plan 1 to {PlanWish.MostSeconds} seconds.", nameof(asked.Seconds));
        Rule.Require(asked is { Needs.Count: <= 50, Offers.Count: <= PlanRequest.MostOffers }, "Send at most 50 needs and 2,000 offers.", nameof(asked.Needs));
        Rule.Require(asked.Offers.Select(offer => offer.Ref).Distinct(StringComparer.Ordinal).Count() == asked.Offers.Count, "Each offer has a reference of its own.", nameof(asked.Offers));
        var limits = new PlanLimits(asked.Budget ?? [], Kilograms(asked.StorageKg), asked.MostLots, Kilograms(asked.MostOfSupplierKg), Kilograms(asked.MostOfOriginKg));
        var request = new PlanRequest(asked.Months, [.. asked.Needs.Select(NeedOf)], [.. asked.Offers.Select(OfferOf)], limits, asked.Quality);
        return TypedResults.Ok(PurchasePlanReply.Of(PlanSolver.Solve(request, TimeSpan.FromSeconds(asked.Seconds))));
    }

    private static PlanNeed NeedOf(NeedAsked need)
    {
        Rule.Require(need.LeastScore is null or (>= 0m and <= 100m), "A least score lies between 0 and 100 points.", nameof(need.LeastScore));
        return new PlanNeed(Rule.Text(need.Name, "The name of a need", 80, nameof(need.Name)), need.Process, need.LeastScore is { } least ? Score.Of(least) : null, [.. need.Kg.Select(kg => Kilograms(kg)!.Value)], need.Flavour);
    }

    private static PlanOffer OfferOf(OfferAsked offer) => new(
        Id<Offer>.New(), Rule.Text(offer.Ref, "The reference of an offer", 200, nameof(offer.Ref)), offer.Supplier, offer.Origin, offer.Process, offer.Points, offer.CostPerKg, Kilograms(offer.BagKg)!.Value, offer.MostBags, offer.LeastBags, offer.FirstMonth, offer.Families);

    private static Weight? Kilograms(decimal? kilograms)
    {
        Rule.Require(kilograms is null or (>= 0m and <= 100_000_000m), "A weight lies between 0 and 100,000,000 kg.", "Kg");
        return kilograms is { } known ? Weight.FromKilograms(known) : null;
    }
}

internal sealed record NeedAsked(string Name, IReadOnlyList<decimal> Kg, ProcessFamily? Process = null, decimal? LeastScore = null, string? Flavour = null);

/// <summary>Landed cost in the house currency; points after whatever doubt is to count. The first month is 0.</summary>
internal sealed record OfferAsked(
    string Ref, decimal CostPerKg, decimal Points, decimal BagKg, int MostBags, int LeastBags = 1, int FirstMonth = 0, string? Supplier = null, string? Origin = null, ProcessFamily? Process = null,
    IReadOnlyList<string>? Families = null);

internal sealed record PlanAsked(
    int Months, IReadOnlyList<NeedAsked> Needs, IReadOnlyList<OfferAsked> Offers, decimal Quality = 0m, IReadOnlyList<decimal?>? Budget = null, decimal? StorageKg = null,
    int? MostLots = null, decimal? MostOfSupplierKg = null, decimal? MostOfOriginKg = null, int Seconds = 20);

internal sealed record PlanLineAsked(Guid OfferId, int Bags);

/// <summary>The offers of a plan that are to be decided on, with the wishes that it was made by.</summary>
internal sealed record PlanDecisionsAsked(IReadOnlyList<PlanLineAsked> Lines, string? Reason = null, PlanWish? Wish = null);

/// <summary>What the house needs, and the plan for it; <c>lines</c> are what its decisions take. No plan where nothing is needed or offered.</summary>
internal sealed record HousePlanReply(
    string? Trouble, IReadOnlyList<DateOnly> Months, IReadOnlyList<NeedAsked> Needs, decimal DecidedKg, PurchasePlanReply? Plan, IReadOnlyList<PlanLineAsked> Lines);

internal sealed record PlanPartReply(string Need, int Month, int Bags);

internal sealed record PlanBuyReply(string Ref, int Bags, decimal Kg, decimal Cost, IReadOnlyList<PlanPartReply> Parts, IReadOnlyList<string> Reasons);

internal sealed record PlanLeftReply(string Ref, string Reason);

internal sealed record PurchasePlanReply(PlanEnd End, double? Gap, double Seconds, decimal Cost, decimal Kg, decimal? Points, IReadOnlyList<PlanBuyReply> Buys, IReadOnlyList<PlanLeftReply> Left, IReadOnlyList<string> Conflicts)
{
    public static PurchasePlanReply Of(PurchasePlan plan) => new(
        plan.End, plan.Gap, plan.Took.TotalSeconds, plan.Cost, plan.Weight.Kilograms, plan.Points,
        [.. plan.Buys.Select(buy => new PlanBuyReply(buy.Offer.Ref, buy.Bags, buy.Weight.Kilograms, buy.Cost, [.. buy.Parts.Select(part => new PlanPartReply(part.Need.Name, part.Month, part.Bags))], buy.Reasons))],
        [.. plan.Left.Select(left => new PlanLeftReply(left.Offer.Ref, left.Reason))],
        plan.Conflicts);
}
