using GreenLedger.Data;
using GreenLedger.Data.Contracts;
using GreenLedger.Data.Grading;
using GreenLedger.Domain;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Samples;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Api;

/// <summary>Contracts: drafting, signing, amending, fixing, rolling, and what is open.</summary>
internal static class ContractsApi
{
    private const int MostContracts = 1_000;

    public static void MapContractsApi(this IEndpointRouteBuilder api)
    {
        var contracts = api.MapGroup("/contracts").WithTags("Contracts");
        contracts.MapGet("", ListAsync).WithName("ListContracts").WithSummary("Contracts, the newest number first; at most 1,000.");
        contracts.MapGet("/open", OpenAsync).WithName("ListOpenFixings").WithSummary("What is open by futures month, with the last sensible day of each contract.");
        contracts.MapGet("/{id}", FindAsync).WithName("ReadContract").WithSummary("One contract with its versions, fixings, rolls and moves.");
        contracts.MapPost("", DraftAsync).WithName("DraftContract").WithSummary("Drafts a contract from a decision to buy.")
            .WithDescription("What the request leaves out comes from the decision, the offer and the first standard form in use.");
        contracts.MapPut("/{id}/terms", TermsAsync).WithName("RedraftContract").WithSummary("Changes the version that is not signed yet.");
        contracts.MapPost("/{id}/amendments", AmendAsync).WithName("AmendContract").WithSummary("Writes an amendment, which holds once it is signed.");
        contracts.MapDelete("/{id}/amendment", DropAsync).WithName("DropAmendment").WithSummary("Drops an amendment that was never signed. The contract stands as it was signed.");
        contracts.MapPost("/{id}/sign", SignAsync).WithName("SignContract").WithSummary("Enters that both sides have signed the newest version.");
        contracts.MapPost("/{id}/fixings", FixAsync).WithName("FixContract").WithSummary("Fixes lots, or a weight where the contract is fixed by weight.");
        contracts.MapPost("/{id}/fixings/{number}/take-back", TakeBackAsync).WithName("TakeFixingBack").WithSummary("Takes a fixing back with a reason. It stays on record.");
        contracts.MapPost("/{id}/rolls", RollAsync).WithName("RollContract").WithSummary("Rolls all that is open to a later month.");
        contracts.MapGet("/{id}/approvals", ToJudgeAsync).WithName("ListSamplesToJudge").WithSummary("Pre-shipment samples that wait for a verdict, each beside the offer sample of its lot.");
        contracts.MapPost("/{id}/approvals", JudgeAsync).WithName("JudgeSample").WithSummary("Approves or refuses a pre-shipment sample of a lot of the contract.");
        contracts.MapPost("/{id}/goods", MoveAsync).WithName("MoveGoods").WithSummary("Enters that the goods shipped or arrived, or that the contract is closed or cancelled.");
        contracts.MapEarlierContracts();
        contracts.MapContractHabits();
        contracts.MapConfirmationLetter();
        contracts.MapPost("/calculate/fixing", ContractCalculators.FixingAsync).WithName("CalculateFixing")
            .WithSummary("Average, provisional or final price and value of fixings. Stores nothing.");
    }

    private static async Task<Ok<List<ContractReply>>> ListAsync(
        ContractQuery query, HouseZone house, CancellationToken cancellationToken,
        string? search = null, GoodsState? goods = null, PriceState? price = null, string? month = null, Guid? supplierId = null)
    {
        var filter = new ContractFilter(
            search, goods, price, month is null ? null : PricingRequests.Month(month, house.Today), supplierId is { } supplier ? new Id<Domain.Offers.Supplier>(supplier) : null);
        return TypedResults.Ok((await query.ListAsync(filter, null, 0, MostContracts, cancellationToken)).Select(ContractReply.Of).ToList());
    }

    private static async Task<Ok<List<OpenMonthReply>>> OpenAsync(FixingsQuery fixings, HouseZone house, CancellationToken cancellationToken) =>
        TypedResults.Ok((await fixings.OpenAsync(house.Today, cancellationToken)).Select(OpenMonthReply.Of).ToList());

