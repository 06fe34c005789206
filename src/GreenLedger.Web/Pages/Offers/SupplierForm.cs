using System.ComponentModel.DataAnnotations;
using GreenLedger.Domain.Offers;
using Microsoft.AspNetCore.Mvc.Rendering;

namespace GreenLedger.Web.Pages.Offers;

/// <summary>What a supplier is described by, when it is added and when it is changed.</summary>
public sealed class SupplierForm
{
    public int Version { get; set; }

    [Display(Name = "Name")]
    [Required(ErrorMessage = "The name of the supplier is missing: please fill it in.")]
    public string? Name { get; set; }

    public SupplierKind Kind { get; set; }

    [Display(Name = "Country")]
    [RegularExpression("^[A-Za-z]{2}$", ErrorMessage = "A country code has two letters (ISO 3166-1), such as CO.")]
    public string? CountryCode { get; set; }

    public string? Language { get; set; }

    [Display(Name = "E-mail")]
    [EmailAddress(ErrorMessage = "This is not an e-mail address: it needs a name, an @ and a domain.")]
    public string? Email { get; set; }

    public static IReadOnlyList<SelectListItem> Kinds { get; } =
        [.. Enum.GetValues<SupplierKind>().Select(kind => new SelectListItem(kind.Word(), kind.ToString()))];

    /// <summary>The languages in which lists are read and letters are written.</summary>
    public static IReadOnlyList<SelectListItem> Languages { get; } =
    [
        new("English", "en"), new("Spanish", "es"), new("Portuguese", "pt"), new("French", "fr"), new("German", "de"),
    ];

    public static SupplierForm Of(Supplier supplier) => new()
    {
        Version = supplier.Version,
        Name = supplier.Name,
        Kind = supplier.Kind,
        CountryCode = supplier.CountryCode,
        Language = supplier.Language,
        Email = supplier.Email,
    };
}
