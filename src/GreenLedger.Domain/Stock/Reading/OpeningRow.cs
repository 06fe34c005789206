using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Stock.Reading;

/// <summary>One row of a file of opening stock, read and not yet compared with the ledger.</summary>
/// <param name="Row">As the sender's program counts, from 1.</param>
/// <param name="Lot">The reference or the name of a lot.</param>
/// <param name="Name">For a lot that the ledger does not know; null where the file has none.</param>
/// <param name="Warehouse">By its name; null where the file leaves it to whoever loads it.</param>
/// <param name="On">Null likewise.</param>
/// <param name="Document">The number of its invoice; null where the file has none.</param>
/// <param name="Cost">What all of it cost; null where the file does not say.</param>
public sealed record OpeningRow(
    int Row, string Lot, string? Name, string? Supplier, string? Country, string? Crop, string? Warehouse, StockAmount Amount, DateOnly? On, string? Document, Money? Cost);
