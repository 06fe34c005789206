using System.ComponentModel.DataAnnotations;
using GreenLedger.Domain;
using GreenLedger.Web.Cupping;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Pages.Cupping;

[InArea("Cupping, leading")]
public sealed class ImportModel(PastResults past) : FormPage
{
    [BindProperty]
    public ImportForm Input { get; set; } = new();

    public async Task<IActionResult> OnPostReadAsync(CancellationToken cancellationToken)
    {
        Rule.Require(Input.File is not null, "Choose the file with the results.", nameof(Input.File));
        var file = await past.ParkAsync(Input.File, User.Person(), cancellationToken);
        return RedirectToPage("Preview", new { id = file });
    }

    public sealed class ImportForm
    {
        [Required(ErrorMessage = "Choose the file with the results.")]
        public IFormFile? File { get; set; }
    }
}
