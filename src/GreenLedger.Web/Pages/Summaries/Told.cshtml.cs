using GreenLedger.Data.Summaries;
using GreenLedger.Documents.Summaries;
using GreenLedger.Domain;
using GreenLedger.Domain.Summaries;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace GreenLedger.Web.Pages.Summaries;

/// <summary>A PDF that a supplier was sent or handed, as it was then.</summary>
internal sealed class ToldModel(FeedbackCopyQuery query, Reader reader) : PageModel
{
    public async Task<IActionResult> OnGetAsync(Id<FeedbackCopy> id, CancellationToken cancellationToken) =>
        await query.FileAsync(id, await reader.SealAsync(), cancellationToken) is { } file ? File(file.Bytes, FeedbackPdf.MediaType, file.Name) : NotFound();
}
