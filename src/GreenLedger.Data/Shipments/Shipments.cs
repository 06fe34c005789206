using GreenLedger.Domain;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Shipments;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Shipments;

public static class Shipments
{
    /// <summary>With its lots, containers and documents.</summary>
    public static IQueryable<Shipment> Whole(this IQueryable<Shipment> shipments) => shipments
        .Include(shipment => shipment.Lots.OrderBy(lot => lot.Id))
        .Include(shipment => shipment.Containers.OrderBy(container => container.Number))
        .Include(shipment => shipment.Documents)
        .AsSplitQuery();

    /// <summary>Those whose number, bill of lading, vessel, port or container holds the text.</summary>
    public static IQueryable<Shipment> Holding(this IQueryable<Shipment> shipments, string? text)
    {
        var folded = SearchText.Of(text);
        return folded.Length == 0 ? shipments : shipments.Where(shipment => shipment.SearchText.Contains(folded));
    }

    /// <summary>Those that carry lots of any of the contracts.</summary>
    public static IQueryable<Shipment> OfContracts(this IQueryable<Shipment> shipments, IReadOnlyCollection<Id<Contract>> contracts) =>
        shipments.Where(shipment => shipment.Lots.Any(lot => contracts.Contains(lot.ContractId)));

    /// <summary>The next free number of a year: S26-003.</summary>
    public static Task<string> NextRefAsync(this IQueryable<Shipment> shipments, DateOnly on, CancellationToken cancellationToken) =>
        shipments.Select(shipment => shipment.Ref).NextAsync('S', on, cancellationToken);
}
