using System.Text.Json;
using GreenLedger.Data;
using GreenLedger.Data.Papers;
using GreenLedger.Domain;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using GreenLedger.Web.Display;
using GreenLedger.Web.Papers;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Http.HttpResults;

namespace GreenLedger.Web.Api;

/// <summary>History, notes and attachments for scripts.</summary>
internal static class PapersApi
{
    public static void MapPapersApi(this IEndpointRouteBuilder api)
    {
        var papers = api.MapGroup("/papers").WithTags("Papers");
        papers.MapGet("/history", GetHistory).WithSummary("What happened to one record, newest first");
        papers.MapGet("/changes", GetChanges).WithSummary("All changes of the ledger, newest first").WithMetadata(new InAreaAttribute("All changes"));
        papers.MapGet("/notes", GetNotes).WithSummary("The notes on a lot, an offer, a sample, a contract, a shipment or an arrival, newest first");
        papers.MapGet("/attachments", GetAttachments).WithSummary("The files attached to a lot, an offer, a sample, a contract, a shipment or an arrival, newest first");
        papers.MapGet("/attachments/{id}/file", GetFile).WithSummary("An attached file itself")
            .Produces(StatusCodes.Status200OK, contentType: "application/octet-stream");
        papers.MapPapersWriting();
    }

    /// <param name="kind">The kind of record, such as Lot or CuppingSession.</param>
    /// <param name="id">The record's identity.</param>
    private static async Task<Results<Ok<IReadOnlyList<ChangeAnswer>>, ProblemHttpResult>> GetHistory(
        string kind, string id, LedgerContext db, PapersReader papers, Reader reader, CancellationToken cancellationToken)
    {
        if (RecordKinds.RoomOf(db.Model, kind) is not { } room || !reader.MayRead(room))
        {
            return NotThere("There is no such kind of record, or it is not for your role.");
        }

        // Without an identity a page shows every record of a kind that it is itself about: a script names one.
        Rule.Require(!string.IsNullOrWhiteSpace(id), "Name the record by its identity.", nameof(id));
        var rows = await papers.HistoryAsync(new RecordOf(kind, id), cancellationToken);
        return TypedResults.Ok<IReadOnlyList<ChangeAnswer>>([.. rows.Select(ChangeAnswer.Of)]);
    }

    /// <param name="by">Only what this person did.</param>
    /// <param name="kind">Only records of this kind.</param>
    /// <param name="from">The first day by the clocks of the house, such as 2026-11-01.</param>
    /// <param name="to">The last day.</param>
    /// <param name="page">From 1; a page has 50 changes.</param>
    private static async Task<Ok<ChangesAnswer>> GetChanges(
        HistoryQuery history, Reader reader, CancellationToken cancellationToken,
        Id<Person>? by = null, string? kind = null, DateOnly? from = null, DateOnly? to = null, int page = 1)
    {
        var filter = new HistoryFilter(by, kind, from, to);
        var paging = Paging.Of(page, await history.CountAsync(filter, cancellationToken));
        var rows = await history.ListAsync(filter, paging.Skip, paging.Size, reader.MayRead, await reader.SealAsync(), cancellationToken);
        return TypedResults.Ok(new ChangesAnswer(paging.Total, paging.Page, paging.Pages, [.. rows.Select(ChangeAnswer.Of)]));
    }

    /// <param name="about">What the notes are on: lot, offer, sample, contract, shipment or arrival.</param>
    /// <param name="id">Its identity.</param>
    private static async Task<Results<Ok<IReadOnlyList<NoteAnswer>>, ProblemHttpResult>> GetNotes(
        string about, Guid id, PapersReader papers, CancellationToken cancellationToken)
    {
        var on = PapersOn.Read(about, id);
        if (await papers.FindNameAsync(on, cancellationToken) is null)
        {
            return NotThere($"There is no such {on.About.Word()}, or it is not for your role.");
        }

        var notes = (await papers.NotesAsync(on, cancellationToken)).Where(note => !note.IsRemoved).ToList();
        var names = await papers.NamesAsync(notes.Select(note => note.By), cancellationToken);
        return TypedResults.Ok<IReadOnlyList<NoteAnswer>>([.. notes.Select(note => new NoteAnswer(note.Id.Value, note.Text, names[note.By], note.At))]);
    }

    /// <param name="about">What the files are attached to: lot, offer, sample, contract, shipment or arrival.</param>
    /// <param name="id">Its identity.</param>
    private static async Task<Results<Ok<IReadOnlyList<AttachmentAnswer>>, ProblemHttpResult>> GetAttachments(
        string about, Guid id, PapersReader papers, CancellationToken cancellationToken)
    {
        var on = PapersOn.Read(about, id);
        if (await papers.FindNameAsync(on, cancellationToken) is null)
        {
            return NotThere($"There is no such {on.About.Word()}, or it is not for your role.");
        }

        var files = (await papers.AttachmentsAsync(on, cancellationToken)).Where(file => !file.IsRemoved).ToList();
        var names = await papers.NamesAsync(files.Select(file => file.By), cancellationToken);
        return TypedResults.Ok<IReadOnlyList<AttachmentAnswer>>([.. files.Select(file => new AttachmentAnswer(
            file.Id.Value, file.FileName, file.ContentType, file.SizeBytes, file.Sha256, names[file.By], file.At))]);
    }

    /// <param name="id">The attachment's identity.</param>
    private static async Task<Results<FileContentHttpResult, ProblemHttpResult>> GetFile(
        Guid id, PapersReader papers, HttpResponse response, CancellationToken cancellationToken)
    {
        if (await papers.FindFileAsync(new Id<Attachment>(id), cancellationToken) is not { } file)
        {
            return NotThere("There is no such attachment, or it is not for your role.");
        }

        AttachmentDownload.Guard(response);
        return TypedResults.File(file.Content!.Bytes, file.ContentType, file.Name);
    }

    private static ProblemHttpResult NotThere(string detail) =>
        TypedResults.Problem(detail, statusCode: StatusCodes.Status404NotFound, title: "Not found.");

    internal sealed record NoteAnswer(Guid Id, string Text, string By, DateTimeOffset At);

    internal sealed record AttachmentAnswer(
        Guid Id, string FileName, string ContentType, long SizeBytes, string Sha256, string By, DateTimeOffset At);

    internal sealed record ChangesAnswer(int Total, int Page, int Pages, IReadOnlyList<ChangeAnswer> Changes);

    /// <summary>One line of the history; the members stand under names that carry their unit.</summary>
    /// <param name="IsSealed">True where an open cupping session keeps the line from you; it then says nothing else.</param>
    internal sealed record ChangeAnswer(
        DateTimeOffset At, string? By, bool IsSealed, string? Kind, string? Id, string? Name, ChangeAct? Act, JsonElement? Before, JsonElement? After)
    {
        public static ChangeAnswer Of(HistoryRow row) => row.Change is { } line
            ? new ChangeAnswer(row.At, row.By, false, line.RecordKind, line.RecordId, line.RecordName, line.Act, Json(line.Before), Json(line.After))
            : new ChangeAnswer(row.At, null, true, null, null, null, null, null, null);

        private static JsonElement? Json(string? text) => text is null ? null : JsonElement.Parse(text);
    }
}
