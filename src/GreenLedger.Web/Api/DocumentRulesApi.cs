using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Shipments;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Api;

/// <summary>The documents that the house asks for, and with which shipments.</summary>
internal static class DocumentRulesApi
{
    public static void MapDocumentRules(this RouteGroupBuilder shipments)
    {
        shipments.MapGet("/document-rules", ListAsync).WithName("ListDocumentRules").WithSummary("The documents that the house asks for, those in use first.");
        shipments.MapPost("/document-rules", AddAsync).WithName("AddDocumentRule").WithSummary("Adds a document that the house asks for.");
        shipments.MapPut("/document-rules/{id}", ChangeAsync).WithName("ChangeDocumentRule").WithSummary("Changes a document that the house asks for.")
            .WithDescription("All of it is sent, with the version that was read; 409 when somebody was faster. `isInUse` false puts it away.");
    }

    private static async Task<Ok<List<DocumentRuleReply>>> ListAsync(LedgerContext db, CancellationToken cancellationToken) => TypedResults.Ok(
        (await db.DocumentRules.AsNoTracking().OrderByDescending(rule => rule.IsInUse).ThenBy(rule => rule.Position).ThenBy(rule => rule.Name).ToListAsync(cancellationToken)).ConvertAll(DocumentRuleReply.Of));

    private static async Task<Created<DocumentRuleReply>> AddAsync(DocumentRuleRequest request, LedgerContext db, CancellationToken cancellationToken)
    {
        var rule = new DocumentRule(request.Name, request.Position, request.Incoterms, request.Origins, request.Destinations, request.Certificate, request.Note);
        Use(rule, request.IsInUse);
        db.Add(rule);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Created("/api/shipments/document-rules", DocumentRuleReply.Of(rule));
    }

    private static async Task<Results<Ok<DocumentRuleReply>, NotFound>> ChangeAsync(Id<DocumentRule> id, DocumentRuleRequest request, LedgerContext db, CancellationToken cancellationToken)
    {
        if (await db.DocumentRules.SingleOrDefaultAsync(one => one.Id == id, cancellationToken) is not { } rule)
        {
            return TypedResults.NotFound();
        }

        db.Entry(rule).Property(one => one.Version).OriginalValue = request.Version;
        rule.Describe(request.Name, request.Position, request.Note);
        rule.Limit(request.Incoterms, request.Origins, request.Destinations, request.Certificate);
        Use(rule, request.IsInUse);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok(DocumentRuleReply.Of(rule));
    }

    private static void Use(DocumentRule rule, bool isInUse)
    {
        if (isInUse)
        {
            rule.TakeUp();
        }
        else
        {
            rule.PutAway();
        }
    }
}

/// <summary>A document that the house asks for; empty limits mean every shipment.</summary>
/// <param name="Position">Its place in the checklist, 0 to 999.</param>
/// <param name="Incoterms">Delivery rules with spaces between: FOB CIF.</param>
/// <param name="Origins">Countries by ISO 3166-1 with spaces between.</param>
/// <param name="Destinations">Countries by ISO 3166-1 with spaces between.</param>
/// <param name="Version">As it was read; for a new one of no meaning.</param>
internal sealed record DocumentRuleRequest(
    string Name, int Position, string? Incoterms = null, string? Origins = null, string? Destinations = null, string? Certificate = null, string? Note = null, bool IsInUse = true, int Version = 0);

/// <summary>A document that the house asks for.</summary>
internal sealed record DocumentRuleReply(
    Guid Id, int Version, string Name, int Position, string Incoterms, string Origins, string Destinations, string? Certificate, string? Note, bool IsInUse)
{
    public static DocumentRuleReply Of(DocumentRule rule) => new(
        rule.Id.Value, rule.Version, rule.Name, rule.Position, rule.Incoterms, rule.Origins, rule.Destinations, rule.Certificate, rule.Note, rule.IsInUse);
}
