using GreenLedger.Domain.Due;
using Ical.Net;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using Ical.Net.Serialization;

namespace GreenLedger.Documents.Due;

/// <summary>What is due as a calendar by RFC 5545: a day for each line, which takes up no time.</summary>
public static class DueCalendar
{
    public const string MediaType = "text/calendar";

    /// <param name="lines">One event for each; its key is the event's identity, so that a calendar program moves it when its day moves.</param>
    /// <param name="house">Behind the identity, as RFC 5545 3.8.4.7 advises, and in the calendar's name.</param>
    /// <param name="address">The page where a line is done.</param>
    /// <param name="at">When it is written.</param>
    public static string Write(IEnumerable<DueLine> lines, string house, Func<DueLine, Uri> address, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(address);
        var calendar = new Calendar { ProductId = "-//GreenLedger//Due//EN" };
        calendar.AddProperty("X-WR-CALNAME", $"Due, {house}");
        foreach (var line in lines)
        {
            calendar.Events.Add(new CalendarEvent
            {
                Uid = $"{line.Key}@greenledger",
                DtStamp = new CalDateTime(at.UtcDateTime),
                Start = new CalDateTime(line.On),
                End = new CalDateTime(line.On.AddDays(1)),
                Summary = line.What,
                Description = $"By {line.By}.",
                Categories = [line.Kind.Word()],
                Url = address(line),
                Transparency = TransparencyType.Transparent,
            });
        }

        return new CalendarSerializer().SerializeToString(calendar) ?? "";
    }
}
