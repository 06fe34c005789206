using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Papers;
using GreenLedger.Web.Offers;
using GreenLedger.Web.Papers;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Api;

/// <summary>Putting files and notes on a record, and taking them off: the same acts and checks as on the pages.</summary>
internal static class PapersWritingApi
{
    public static void MapPapersWriting(this RouteGroupBuilder papers)
    {
        papers.MapPostFile("/attachments", AttachAsync).WithName("AttachFile").WithSummary("Attaches a file to a lot, an offer, a sample, a contract, a shipment or an arrival")
            .WithDescription("A form with the one part `file`. Its size and type are checked as on the page.");
        papers.MapDelete("/attachments/{id}", RemoveFileAsync).WithName("RemoveAttachment").WithSummary("Takes a file off its record. It can be put back")
            .WithDescription("422 for evidence of due diligence that is still to be kept. With `mistake`, the reason why it was attached by mistake, whoever attached it takes it back on the same day; it is evidence no more, and the reason stays.");
        papers.MapPost("/attachments/{id}/put-back", PutBackAsync<Attachment>).WithName("PutAttachmentBack").WithSummary("Puts a file back that was removed");
        papers.MapPost("/notes", WriteAsync).WithName("WriteNote").WithSummary("Writes a note on a lot, an offer, a sample, a contract, a shipment or an arrival");
        papers.MapDelete("/notes/{id}", RemoveAsync<Note>).WithName("RemoveNote").WithSummary("Takes a note off its record. It can be put back");
        papers.MapPost("/notes/{id}/put-back", PutBackAsync<Note>).WithName("PutNoteBack").WithSummary("Puts a note back that was removed");
    }

    /// <param name="about">What it is attached to: lot, offer, sample, contract, shipment or arrival.</param>
    /// <param name="id">Its identity.</param>
    /// <param name="file">The file.</param>
    private static async Task<Results<Created<PaperReply>, NotFound, ForbidHttpResult>> AttachAsync(
        string about, Guid id, IFormFile? file, LedgerContext db, PapersReader papers, AttachmentRules rules, HttpContext http, TimeProvider clock, CancellationToken cancellationToken)
    {
        var on = PapersOn.Read(about, id);
        if (await papers.FindNameAsync(on, cancellationToken) is null)
        {
            return TypedResults.NotFound();
        }

        if (!await papers.MayWriteAsync(on))
        {
            return TypedResults.Forbid();
        }

        var stored = await rules.ReadAsync(file, http.User.Person(), clock.GetUtcNow(), cancellationToken);
        var attachment = new Attachment(on.About, on.Id, stored, http.User.Person(), clock.GetUtcNow());
        db.AddRange(stored, attachment);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Created($"/api/papers/attachments/{attachment.Id}/file", new PaperReply(attachment.Id.Value));
    }

    private static async Task<Results<Created<PaperReply>, NotFound, ForbidHttpResult>> WriteAsync(
        NoteRequest request, LedgerContext db, PapersReader papers, HttpContext http, TimeProvider clock, CancellationToken cancellationToken)
    {
        var on = PapersOn.Read(request.About, request.Id);
        if (await papers.FindNameAsync(on, cancellationToken) is null)
        {
            return TypedResults.NotFound();
        }

        if (!await papers.MayWriteAsync(on))
        {
            return TypedResults.Forbid();
        }

        var note = new Note(on.About, on.Id, request.Text, http.User.Person(), clock.GetUtcNow());
        db.Add(note);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Created($"/api/papers/notes?about={on.About.Word()}&id={on.Id}", new PaperReply(note.Id.Value));
    }

    private static Task<Results<NoContent, NotFound, ForbidHttpResult>> RemoveFileAsync(
        Guid id, LedgerContext db, PapersReader papers, DiligenceActs diligences, HttpContext http, TimeProvider clock, CancellationToken cancellationToken, string? mistake = null) =>
        ChangeAsync<Attachment>(
            id, db, papers,
            async file =>
            {
                await diligences.LetGoAsync(file, mistake, http.User.Person(), cancellationToken);
                file.Remove(http.User.Person(), clock.GetUtcNow());
            },
            cancellationToken);

    private static Task<Results<NoContent, NotFound, ForbidHttpResult>> RemoveAsync<T>(
        Guid id, LedgerContext db, PapersReader papers, HttpContext http, TimeProvider clock, CancellationToken cancellationToken)
        where T : class, IPaper =>
        ChangeAsync<T>(id, db, papers, Now<T>(paper => paper.Remove(http.User.Person(), clock.GetUtcNow())), cancellationToken);

    private static Task<Results<NoContent, NotFound, ForbidHttpResult>> PutBackAsync<T>(Guid id, LedgerContext db, PapersReader papers, CancellationToken cancellationToken)
        where T : class, IPaper =>
        ChangeAsync<T>(id, db, papers, Now<T>(paper => paper.PutBack()), cancellationToken);

    private static Func<T, Task> Now<T>(Action<T> change) => paper =>
    {
        change(paper);
        return Task.CompletedTask;
    };

    private static async Task<Results<NoContent, NotFound, ForbidHttpResult>> ChangeAsync<T>(
        Guid id, LedgerContext db, PapersReader papers, Func<T, Task> change, CancellationToken cancellationToken)
        where T : class, IPaper
    {
        var sought = new Id<T>(id);
        var paper = await db.Set<T>().FirstOrDefaultAsync(one => EF.Property<Id<T>>(one, "Id") == sought, cancellationToken);
        if (paper is null || await papers.FindNameAsync(new PapersOn(paper.About, paper.AboutId), cancellationToken) is null)
        {
            return TypedResults.NotFound();
        }

        if (!await papers.MayWriteAsync(new PapersOn(paper.About, paper.AboutId)))
        {
            return TypedResults.Forbid();
        }

        await change(paper);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.NoContent();
    }
}

/// <summary>A note to be written.</summary>
/// <param name="About">What it is on: lot, offer, sample, contract, shipment or arrival.</param>
/// <param name="Id">The identity of that.</param>
internal sealed record NoteRequest(string About, Guid Id, string Text);

/// <summary>The identity of a file or note.</summary>
internal sealed record PaperReply(Guid Id);
