using GreenLedger.Domain.Measures;
using Microsoft.AspNetCore.Mvc.Rendering;

namespace GreenLedger.Web.Display;

/// <summary>The time zones that a house chooses from: those of the IANA database that are named by a place.</summary>
internal static class TimeZones
{
    private static readonly string[] Continents = ["Africa/", "America/", "Antarctica/", "Asia/", "Atlantic/", "Australia/", "Europe/", "Indian/", "Pacific/"];

    public static IEnumerable<SelectListItem> Choices { get; } =
    [
        new SelectListItem("UTC", ClockZone.Utc.Name),
        .. TimeZoneInfo.GetSystemTimeZones()
            .Select(zone => zone.HasIanaId ? zone.Id : TimeZoneInfo.TryConvertWindowsIdToIanaId(zone.Id, out var iana) ? iana : "")
            .Where(name => Continents.Any(continent => name.StartsWith(continent, StringComparison.Ordinal)))
            .Distinct().Order(StringComparer.Ordinal)
            .Select(name => new SelectListItem(name.Replace('_', ' '), name)),
    ];
}
