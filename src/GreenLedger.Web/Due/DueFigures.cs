using GreenLedger.Domain.Due;
using GreenLedger.Web.Display;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Due;

/// <summary>How a line of what is due is written for a person, and where it is done.</summary>
internal static class DueFigures
{
    /// <summary><c>today</c>, <c>12 days left</c>, <c>3 days late</c>.</summary>
    public static string DaysLeft(DueLine line, DateOnly today) => line.DaysLeft(today) switch
    {
        0 => "today",
        > 0 and var left => Figures.Count(left, "day left", "days left"),
        var late => Figures.Count(-late, "day late", "days late"),
    };

    public static string? Address(IUrlHelper url, DueLine line) => url.Page(Page(line.Kind), Values(line));

    /// <summary>What the page's address says besides: the record, or the step at which samples wait.</summary>
    public static object Values(DueLine line) => line.Kind == DueKind.Sample ? new { at = line.Part } : new { id = line.RecordId };

    /// <summary>The page that shows the record of such a line.</summary>
    public static string Page(DueKind kind) => kind switch
    {
        DueKind.Sample => "/Samples/Index",
        DueKind.Session => "/Cupping/Table",
        DueKind.Approval or DueKind.Fixing or DueKind.Shipment => "/Contracts/Contract",
        DueKind.Documents => "/Shipments/Shipment",
        DueKind.Certificate => "/Certificates/Certificate",
        DueKind.Reorder => "/Stock/Purpose",
        DueKind.Diligence => "/Offers/Diligence",
        DueKind.Receipt => "/Arrivals/Receive",
        DueKind.Missing => "/Arrivals/Missing",
        _ => "/Arrivals/Arrival",
    };
}
