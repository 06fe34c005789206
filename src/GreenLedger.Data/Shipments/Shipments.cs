using System.Globalization;
using GreenLedger.Domain;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Shipments;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;

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

    /// <summary>
    /// Begins the transaction in which a shipment gets its number: whoever else adds one waits until it ends, and then reads
    /// the number it took. Taken before <see cref="NextRefAsync"/>.
    /// </summary>
    public static async Task<IDbContextTransaction> NumberShipmentAsync(this LedgerContext db, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(db);
        var turn = await db.Database.BeginTransactionAsync(cancellationToken);
        await db.TakeTurnAsync(Turn.NumberingShipments, cancellationToken);
        return turn;
    }

    /// <summary>The next free number of a year: S26-003.</summary>
    public static async Task<string> NextRefAsync(this IQueryable<Shipment> shipments, DateOnly on, CancellationToken cancellationToken)
    {
        var start = string.Create(CultureInfo.InvariantCulture, $"S{on.Year % 100:00}-");
        var taken = await shipments.Where(shipment => shipment.Ref.StartsWith(start)).Select(shipment => shipment.Ref).ToListAsync(cancellationToken);
        var last = taken.Select(one => int.TryParse(one.AsSpan(start.Length), NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : 0).DefaultIfEmpty().Max();
        return start + (last + 1).ToString("000", CultureInfo.InvariantCulture);
    }
}
