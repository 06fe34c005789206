using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Stock;

/// <summary>
/// Coffee in a warehouse, told three ways that are never worked out from each other: bags, kilograms as packed (what the
/// papers say is in the bags) and kilograms as weighed (handbook, trade 1.1). The <c>default</c> is nothing.
/// </summary>
public readonly record struct StockAmount(int Bags, Weight Packed, Weight Weighed)
{
    public static StockAmount None => default;

    public static StockAmount operator +(StockAmount left, StockAmount right) =>
        new(checked(left.Bags + right.Bags), left.Packed + right.Packed, left.Weighed + right.Weighed);

    public static StockAmount operator -(StockAmount left, StockAmount right) => left + -right;

    public static StockAmount operator -(StockAmount amount) =>
        new(checked(-amount.Bags), new Weight(checked(-amount.Packed.Micrograms)), new Weight(checked(-amount.Weighed.Micrograms)));

    /// <summary>Whether bags and weights are all zero or above.</summary>
    public bool IsThere => Bags >= 0 && Packed >= Weight.Zero && Weighed >= Weight.Zero;

    public static StockAmount Sum(IEnumerable<StockAmount> amounts) => amounts.Aggregate(None, (sum, one) => sum + one);
}
