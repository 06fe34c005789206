using System.Text;
using GreenLedger.Documents.Due;
using GreenLedger.Domain.Due;

namespace GreenLedger.Documents.Tests.Due;

/// <summary>Held against RFC 5545 itself: lines, escapes, identities and whole days.</summary>
public sealed class DueCalendarTests
{
    private static readonly DateOnly Day = new(2026, 12, 31);

    [Fact] // RFC 5545 3.6.1: a day without times; its end is the day after and does not count
    public void A_line_is_a_whole_day_that_takes_up_no_time()
    {
        var lines = Unfolded(Write(Line("fix P26-014")));

        Assert.Equal(["BEGIN:VCALENDAR", "END:VCALENDAR"], [lines[0], lines[^1]]);
        Assert.Contains("VERSION:2.0", lines);
        Assert.Contains("DTSTART;VALUE=DATE:20261231", lines);
        Assert.Contains("DTEND;VALUE=DATE:20270101", lines);
        Assert.Contains("TRANSP:TRANSPARENT", lines);
        Assert.Contains("UID:fixing-019a0000000070008000000000000001@greenledger", lines);
        Assert.Contains("DTSTAMP:20261126T101500Z", lines);
    }

    [Fact] // handbook, trade, check value 78 (RFC 5545 3.3.11)
    public void Text_is_escaped() => Assert.Contains(@"SUMMARY:a\;b\,c\\d", Unfolded(Write(Line(@"a;b,c\d"))));

    [Fact] // RFC 5545 3.1: no line longer than 75 octets without its break; a break is CRLF and a space
    public void Lines_are_folded_at_75_octets()
    {
        var text = Write(Line(new string('x', 200) + " café–" + new string('é', 80)));

        Assert.All(text.Split("\r\n"), line => Assert.True(Encoding.UTF8.GetByteCount(line) <= 75, line));
        Assert.DoesNotContain('\n', text.Replace("\r\n", "", StringComparison.Ordinal));
        Assert.Contains(Unfolded(text), line => line == "SUMMARY:" + new string('x', 200) + " café–" + new string('é', 80));
    }

    [Fact] // RFC 5545 3.8.4.7: the identity stays, so that a calendar moves the event
    public void The_same_thing_keeps_its_identity_when_its_day_and_words_change()
    {
        var line = Line("fix P26-014");

        Assert.Equal(Uid(Write(line)), Uid(Write(line with { On = Day.AddDays(9), What = "fix less of P26-014" })));
        Assert.NotEqual(Uid(Write(line)), Uid(Write(line with { Part = "quality" })));
    }

    private static DueLine Line(string what) => new(DueKind.Fixing, Guid.Parse("019a0000-0000-7000-8000-000000000001"), what, "buyer", Day);

    private static string Write(DueLine line) =>
        DueCalendar.Write([line], "Sorrel Roasters", one => new Uri($"https://ledger.example/Contracts/Contract/{one.RecordId}"), new DateTimeOffset(2026, 11, 26, 10, 15, 0, TimeSpan.Zero));

    private static string Uid(string text) => Unfolded(text).Single(line => line.StartsWith("UID:", StringComparison.Ordinal));

    private static string[] Unfolded(string text) => text.Replace("\r\n ", "", StringComparison.Ordinal).Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
}
