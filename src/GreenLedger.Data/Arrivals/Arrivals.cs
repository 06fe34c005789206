using GreenLedger.Domain.Arrivals;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Arrivals;

public static class Arrivals
{
    /// <summary>With its receipt as it stood before each correction.</summary>
    public static IQueryable<Arrival> Whole(this IQueryable<Arrival> arrivals) =>
        arrivals.Include(arrival => arrival.Earlier.OrderBy(earlier => earlier.Number));
}
