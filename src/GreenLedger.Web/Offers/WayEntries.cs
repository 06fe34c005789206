using GreenLedger.Domain.Trace;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Offers;

/// <summary>How an entry on a lot's way is shown, and where its record stands.</summary>
internal static class WayEntries
{
    public static string Word(WayEntryKind kind) => kind.ToString().ToLowerInvariant();

    public static string Tag(WayOutcome outcome) => outcome switch
    {
        WayOutcome.Good => "tag tag-good",
        WayOutcome.Open => "tag tag-caution",
        WayOutcome.Bad => "tag tag-stop",
        _ => "tag",
    };

    public static string? Address(IUrlHelper url, WayEntry entry) => url.Page(Page(entry.Kind), new { id = entry.RecordId });

    private static string Page(WayEntryKind kind) => kind switch
    {
        WayEntryKind.Decision => "/Choosing/Decision",
        WayEntryKind.Contract or WayEntryKind.Fixing or WayEntryKind.Approval => "/Contracts/Contract",
        WayEntryKind.Shipment => "/Shipments/Shipment",
        WayEntryKind.Arrival => "/Arrivals/Arrival",
        WayEntryKind.Claim => "/Arrivals/Claim",
        WayEntryKind.Stock => "/Stock/Lot",
        _ => throw new ArgumentOutOfRangeException(nameof(kind)),
    };
}
