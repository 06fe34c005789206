using GreenLedger.Data;
using GreenLedger.Data.Cupping;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Offers;
using GreenLedger.Web.Cupping;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Api;

/// <summary>Forms, sessions, sheets and results. While a session is open its answers hold codes and nothing else.</summary>
internal static class CuppingApi
{
    public static void MapCuppingApi(this IEndpointRouteBuilder api)
    {
        var cupping = api.MapGroup("/cupping").WithTags("Cupping");
        cupping.MapGet("/forms", FormsAsync).WithName("ListForms").WithSummary("The forms, with their numbers.");
        cupping.MapGet("/sessions", SessionsAsync).WithName("ListSessions").WithSummary("Cupping sessions, the newest first.");
        cupping.MapGet("/sessions/{id}", SessionAsync).WithName("ReadSession").WithSummary("A session: codes while it is open, results once it is closed.");
        cupping.MapPost("/sessions/{id}/sheets", SubmitAsync).WithName("SubmitSheet").WithSummary("Hands in the caller's whole sheet for one code; again only with a reason.");
        cupping.MapPost("/sessions/{id}/close", CloseAsync).WithName("CloseSession").WithSummary("Closes a session and computes the panel's result; with sheets of its panel missing only where withMissing is said, and with cuppers who repeat worse than statedRepeatability counting less.");
        cupping.MapGet("/lots/{reference}/results", OfLotAsync).WithName("ListLotResults").WithSummary("Results of a lot, by its id or reference.");
        cupping.MapPostFile("/import", ImportAsync).WithName("ImportResults").DisableAntiforgery()
            .WithSummary("Past results from an XLSX or CSV file; stored only with commit=true.");
        cupping.MapHouse();
        cupping.MapLeading();
        cupping.MapAlone();
        cupping.MapTable();
        cupping.MapResults();
        cupping.MapPost("/calculate/score", CuppingCalculators.Score).WithName("CalculateScore").WithSummary("A sheet's total with each deduction. Stores nothing.");
        cupping.MapPost("/calculate/panel", CuppingCalculators.PanelAsync).WithName("CalculatePanel").WithSummary("The additive fit of a panel's scores, its agreement and which samples it can tell apart. Stores nothing.");
        cupping.MapPost("/calculate/serving-order", ServingOrderCalculator.ServingOrder).WithName("CalculateServingOrder").WithSummary("A serving order for each cupper, balanced for position and carry-over. Stores nothing.");
    }

    private static async Task<Ok<List<FormReply>>> FormsAsync(LedgerContext db, CancellationToken cancellationToken)
    {
        var forms = await db.CuppingForms.AsNoTracking().OrderBy(form => form.Code).ThenByDescending(form => form.Revision).ToListAsync(cancellationToken);
        return TypedResults.Ok(forms.ConvertAll(FormReply.Of));
    }

    private static async Task<Ok<List<SessionReply>>> SessionsAsync(
        SessionQuery query, CancellationToken cancellationToken, bool? closed = null, string? q = null, int skip = 0, int take = 100) =>
        TypedResults.Ok((await query.ListAsync(new SessionFilter(q, closed), Math.Max(0, skip), Math.Clamp(take, 1, 1000), cancellationToken))
            .Select(SessionReply.Of).ToList());

    private static async Task<Results<Ok<OpenSessionReply>, Ok<ClosedSessionReply>, NotFound>> SessionAsync(
        Id<CuppingSession> id, LedgerContext db, SessionQuery query, BlindTableQuery blind, CancellationToken cancellationToken)
    {
        if (await blind.FindAsync(id, null, cancellationToken) is not { } table)
        {
            return TypedResults.NotFound();
        }

        if (!table.IsClosed)
        {
            return TypedResults.Ok(OpenSessionReply.Of(table));
        }

        var session = await db.CuppingSessions.AsNoTracking().Whole().SingleAsync(session => session.Id == id, cancellationToken);
        return TypedResults.Ok(ClosedSessionReply.Of(session, await query.KeyAsync(id, cancellationToken)));
    }

