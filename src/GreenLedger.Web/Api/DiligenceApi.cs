using GreenLedger.Data;
using GreenLedger.Data.Offers;
using GreenLedger.Data.Trace;
using GreenLedger.Documents.Origins;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Trace;
using GreenLedger.Web.Offers;
using GreenLedger.Web.Papers;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Api;

/// <summary>Due diligence under Regulation (EU) 2023/1115: what is held and what is missing. Not legal advice.</summary>
internal static class DiligenceApi
{
    public static void MapDiligence(this RouteGroupBuilder offers)
    {
        offers.MapGet("/diligences", ListAsync).WithName("ListDiligences").WithSummary("Lots contracted, afloat or in stock, with what their due diligence lacks")
            .WithDescription("With `stage` only those, with `lacking` only lots of which something is missing, or nothing. Not legal advice: the competent authority has the last word.");
        offers.MapGet("/lots/{id}/diligence", ReadAsync).WithName("ReadDiligence").WithSummary("What is held about where a lot grew, what is missing and what is to be looked at");
        offers.MapPut("/lots/{id}/diligence", StateAsync).WithName("StateDiligence").WithSummary("Says anew what is held about where a lot grew")
            .WithDescription("All of it is sent, with the version that was read; 409 when somebody was faster.");
        offers.MapPostFile("/lots/{id}/diligence/files", AttachAsync).WithName("AttachEvidence").WithSummary("Attaches a file as evidence of legality, about deforestation or about the risk")
            .WithDescription("A form with the one part `file`; its size and type are checked as on the page.");
        offers.MapGet("/lots/{id}/diligence/plots", PlotsAsync).WithName("ReadDiligencePlots").WithSummary("The plots of a lot as the EU's system reads them: GeoJSON, packed where the limit makes several files")
            .Produces(StatusCodes.Status200OK, contentType: PlotExport.MediaType);
        offers.MapGet("/diligence-habits", ReadHabitsAsync).WithName("ReadDiligenceHabits").WithSummary("Size of the firm, days and limits of due diligence");
        offers.MapPut("/diligence-habits", KeepHabitsAsync).WithName("ChangeDiligenceHabits").WithSummary("Changes the size of the firm, the days and limits of due diligence")
            .WithDescription("All of them are sent, with the version that was read; 409 when somebody was faster.");
    }

    private static async Task<Ok<List<BoughtDiligenceReply>>> ListAsync(BoughtDiligenceQuery query, CancellationToken cancellationToken, BoughtStage? stage = null, bool? lacking = null) =>
        TypedResults.Ok((await query.ListAsync(cancellationToken))
            .Where(row => (stage is not { } one || row.Is(one)) && (lacking is not { } asked || row.Missing.Count > 0 == asked))
            .Select(BoughtDiligenceReply.Of).ToList());

    private static async Task<Results<Ok<DiligenceReply>, NotFound>> ReadAsync(Id<Lot> id, DiligenceQuery query, PapersReader papers, CancellationToken cancellationToken) =>
        await query.FindAsync(id, cancellationToken) is { } view ? TypedResults.Ok(DiligenceReply.Of(view, await papers.MayReadAsync(PapersOn.The(id)))) : TypedResults.NotFound();

    private static async Task<Results<Ok<DiligenceReply>, NotFound>> StateAsync(
        Id<Lot> id, DiligenceRequest request, DiligenceActs acts, LedgerContext db, DiligenceQuery query, PapersReader papers, CancellationToken cancellationToken)
    {
        if (await acts.StateAsync(id, request.Version, request.Facts(), request.PlotIds(), cancellationToken) is null)
        {
            return TypedResults.NotFound();
        }

        await db.SaveChangesAsync(cancellationToken);
        return await ReadAsync(id, query, papers, cancellationToken);
    }

    private static async Task<Results<Created<PaperReply>, NotFound>> AttachAsync(
        Id<Lot> id, EvidenceKind evidence, IFormFile? file, DiligenceActs acts, LedgerContext db, HttpContext http, CancellationToken cancellationToken)
    {
        if (!await db.Lots.AnyAsync(lot => lot.Id == id, cancellationToken))
        {
            return TypedResults.NotFound();
        }

        var attachment = await acts.TakeAsync(id, evidence, file, http.User.Person(), cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Created($"/api/papers/attachments/{attachment.Id}/file", new PaperReply(attachment.Id.Value));
    }

    private static async Task<Results<FileContentHttpResult, NotFound>> PlotsAsync(Id<Lot> id, DiligenceQuery query, CancellationToken cancellationToken)
    {
        if (await query.FindAsync(id, cancellationToken) is not { Producer: { } producer } view)
        {
            return TypedResults.NotFound();
        }

        var download = PlotExport.Download(view.Grown.Select(plot => new ExportedPlot(producer.Name, plot)), view.Habits.ExportBytes);
        return TypedResults.File(download.Content, download.MediaType, download.FileName);
    }

    private static async Task<Ok<DiligenceHabitsBody>> ReadHabitsAsync(LedgerContext db, CancellationToken cancellationToken) =>
        TypedResults.Ok(DiligenceHabitsBody.Of(await db.DiligenceHabits.AsNoTracking().OfHouseAsync(cancellationToken)));

    private static async Task<Ok<DiligenceHabitsBody>> KeepHabitsAsync(DiligenceHabitsBody body, LedgerContext db, CancellationToken cancellationToken)
    {
        var habits = await db.ToChangeAsync<DiligenceHabits>(body.Version, cancellationToken);
        habits.Keep(body.Terms());
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok(DiligenceHabitsBody.Of(habits));
    }
}
