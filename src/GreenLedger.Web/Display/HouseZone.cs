using GreenLedger.Data;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Web.Display;

/// <summary>Clock times as the house reads them. Its zone is asked for when the first is shown, and once in a request.</summary>
public sealed class HouseZone(LedgerContext db, TimeProvider clock)
{
    private ClockZone? _zone;

    public ClockZone Zone => _zone ??= ClockZone.Of(db.Houses.Select(house => house.TimeZone).SingleOrDefault() ?? ClockZone.Utc.Name);

    /// <summary>What the clock on the wall shows now, to the minute.</summary>
    public DateTime Now
    {
        get
        {
            var now = Zone.Local(clock.GetUtcNow());
            return now.AddTicks(-(now.Ticks % TimeSpan.TicksPerMinute));
        }
    }

    public DateOnly Today => Zone.Day(clock.GetUtcNow());

    public DateOnly Day(DateTimeOffset moment) => Zone.Day(moment);

    /// <summary><c>26 Nov 2026, 14:05 UTC+1</c>.</summary>
    public string Moment(DateTimeOffset moment) => Figures.Moment(moment, Zone);
}