    private static async Task<Results<Ok<SheetReply>, NotFound>> SubmitAsync(
        Id<CuppingSession> id, SheetRequest request, LedgerContext db, HttpContext http, TimeProvider clock, CancellationToken cancellationToken)
    {
        await using var turn = await db.TakeTurnAsync(id, cancellationToken);
        if (await db.CuppingSessions.Whole().SingleOrDefaultAsync(session => session.Id == id, cancellationToken) is not { } session)
        {
            return TypedResults.NotFound();
        }

        var cupper = await db.People.FindAsync([http.User.Person()], cancellationToken);
        Rule.Require(!string.IsNullOrWhiteSpace(request.Code), "Give the code of the cup that the sheet is for.", nameof(request.Code));
        var sample = session.Poured(request.Code);
        var marks = SheetInput.Read(session.Form.Rules, request.Marks, request.GoodCups, request.DeductedCups, session.CupsPerSample);
        if (request.Reason is not null && session.SheetOf(sample, cupper!.Id) is { IsReopened: false })
        {
            session.Reopen(request.Code, cupper.Id, request.Reason, cupper.Id, clock.GetUtcNow());
        }

        var sheet = session.HandIn(request.Code, cupper!, marks, clock.GetUtcNow());
        sheet.Remark(request.Descriptors ?? [], request.Note, request.StatedTotal);
        var draft = await db.DraftOfAsync(session, sheet, sample.Code, cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        await turn.CommitAsync(cancellationToken);
        return TypedResults.Ok(SheetReply.Of(sheet, sample.Code, draft.ChangeCount));
    }

    /// <summary>For whoever leads, and for whoever cups alone the own one.</summary>
    private static async Task<Results<Ok<ClosedSessionReply>, NotFound, ProblemHttpResult>> CloseAsync(
        Id<CuppingSession> id,
        LedgerContext db,
        SessionQuery query,
        CupperRecordQuery records,
        HttpContext http,
        TimeProvider clock,
        CancellationToken cancellationToken,
        bool withMissing = false,
        decimal? statedRepeatability = null)
    {
        await using var turn = await db.TakeTurnAsync(id, cancellationToken);
        if (await db.CuppingSessions.Whole().SingleOrDefaultAsync(session => session.Id == id, cancellationToken) is not { } session)
        {
            return TypedResults.NotFound();
        }

        if (!http.User.MayWrite("Cupping, leading") && !session.IsAloneOf(http.User.Person()))
        {
            return TypedResults.Problem("This session is closed by whoever leads it.", statusCode: StatusCodes.Status403Forbidden);
        }

        var weights = statedRepeatability is { } stated ? await records.WeightsAsync(session, new CupperWeights((double)stated), cancellationToken) : null;
        session.Close(http.User.Person(), clock.GetUtcNow(), await Errors.ExpectedAsync(db, cancellationToken), withMissing, weights);
        await db.SaveChangesAsync(cancellationToken);
        await turn.CommitAsync(cancellationToken);
        return TypedResults.Ok(ClosedSessionReply.Of(session, await query.KeyAsync(id, cancellationToken)));
    }

    private static async Task<Results<Ok<List<LotResultReply>>, NotFound>> OfLotAsync(
        string reference, LedgerContext db, SessionQuery query, Reader reader, CancellationToken cancellationToken)
    {
        var seal = await reader.SealAsync();
        var isId = Id<Lot>.TryParse(reference, null, out var id);
        var lots = await db.Lots.AsNoTracking().Where(lot => isId ? lot.Id == id : lot.Ref == reference).Select(lot => lot.Id).ToListAsync(cancellationToken);
        lots.RemoveAll(lot => seal.Covers(lot.Value));
        if (lots.Count == 0)
        {
            return TypedResults.NotFound();
        }

        var results = new List<LotResultReply>();
        foreach (var lot in lots)
        {
            results.AddRange((await query.OfLotAsync(lot, cancellationToken)).Select(LotResultReply.Of));
        }

        return TypedResults.Ok(results);
    }

    [InArea("Cupping, leading")]
    private static async Task<Ok<ImportReply>> ImportAsync(
        IFormFile file,
        PastResults past,
        HttpContext http,
        CancellationToken cancellationToken,
        [FromForm] bool commit = false,
        [FromForm] string? form = null,
        [FromForm] string? mapping = null,
        [FromForm] DateOnly? heldOn = null)
    {
        var preview = await past.ReadAsync(file, form, ImportReply.Mapping(mapping), cancellationToken);
        var taking = commit ? await past.StoreAsync(preview, heldOn, http.User.Person(), cancellationToken) : null;
        return TypedResults.Ok(ImportReply.Of(preview, taking));
    }

    /// <summary>A form by id or by the word for it; the newest revision, and the 100-point form where none is named.</summary>
    internal static async Task<CuppingForm> FindFormAsync(LedgerContext db, string? named, CancellationToken cancellationToken)
    {
        var isId = Id<CuppingForm>.TryParse(named, null, out var id);
        var code = named?.Trim().ToLowerInvariant() switch
        {
            null or "" or "sca-2004" or "2004" or "100" or "hundred-point" => "100-point",
            "sca-104" or "104" or "cva" or "sca104" => "affective",
            var other => other,
        };
        var form = await db.CuppingForms.Where(form => isId ? form.Id == id : form.Code == code)
            .OrderByDescending(form => form.Revision).FirstOrDefaultAsync(cancellationToken);
        Rule.Require(form is not null, $"There is no form '{named}': use 100-point or affective.", "Form");
        return form;
    }
}
