using System.Globalization;

namespace GreenLedger.Domain.Measures;

/// <summary>The time zone in which a house reads its clocks, by its IANA name such as Africa/Nairobi.</summary>
public sealed record ClockZone
{
    private readonly TimeZoneInfo _zone;

    private ClockZone(string name, TimeZoneInfo zone)
    {
        Name = name;
        _zone = zone;
    }

    public static ClockZone Utc { get; } = new("Etc/UTC", TimeZoneInfo.Utc);

    public string Name { get; }

    /// <exception cref="RuleBrokenException">This machine knows no such zone.</exception>
    public static ClockZone Of(string? name, string field = "TimeZone")
    {
        var said = name?.Trim() ?? "";
        if (said == Utc.Name)
        {
            return Utc;
        }

        TimeZoneInfo? zone = null;
        var isKnown = said.Contains('/', StringComparison.Ordinal) && TimeZoneInfo.TryFindSystemTimeZoneById(said, out zone);
        Rule.Require(isKnown, $"'{said}' is no time zone: choose one by its IANA name, such as Europe/Amsterdam.", field);
        return new ClockZone(said, zone!);
    }

    /// <summary>What the clock on the wall shows at this moment.</summary>
    public DateTime Local(DateTimeOffset moment) => TimeZoneInfo.ConvertTime(moment, _zone).DateTime;

    public DateOnly Day(DateTimeOffset moment) => DateOnly.FromDateTime(Local(moment));

    /// <summary>The moment at which this day begins; where clocks go forward over midnight, the first moment that it has.</summary>
    public DateTimeOffset Begins(DateOnly day)
    {
        var shown = day.ToDateTime(TimeOnly.MinValue);
        while (_zone.IsInvalidTime(shown))
        {
            shown = shown.AddMinutes(15);
        }

        return At(shown, nameof(day));
    }

    /// <summary>
    /// The moment at which the clock on the wall shows this. When clocks go back an hour comes twice: the first of the two is
    /// meant.
    /// </summary>
    /// <exception cref="RuleBrokenException">Clocks go forward over this time, so that it never was.</exception>
    public DateTimeOffset At(DateTime local, string field)
    {
        var shown = DateTime.SpecifyKind(local, DateTimeKind.Unspecified);
        Rule.Require(!_zone.IsInvalidTime(shown), string.Create(CultureInfo.InvariantCulture, $"The clocks of {Name} went forward over {shown:d MMM yyyy, HH:mm}: there was no such time."), field);
        var offset = _zone.IsAmbiguousTime(shown) ? _zone.GetAmbiguousTimeOffsets(shown).Max() : _zone.GetUtcOffset(shown);
        return new DateTimeOffset(shown, offset);
    }

    /// <summary><c>UTC</c>, <c>UTC+1</c>, <c>UTC−3:30</c>: how far the zone's clocks are from UTC at this moment.</summary>
    public string From(DateTimeOffset moment)
    {
        var offset = _zone.GetUtcOffset(moment);
        return offset == TimeSpan.Zero ? "UTC" : string.Create(
            CultureInfo.InvariantCulture, $"UTC{(offset < TimeSpan.Zero ? '−' : '+')}{Math.Abs(offset.Hours)}{(offset.Minutes == 0 ? "" : $":{Math.Abs(offset.Minutes):00}")}");
    }

    public bool Equals(ClockZone? other) => other?.Name == Name;

    public override int GetHashCode() => Name.GetHashCode(StringComparison.Ordinal);

    public override string ToString() => Name;
}
