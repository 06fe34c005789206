using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Stock;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Stock;

/// <summary>What page and API do alike with warehouses. Whoever calls saves.</summary>
public sealed class WarehouseActs(LedgerContext db)
{
    /// <exception cref="RuleBrokenException">There is no name, or another warehouse has it.</exception>
    public async Task<Warehouse> NameAsync(string? name, CancellationToken cancellationToken)
    {
        var warehouse = new Warehouse(name ?? "");
        await RequireFreeAsync(warehouse, cancellationToken);
        db.Add(warehouse);
        return warehouse;
    }

    /// <summary>Gives a warehouse another name.</summary>
    public Task CallAsync(Warehouse warehouse, string? name, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(warehouse);
        warehouse.Call(name ?? "");
        return RequireFreeAsync(warehouse, cancellationToken);
    }

    private async Task RequireFreeAsync(Warehouse warehouse, CancellationToken cancellationToken) => Rule.Require(
        !await db.Warehouses.AnyAsync(other => other.Id != warehouse.Id && other.SearchText == warehouse.SearchText, cancellationToken),
        "There is a warehouse of that name already: choose another name.",
        nameof(Warehouse.Name));
}
