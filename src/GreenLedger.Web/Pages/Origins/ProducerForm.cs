using System.ComponentModel.DataAnnotations;
using GreenLedger.Domain.Origins;
using Microsoft.AspNetCore.Mvc.Rendering;

namespace GreenLedger.Web.Pages.Origins;

/// <summary>What a producer is described by, when it is added and when it is changed.</summary>
public sealed class ProducerForm
{
    public int Version { get; set; }

    [Display(Name = "Name")]
    [Required(ErrorMessage = "The name of the producer is missing: please fill it in.")]
    public string? Name { get; set; }

    public ProducerKind Kind { get; set; }

    [Display(Name = "Country")]
    public string? CountryCode { get; set; }

    public string? Region { get; set; }

    public string? Place { get; set; }

    [Display(Name = "Altitude from, m")]
    public int? AltitudeFrom { get; set; }

    [Display(Name = "Altitude to, m")]
    public int? AltitudeTo { get; set; }

    public static IReadOnlyList<SelectListItem> Kinds { get; } =
        [.. Enum.GetValues<ProducerKind>().Select(kind => new SelectListItem(kind.Word(), kind.ToString()))];

    public static ProducerForm Of(Producer producer) => new()
    {
        Version = producer.Version,
        Name = producer.Name,
        Kind = producer.Kind,
        CountryCode = producer.CountryCode,
        Region = producer.Region,
        Place = producer.Place,
        AltitudeFrom = producer.AltitudeFrom,
        AltitudeTo = producer.AltitudeTo,
    };

    public void Describe(Producer producer)
    {
        producer.Describe(Name ?? "", Kind, CountryCode, Region, Place);
        producer.StateAltitude(AltitudeFrom, AltitudeTo);
    }
}
