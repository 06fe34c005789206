using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Tests.Measures;

/// <summary>
/// Zones and their changes are those of the IANA time zone database: Amsterdam is UTC+1 and, from the last Sunday of March to
/// that of October at 01:00 UTC, UTC+2; Nairobi is UTC+3 and Kolkata UTC+5:30 all year; St. John's is UTC−3:30 in winter.
/// </summary>
public class ClockZoneTests
{
    [Theory]
    [InlineData("Europe/Amsterdam", "2026-11-26T13:05Z", "2026-11-26 14:05 UTC+1")]
    [InlineData("Europe/Amsterdam", "2026-07-01T13:05Z", "2026-07-01 15:05 UTC+2")]
    [InlineData("Africa/Nairobi", "2026-11-26T22:30Z", "2026-11-27 01:30 UTC+3")]
    [InlineData("Asia/Kolkata", "2026-11-26T13:05Z", "2026-11-26 18:35 UTC+5:30")]
    [InlineData("America/St_Johns", "2026-12-26T13:05Z", "2026-12-26 09:35 UTC−3:30")]
    [InlineData("Etc/UTC", "2026-11-26T13:05Z", "2026-11-26 13:05 UTC")]
    public void A_moment_is_shown_by_the_clock_on_the_wall_and_read_back_from_it(string name, string moment, string shown)
    {
        var zone = ClockZone.Of(name);
        var at = DateTimeOffset.Parse(moment, null);

        Assert.Equal(shown, FormattableString.Invariant($"{zone.Local(at):yyyy-MM-dd HH:mm} {zone.From(at)}"));
        Assert.Equal(at, zone.At(zone.Local(at), "RoastedAt"));
        Assert.Equal(DateOnly.FromDateTime(zone.Local(at)), zone.Day(at));
    }

    [Fact]
    public void An_hour_that_the_clocks_leave_out_is_refused_and_of_one_that_comes_twice_the_first_is_meant()
    {
        var zone = ClockZone.Of("Europe/Amsterdam");

        var refused = Assert.Throws<RuleBrokenException>(() => zone.At(new DateTime(2026, 3, 29, 2, 30, 0), "RoastedAt"));
        var twice = zone.At(new DateTime(2026, 10, 25, 2, 30, 0), "RoastedAt");

        Assert.Contains("no such time", refused.Message, StringComparison.Ordinal);
        Assert.Equal(new DateTimeOffset(2026, 10, 25, 0, 30, 0, TimeSpan.Zero), twice);
    }

    /// <summary>Egypt goes to summer time on the last Friday of April at midnight (law 24 of 2023): that day begins at one.</summary>
    [Theory]
    [InlineData("Pacific/Auckland", "2026-11-26", "2026-11-25T11:00:00Z")]
    [InlineData("Africa/Cairo", "2026-04-24", "2026-04-23T22:00:00Z")]
    [InlineData("Etc/UTC", "2026-11-26", "2026-11-26T00:00:00Z")]
    public void A_day_begins_at_the_first_moment_that_it_has(string name, string day, string moment)
    {
        var zone = ClockZone.Of(name);
        var begins = zone.Begins(DateOnly.Parse(day, null));

        Assert.Equal(DateTimeOffset.Parse(moment, null), begins);
        Assert.Equal((DateOnly.Parse(day, null), DateOnly.Parse(day, null).AddDays(-1)), (zone.Day(begins), zone.Day(begins.AddTicks(-1))));
    }

    [Theory]
    [InlineData("Mars/Olympus")]
    [InlineData("W. Europe Standard Time")]
    [InlineData("CET")]
    [InlineData("")]
    [InlineData(null)]
    public void A_zone_that_is_not_in_the_database_is_refused(string? name) =>
        Assert.Equal("TimeZone", Assert.Throws<RuleBrokenException>(() => ClockZone.Of(name)).Field);
}
