using GreenLedger.Data.Cupping;
using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Arrivals;

public static class Arrivals
{
    /// <summary>With its receipt as it stood before each correction.</summary>
    public static IQueryable<Arrival> Whole(this IQueryable<Arrival> arrivals) =>
        arrivals.Include(arrival => arrival.Earlier.OrderBy(earlier => earlier.Number));

    /// <summary>The closed sessions in which any of the samples was cupped: what cups are compared by.</summary>
    public static IQueryable<CuppingSession> ThatCupped(this IQueryable<CuppingSession> sessions, IReadOnlyCollection<Id<Sample>> samples) =>
        sessions.Closed().Whole().Where(session => session.Samples.Any(sample => samples.Contains(sample.SampleId))).OrderBy(session => session.Id);
}
