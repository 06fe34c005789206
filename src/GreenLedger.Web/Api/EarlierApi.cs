using GreenLedger.Domain;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Stock;
using GreenLedger.Domain.Stock.Reading;
using GreenLedger.Web.Contracts;
using GreenLedger.Web.Display;
using GreenLedger.Web.Papers;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Api;

/// <summary>Earlier contracts from a file, as the page takes them in.</summary>
internal static class EarlierApi
{
    public static void MapEarlierContracts(this IEndpointRouteBuilder contracts) => contracts
        .MapPostFile("/earlier", TakeAsync).WithName("LoadEarlierContracts").DisableAntiforgery().WithMetadata(new RequestSizeLimitAttribute(32 * 1024 * 1024))
        .WithSummary("Open contracts and past purchases from an XLSX or CSV file, one row for each lot of a contract; stored only with commit=true.")
        .WithDescription("`warehouseId`, `on`, `incoterm` and `formId` stand for rows that do not say it themselves. A contract that cannot be taken comes back row by row with the sentence that says why; one that the ledger has already is one of those.");

    private static async Task<Ok<EarlierReply>> TakeAsync(
        IFormFile file, EarlierContracts earlier, HouseZone house, HttpContext http, CancellationToken cancellationToken,
        [FromForm] bool commit = false, [FromForm] Guid? warehouseId = null, [FromForm] DateOnly? on = null, [FromForm] Incoterm? incoterm = null, [FromForm] Guid? formId = null)
    {
        var bytes = await file.BytesAsync(cancellationToken);
        var name = Path.GetFileName(file.FileName);
        var defaults = new EarlierDefaults(
            warehouseId is { } warehouse ? new Id<Warehouse>(warehouse) : null, on ?? house.Today, incoterm, formId is { } form ? new Id<StandardForm>(form) : null);
        var preview = commit
            ? await earlier.StoreAsync(name, bytes, null, http.User.Person(), defaults, cancellationToken)
            : await earlier.ReadAsync(name, bytes, null, http.User.Person(), defaults, cancellationToken);
        return TypedResults.Ok(EarlierReply.Of(preview, commit));
    }

    internal sealed record EarlierLotReply(int Row, string Lot, bool IsNewLot, int Bags, decimal NetKg, DateOnly? ArrivedOn, decimal? ReceivedKg, decimal? LeftKg, MoneyReply? LeftCost);

    internal sealed record EarlierContractReply(
        string Contract, Guid? Id, string Supplier, bool IsNewSupplier, GoodsState Goods, PriceState Price, string Agreed, decimal NetKg, string? OpenMonth, decimal OpenKg,
        IReadOnlyList<EarlierLotReply> Lots, IReadOnlyList<string> Shipments);

    internal sealed record EarlierSetAsideReply(int Row, string? Column, string Reason);

    internal sealed record EarlierReply(
        bool Stored, DateTimeOffset? TakenBefore, decimal NetKg, IReadOnlyList<EarlierContractReply> Contracts, IReadOnlyList<EarlierSetAsideReply> SetAside)
    {
        public static EarlierReply Of(EarlierPreview preview, bool isStored) => new(
            isStored, preview.TakenOn, preview.Net.Kilograms,
            [.. preview.Taking.Contracts.Select(one => Of(one, isStored))],
            [.. preview.Taking.SetAside.Select(one => new EarlierSetAsideReply(one.Row, one.Problem.Column, one.Problem.Message))]);

        private static EarlierContractReply Of(EarlierContract one, bool isStored) => new(
            one.Contract.Ref, isStored ? one.Contract.Id.Value : null, one.Supplier.Name, one.IsNewSupplier, one.Contract.Goods, one.Contract.Price, ContractFigures.Price(one.Contract.Terms.Price),
            one.Contract.NetWeight.Kilograms, one.Contract.OpenMonth?.ToString(), one.Contract.OpenWeight.Kilograms,
            [.. one.Lines.Select(line => new EarlierLotReply(
                line.Row.Line.RowNumber, line.Lot.Ref, line.IsNewLot, line.Row.Bags, line.Net.Kilograms, line.Row.Arrival?.On, line.Row.Arrival is { } arrival ? (arrival.Received ?? line.Net).Kilograms : null,
                line.Left?.Amount.Weighed.Kilograms, line.Left?.Cost is { } cost ? MoneyReply.Of(cost) : null))],
            isStored ? [.. one.Shipments.Select(shipment => shipment.Ref)] : []);
    }
}
