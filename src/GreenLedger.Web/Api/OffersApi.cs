using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Offers.Reading;
using GreenLedger.Domain.Papers;
using GreenLedger.Web.Offers;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Api;

/// <summary>Offer lists in, and the offers, lots and suppliers as rows.</summary>
internal static class OffersApi
{
    public static void MapOffersApi(this IEndpointRouteBuilder api)
    {
        var offers = api.MapGroup("/offers").WithTags("Offers");
        offers.MapOfferRows();
        offers.MapSupplierContacts();
        offers.MapSupplierRecords();
        offers.MapDiligence();
        offers.MapPostFile("/import", ImportAsync)
            .WithMetadata(new RequestSizeLimitAttribute(40 * 1024 * 1024))
            .WithSummary("Load an offer list")
            .WithDescription(
                "Send the list as received (XLSX, CSV or TSV). Without `supplier` (a name or an id) it is told from the headings, "
                + "the titles or the file's name; without `mapping` (JSON as this answer gives it back) the columns are proposed. "
                + "With `commit=false`, which is the default, nothing is stored.");
    }

    private static async Task<Ok<ImportAnswer>> ImportAsync(
        IFormFile? file,
        [FromForm] string? supplier,
        [FromForm] string? mapping,
        [FromForm] bool? commit,
        HttpContext http,
        ListLoading loading,
        TimeProvider clock,
        CancellationToken cancellationToken)
    {
        Rule.Require(file is not null, "Send the list as the multipart field 'file'.", "File");
        var by = http.User.Person();
        var bytes = await ReadAsync(file, cancellationToken);
        var received = new StoredFile(NameOf(file), file.ContentType ?? "application/octet-stream", bytes, by, clock.GetUtcNow());
        var given = string.IsNullOrWhiteSpace(mapping) ? null : OfferMapping.FromJson(mapping);
        var list = await loading.OpenAsync(received, supplier, given, cancellationToken);
        if (commit != true)
        {
            var preview = await loading.PreviewAsync(list, loading.Today, by, cancellationToken);
            return TypedResults.Ok(ImportAnswer.Of(list, preview, preview.Accepted, stored: false));
        }

        var accepted = new List<RowOutcome>();
        var (outcome, stored) = await loading.StoreAsync(list, loading.Today, by, cancellationToken, stored: accepted.Add);
        return TypedResults.Ok(ImportAnswer.Of(list, outcome, accepted, stored));
    }

    private static string NameOf(IFormFile file) => string.IsNullOrWhiteSpace(file.FileName) ? "offer list" : file.FileName;

    private static async Task<byte[]> ReadAsync(IFormFile file, CancellationToken cancellationToken)
    {
        using var bytes = new MemoryStream();
        await file.CopyToAsync(bytes, cancellationToken);
        return bytes.ToArray();
    }
}
