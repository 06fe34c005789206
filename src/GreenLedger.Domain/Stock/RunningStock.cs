using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Stock;

/// <summary>What was in a holding at the end of each day on which something moved; balances are sums of movements.</summary>
public sealed class RunningStock
{
    private readonly List<(DateOnly On, StockAmount Left)> _days = [];

    public RunningStock(IEnumerable<(DateOnly On, StockAmount Amount)> movements)
    {
        ArgumentNullException.ThrowIfNull(movements);
        var left = StockAmount.None;
        foreach (var day in movements.GroupBy(movement => movement.On).OrderBy(day => day.Key))
        {
            left += StockAmount.Sum(day.Select(movement => movement.Amount));
            _days.Add((day.Key, left));
        }
    }

    /// <summary>The days of one holding as its ledger tells them, with what its bags hold by the papers it came with.</summary>
    public static RunningStock Of(IReadOnlyCollection<Movement> ledger) => new(ledger.Select(one => (one.On, one.Amount)))
    {
        Bag = PackedShare.BagOf(ledger.Where(one => one.Kind is MovementKind.Opening or MovementKind.Receipt).Select(one => one.Amount)),
    };

    public IReadOnlyList<(DateOnly On, StockAmount Left)> Days => _days;

    /// <summary>What a bag holds by the papers; null where that is not known.</summary>
    public Weight? Bag { get; init; }

    /// <summary>What was there at the end of a day; nothing before the first movement.</summary>
    public StockAmount At(DateOnly on) => _days.LastOrDefault(day => day.On <= on).Left;

    /// <summary>The least that was there at the end of a day or of any later one: no more can have left on that day.</summary>
    public StockAmount LeastFrom(DateOnly on)
    {
        var ends = _days.Where(day => day.On > on).Select(day => day.Left).Append(At(on)).ToList();
        return new StockAmount(
            ends.Min(end => end.Bags),
            new Weight(ends.Min(end => end.Packed.Micrograms)),
            new Weight(ends.Min(end => end.Weighed.Micrograms)));
    }
}
