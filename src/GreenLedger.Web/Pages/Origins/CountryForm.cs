using System.ComponentModel.DataAnnotations;
using System.Globalization;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Origins;
using Microsoft.AspNetCore.Mvc.Rendering;

namespace GreenLedger.Web.Pages.Origins;

/// <summary>A country of origin with the habits of its trade.</summary>
public sealed class CountryForm
{
    public int Version { get; set; }

    [Display(Name = "Code")]
    public string? Code { get; set; }

    [Display(Name = "Name")]
    [Required(ErrorMessage = "The name of the country is missing: please fill it in.")]
    public string? Name { get; set; }

    [Display(Name = "Other names")]
    public string? OtherNames { get; set; }

    [Display(Name = "ICO code")]
    public string? IcoCode { get; set; }

    [Display(Name = "Crop year begins in")]
    public int? CropYearStart { get; set; }

    [Display(Name = "Harvest from")]
    public int? HarvestFrom { get; set; }

    [Display(Name = "Harvest to")]
    public int? HarvestTo { get; set; }

    [Display(Name = "Usual bag, kg net")]
    [Range(1, 2000, ErrorMessage = "A bag holds between 1 and 2000 kg.")]
    public decimal? UsualBagKg { get; set; }

    [Display(Name = "Ports of loading")]
    public string? Ports { get; set; }

    [Display(Name = "Risk of deforestation, Union list")]
    public bool IsLowRisk { get; set; }

    public static IReadOnlyList<SelectListItem> Months { get; } =
        [.. Enumerable.Range(1, 12).Select(month => new SelectListItem(
            CultureInfo.InvariantCulture.DateTimeFormat.GetMonthName(month), month.ToString(CultureInfo.InvariantCulture)))];

    public static CountryForm Of(Country country) => new()
    {
        Version = country.Version,
        Code = country.Code,
        Name = country.Name,
        OtherNames = string.Join(", ", country.OtherNames),
        IcoCode = country.IcoCode,
        CropYearStart = country.CropYearStart,
        HarvestFrom = country.HarvestFrom,
        HarvestTo = country.HarvestTo,
        UsualBagKg = country.UsualBag?.Kilograms,
        Ports = country.Ports,
        IsLowRisk = country.IsLowRisk,
    };

    public void Describe(Country country)
    {
        country.Rename(Name ?? "", (OtherNames ?? "").Split(',', StringSplitOptions.RemoveEmptyEntries));
        country.StateHarvest(CropYearStart, HarvestFrom, HarvestTo);
        country.StateTrade(IcoCode, UsualBagKg is { } kg ? Weight.FromKilograms(kg) : null, Ports);
        country.Judge(IsLowRisk);
    }
}
