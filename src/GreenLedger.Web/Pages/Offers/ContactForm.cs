using System.ComponentModel.DataAnnotations;
using GreenLedger.Domain.Offers;
using Microsoft.AspNetCore.Mvc.Rendering;

namespace GreenLedger.Web.Pages.Offers;

/// <summary>A page that shows the fields of a contact: the model of the partial <c>_ContactFields</c>.</summary>
public interface IContactPage
{
    ContactForm Input { get; }
}

/// <summary>What a contact of a supplier is described by, when it is added and when it is changed.</summary>
public sealed class ContactForm
{
    public int Version { get; set; }

    [Required(ErrorMessage = "The name of the contact is missing: please fill it in.")]
    public string? Name { get; set; }

    [Display(Name = "E-mail")]
    [Required(ErrorMessage = "The e-mail address is missing: please fill it in.")]
    public string? Email { get; set; }

    public string? Language { get; set; }

    /// <summary>The kinds that are ticked.</summary>
    public List<Receives> Receives { get; set; } = [];

    public static IReadOnlyList<SelectListItem> Languages { get; } = [.. SupplierForm.Languages.Where(language => SupplierContact.Languages.Contains(language.Value))];

    public Receives All() => Receives.Aggregate(Domain.Offers.Receives.Nothing, (all, kind) => all | kind);

    public static ContactForm Of(SupplierContact contact) => new()
    {
        Version = contact.Version,
        Name = contact.Name,
        Email = contact.Email,
        Language = contact.Language,
        Receives = [.. ReceivesWords.Kinds.Where(kind => contact.Receives.HasFlag(kind))],
    };
}
