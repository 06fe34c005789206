using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Documents.Offers;
using GreenLedger.Domain.Offers.Reading;
using GreenLedger.Web.Offers;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Pages.Offers;

[RequestSizeLimit(40 * 1024 * 1024)]
public sealed class ImportModel(LedgerContext db, ListLoading loading) : FormPage
{
    [BindProperty]
    public ImportForm Input { get; set; } = new();

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        using var bytes = new MemoryStream();
        await Input.File!.CopyToAsync(bytes, cancellationToken);
        var content = bytes.ToArray();
        ListLook.Of(OfferWorkbook.Head(content).Lines, Input.File.FileName);
        var file = await loading.ParkAsync(Input.File.FileName, Input.File.ContentType, content, User.Person(), cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        return RedirectToPage("Columns", new { file.Id, Input.Supplier });
    }

    public sealed class ImportForm
    {
        [Required(ErrorMessage = "Choose the file that the supplier sent.")]
        [Display(Name = "The list")]
        public IFormFile? File { get; set; }

        public string? Supplier { get; set; }
    }
}
