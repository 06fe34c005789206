using GreenLedger.Domain.Origins;

namespace GreenLedger.Domain.Stock;

/// <summary>What happens in an origin in one month.</summary>
public readonly record struct OriginMonth(bool IsHarvest, bool Ships);

/// <summary>Harvest and shipment of an origin, month by month.</summary>
public sealed record OriginYear(string Code, string Name, IReadOnlyList<OriginMonth> Months);

/// <summary>When the origins that could fill a gap pick and ship; indicative, from the months that the house keeps for each country.</summary>
public static class HarvestCalendar
{
    public const int MonthsOfYear = 12;

    /// <summary>
    /// Twelve months from a month on. Shipments begin so many months after the first month of the main harvest and end so many after
    /// its last. An origin whose harvest is not stated is left out.
    /// </summary>
    /// <param name="origins">Countries, in the order of the answer.</param>
    /// <param name="first">Any day of the first month.</param>
    public static IReadOnlyList<OriginYear> Of(IEnumerable<Country> origins, DateOnly first, StockHabits habits)
    {
        ArgumentNullException.ThrowIfNull(habits);
        return
        [
            .. origins.Where(origin => origin is { HarvestFrom: not null, HarvestTo: not null }).Select(origin => new OriginYear(origin.Code, origin.Name,
            [
                .. Enumerable.Range(0, MonthsOfYear).Select(ahead => first.AddMonths(ahead).Month).Select(month => new OriginMonth(
                    IsWithin(month, origin.HarvestFrom!.Value, origin.HarvestTo!.Value),
                    IsShipping(month, origin.HarvestFrom.Value, origin.HarvestTo.Value, habits))),
            ])),
        ];
    }

    /// <summary>A harvest and the wait after it may take so long that the year is full: then it ships in every month.</summary>
    private static bool IsShipping(int month, int from, int to, StockHabits habits)
    {
        var begins = from + habits.ShipsAfterMonths;
        var ends = (to < from ? to + MonthsOfYear : to) + habits.ShipsUntilMonths;
        return ends >= begins && (ends - begins >= MonthsOfYear - 1 || IsWithin(month, Wrapped(begins), Wrapped(ends)));
    }

    private static bool IsWithin(int month, int from, int to) => from <= to ? month >= from && month <= to : month >= from || month <= to;

    private static int Wrapped(int month) => ((month - 1) % MonthsOfYear) + 1;
}
