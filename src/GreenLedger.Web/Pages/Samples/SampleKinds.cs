using GreenLedger.Domain.Samples;
using Microsoft.AspNetCore.Mvc.Rendering;

namespace GreenLedger.Web.Pages.Samples;

/// <summary>The words for kinds of samples.</summary>
public static class SampleKinds
{
    public static IReadOnlyList<SelectListItem> Choices { get; } =
        [.. Enum.GetValues<SampleKind>().Select(kind => new SelectListItem(Word(kind), kind.ToString()))];

    public static string Word(SampleKind kind) => kind switch
    {
        SampleKind.PreShipment => "pre-shipment",
        _ => kind.ToString().ToLowerInvariant(),
    };
}
