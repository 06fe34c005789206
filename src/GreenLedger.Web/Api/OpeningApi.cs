using GreenLedger.Domain;
using GreenLedger.Domain.Stock;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using GreenLedger.Web.Stock;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Api;

/// <summary>Opening stock from a file, as the page takes it in.</summary>
internal static class OpeningApi
{
    public static void MapOpeningApi(this IEndpointRouteBuilder stock) => stock
        .MapPostFile("/opening", TakeAsync).WithName("LoadOpeningStock").DisableAntiforgery().WithMetadata(new RequestSizeLimitAttribute(32 * 1024 * 1024))
        .WithSummary("Opening stock from an XLSX or CSV file, one row for each lot and warehouse; stored only with commit=true.")
        .WithDescription("`warehouseId` and `on` stand for rows that name no warehouse or day. A row that cannot be taken comes back with the sentence that says why; a row that the ledger has already is one of those.");

    private static async Task<Ok<OpeningReply>> TakeAsync(
        IFormFile file, OpeningStock opening, HouseZone house, HttpContext http, CancellationToken cancellationToken,
        [FromForm] bool commit = false, [FromForm] Guid? warehouseId = null, [FromForm] DateOnly? on = null)
    {
        using var bytes = new MemoryStream();
        await file.CopyToAsync(bytes, cancellationToken);
        var defaults = new OpeningDefaults(warehouseId is { } id ? new Id<Warehouse>(id) : null, on ?? house.Today);
        var preview = await opening.ReadAsync(Path.GetFileName(file.FileName), bytes.ToArray(), defaults, cancellationToken);
        if (commit)
        {
            await opening.StoreAsync(preview, http.User.Person(), cancellationToken);
        }

        return TypedResults.Ok(OpeningReply.Of(preview, commit));
    }

    internal sealed record OpeningLineReply(int Row, string Lot, bool IsNewLot, string Warehouse, DateOnly Day, int Bags, decimal PackedKg, decimal WeighedKg, MoneyReply? Cost);

    internal sealed record OpeningSetAsideReply(int Row, string? Column, string Reason);

    internal sealed record OpeningReply(bool Stored, decimal WeighedKg, IReadOnlyList<OpeningLineReply> Lines, IReadOnlyList<OpeningSetAsideReply> SetAside)
    {
        public static OpeningReply Of(OpeningPreview preview, bool isStored) => new(
            isStored, preview.Weighed.Kilograms,
            [.. preview.Lines.Select(line => new OpeningLineReply(
                line.Row.Row, line.Row.Lot, line.LotId is null, line.Warehouse.Name, line.On, line.Row.Amount.Bags, line.Row.Amount.Packed.Kilograms, line.Row.Amount.Weighed.Kilograms,
                line.Row.Cost is { } cost ? MoneyReply.Of(cost) : null))],
            [.. preview.SetAside.Select(one => new OpeningSetAsideReply(one.Row, one.Problem.Column, one.Problem.Message))]);
    }
}
