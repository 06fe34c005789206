using GreenLedger.Data;
using GreenLedger.Documents.Summaries;
using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Contracts;
using GreenLedger.Web.Arrivals;
using GreenLedger.Web.Mail;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Http.HttpResults;

namespace GreenLedger.Web.Api;

/// <summary>Sending papers to contacts of a supplier by mail.</summary>
internal static class LettersApi
{
    public static void MapConfirmationLetter(this RouteGroupBuilder contracts) => contracts
        .MapPost("/{id}/confirmation/send", (Id<Contract> id, SendLetterRequest request, LedgerContext db, LetterCases cases, Outbox outbox, HttpContext http, CancellationToken stop) =>
            SendAsync(cases.ConfirmationAsync(id, http.User.PersonName(), stop), request, db, outbox, http, stop))
        .WithName("SendConfirmation").WithSummary("Sends the purchase confirmation to contacts that receive contract papers.").WithDescription(Once);

    public static void MapArrivalLetters(this RouteGroupBuilder arrivals)
    {
        arrivals.MapPost("/claims/{id}/letter/send", (Id<Claim> id, SendLetterRequest request, LedgerContext db, LetterCases cases, Outbox outbox, HttpContext http, CancellationToken stop) =>
            SendAsync(cases.ClaimAsync(id, http.User.PersonName(), stop), request, db, outbox, http, stop))
            .WithName("SendClaimLetter").WithSummary("Sends the letter of a claim to contacts that receive claims").WithDescription(Once);
        arrivals.MapGet("/{id}/report", ReportAsync).WithName("ReadArrivalReport").WithSummary("What the supplier hears of an arrival, a PDF in their language: how it came, weights, both panels, the verdict and the limits")
            .WithDescription("`language` is en, es, pt or fr; that of the supplier when left out.");
        arrivals.MapPost("/{id}/report/send", (Id<Arrival> id, SendLetterRequest request, LedgerContext db, LetterCases cases, Outbox outbox, HttpContext http, CancellationToken stop) =>
            SendAsync(cases.ArrivalAsync(id, request.Language, http.User.PersonName(), stop), request, db, outbox, http, stop))
            .WithName("SendArrivalReport").WithSummary("Sends the report on an arrival, a PDF, to contacts that receive arrival reports").WithDescription(Once);
    }

    private static async Task<Results<FileContentHttpResult, NotFound>> ReportAsync(Id<Arrival> id, ArrivalReports reports, HttpContext http, CancellationToken cancellationToken, string? language = null)
    {
        if (await reports.FindAsync(id, language, null, http.User.PersonName(), cancellationToken) is not { } found)
        {
            return TypedResults.NotFound();
        }

        using var file = new MemoryStream();
        ArrivalPdf.Write(found.Report, file);
        return TypedResults.File(file.ToArray(), ArrivalPdf.MediaType, found.Report.FileName + ".pdf");
    }

    private const string Once = "Without subject or text the usual words in the language are taken. With a `submission` of your own the same request sent again puts nothing more into the outbox.";

    private static async Task<Results<Accepted, NotFound>> SendAsync(
        Task<LetterCase?> finding, SendLetterRequest request, LedgerContext db, Outbox outbox, HttpContext http, CancellationToken cancellationToken)
    {
        if (await finding is not { } found)
        {
            return TypedResults.NotFound();
        }

        var to = request.To ?? [];
        var letter = found.To(to, request.Subject ?? found.Subject(request.Language), request.Text ?? found.Text(request.Language, http.User.PersonName()));
        await outbox.PutOnceAsync(request.Submission ?? Guid.NewGuid(), to, letter, http.User.Person(), cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Accepted("/api/summaries/messages");
    }
}

/// <summary>A paper to be sent.</summary>
/// <param name="To">Addresses of contacts that receive such papers.</param>
/// <param name="Language">en, es, pt or fr; that of the first contact when left out.</param>
/// <param name="Submission">One sending: the same again puts nothing more into the outbox.</param>
internal sealed record SendLetterRequest(IReadOnlyList<string>? To, string? Language = null, string? Subject = null, string? Text = null, Guid? Submission = null);