    private static async Task<Results<Ok<ContractReply>, NotFound>> FindAsync(Id<Contract> id, ContractQuery query, FixingStateQuery states, HouseZone house, CancellationToken cancellationToken) =>
        await query.FindAsync(id, cancellationToken) is { } contract
            ? TypedResults.Ok(ContractReply.Of(contract) with { Fixing = FixingStateReply.Of(await states.OfAsync(contract, house.Today, cancellationToken)) })
            : TypedResults.NotFound();

    private static async Task<Results<Created<ContractReply>, NotFound>> DraftAsync(
        DraftRequest request, LedgerContext db, DraftBasisQuery query, HttpContext http, HouseZone house, TimeProvider clock, CancellationToken cancellationToken)
    {
        var (basis, trouble) = await query.FindAsync(new Id<Decision>(request.DecisionId), cancellationToken);
        Rule.Require(trouble is null, trouble ?? "", nameof(request.DecisionId));
        if (basis is null)
        {
            return TypedResults.NotFound();
        }

        IReadOnlyList<ContractedLot> known = [DraftTerms.Line(basis.Bought), .. basis.Others.Select(DraftTerms.Line)];
        var usual = DraftTerms.Of(basis.House, basis.Supplier, [basis.Bought], basis.Forms.Count > 0 ? basis.Forms[0] : null, house.Today);
        var terms = request.Terms?.Over(usual, known, await db.GradingStandardsAsync(cancellationToken), house.Today) ?? usual;
        await using var turn = await db.NumberAsync(cancellationToken);
        var number = request.Ref ?? await db.Contracts.NextRefAsync(house.Today, cancellationToken);
        var decisions = basis.Others.Prepend(basis.Bought).ToDictionary(one => one.Lot.Id, one => one.Decision.Id);
        var contract = Contract.Draft(number, basis.Supplier.Id, terms, decisions, http.User.Person(), clock.GetUtcNow());
        await db.Contracts.RequireFreeRefAsync(contract.Ref, cancellationToken);
        db.Add(contract);
        await db.SaveChangesAsync(cancellationToken);
        await turn.CommitAsync(cancellationToken);
        return TypedResults.Created($"/api/contracts/{contract.Id}", ContractReply.Of(contract));
    }

    private static async Task<Results<Ok<ContractReply>, NotFound>> TermsAsync(
        Id<Contract> id, AmendRequest request, LedgerContext db, HttpContext http, HouseZone house, TimeProvider clock, CancellationToken cancellationToken)
    {
        var standards = await db.GradingStandardsAsync(cancellationToken);
        return await ActAsync(id, db, contract => contract.Redraft(Over(request, contract, standards, house), request.Reason, http.User.Person(), clock.GetUtcNow()), cancellationToken);
    }

    private static async Task<Results<Ok<ContractReply>, NotFound>> AmendAsync(
        Id<Contract> id, AmendRequest request, LedgerContext db, HttpContext http, HouseZone house, TimeProvider clock, CancellationToken cancellationToken)
    {
        var standards = await db.GradingStandardsAsync(cancellationToken);
        return await ActAsync(id, db, contract => contract.Amend(Over(request, contract, standards, house), request.Reason, http.User.Person(), clock.GetUtcNow()), cancellationToken);
    }

    private static Task<Results<Ok<ContractReply>, NotFound>> DropAsync(Id<Contract> id, LedgerContext db, CancellationToken cancellationToken) =>
        ActAsync(id, db, contract => contract.DropAmendment(), cancellationToken);

    private static Task<Results<Ok<ContractReply>, NotFound>> SignAsync(
        Id<Contract> id, SignRequest request, LedgerContext db, HttpContext http, TimeProvider clock, CancellationToken cancellationToken) =>
        ActAsync(id, db, contract => contract.Sign(request.SignedOn, request.SignedForSeller, http.User.Person(), clock.GetUtcNow()), cancellationToken);

