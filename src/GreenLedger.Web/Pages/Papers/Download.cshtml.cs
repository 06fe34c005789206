using GreenLedger.Domain;
using GreenLedger.Domain.Papers;
using GreenLedger.Web.Papers;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace GreenLedger.Web.Pages.Papers;

/// <summary>Hands an attachment out, as a download and as nothing else.</summary>
internal sealed class DownloadModel(PapersReader papers) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public Id<Attachment> Id { get; set; }

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (await papers.FindFileAsync(Id, cancellationToken) is not { } file)
        {
            return NotFound();
        }

        AttachmentDownload.Guard(Response);
        return File(file.Content!.Bytes, file.ContentType, file.Name);
    }
}