    private static Task<Results<Ok<ContractReply>, NotFound>> FixAsync(
        Id<Contract> id, FixRequest request, LedgerContext db, HttpContext http, TimeProvider clock, CancellationToken cancellationToken) =>
        ActAsync(id, db, contract => contract.Fix(
            new FixingOrder(request.On, request.Lots, request.WeightKg is { } kilograms ? Weight.FromKilograms(kilograms) : null, request.Level, request.Method),
            http.User.Person(), clock.GetUtcNow()), cancellationToken);

    private static Task<Results<Ok<ContractReply>, NotFound>> TakeBackAsync(
        Id<Contract> id, int number, ReasonRequest request, LedgerContext db, HttpContext http, HouseZone house, TimeProvider clock, CancellationToken cancellationToken) =>
        ActAsync(id, db, contract => contract.TakeBack(number, request.Reason, house.Today, http.User.Person(), clock.GetUtcNow()), cancellationToken);

    private static Task<Results<Ok<ContractReply>, NotFound>> RollAsync(
        Id<Contract> id, RollRequest request, LedgerContext db, HttpContext http, HouseZone house, TimeProvider clock, CancellationToken cancellationToken) =>
        ActAsync(id, db, contract => contract.Roll(
            new RollOrder(request.On, PricingRequests.Month(request.To, house.Today), request.Spread, request.Fee), http.User.Person(), clock.GetUtcNow()), cancellationToken);

    private static async Task<Results<Ok<List<SampleToJudgeReply>>, NotFound>> ToJudgeAsync(
        Id<Contract> id, ContractQuery contracts, ApprovalQuery approvals, Reader reader, CancellationToken cancellationToken)
    {
        if (await contracts.FindAsync(id, cancellationToken) is not { } contract)
        {
            return TypedResults.NotFound();
        }

        var waiting = contract.AwaitsApproval ? await approvals.ToJudgeAsync(contract, await reader.SealAsync(), cancellationToken) : [];
        return TypedResults.Ok(waiting.Select(one => SampleToJudgeReply.Of(one, contract)).ToList());
    }

    private static async Task<Results<Ok<ContractReply>, NotFound>> JudgeAsync(
        Id<Contract> id, ApprovalRequest request, LedgerContext db, HttpContext http, TimeProvider clock, CancellationToken cancellationToken)
    {
        var sampleId = new Id<Sample>(request.SampleId);
        var sample = await db.Samples.AsNoTracking().SingleOrDefaultAsync(one => one.Id == sampleId, cancellationToken);
        Rule.Require(sample is not null, "There is no such sample.", nameof(request.SampleId));
        return await ActAsync(id, db, contract => contract.Judge(sample, request.Verdict, request.Remarks, request.On, http.User.Person(), clock.GetUtcNow()), cancellationToken);
    }

    private static Task<Results<Ok<ContractReply>, NotFound>> MoveAsync(
        Id<Contract> id, GoodsRequest request, LedgerContext db, HttpContext http, TimeProvider clock, CancellationToken cancellationToken) =>
        ActAsync(id, db, contract => contract.Enter(request.Move, request.On, request.Reason, http.User.Person(), clock.GetUtcNow()), cancellationToken);

    private static ContractTerms Over(AmendRequest request, Contract contract, GradingStandards standards, HouseZone house) =>
        request.Terms?.Over(contract.Newest.Terms, contract.Newest.Terms.Lots, standards, house.Today) ?? contract.Newest.Terms;

    private static async Task<Results<Ok<ContractReply>, NotFound>> ActAsync(
        Id<Contract> id, LedgerContext db, Action<Contract> act, CancellationToken cancellationToken)
    {
        if (await db.Contracts.Whole().SingleOrDefaultAsync(contract => contract.Id == id, cancellationToken) is not { } contract)
        {
            return TypedResults.NotFound();
        }

        act(contract);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok(ContractReply.Of(contract));
    }
}
