using GreenLedger.Data;
using GreenLedger.Documents.Samples;
using GreenLedger.Domain;
using GreenLedger.Domain.Samples;
using GreenLedger.Web.People;
using GreenLedger.Web.Samples;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Samples;

/// <summary>The letter that asks for a sample, to print or to copy.</summary>
[InArea("Offers")]
internal sealed class LetterModel(LedgerContext db, Reader reader) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public Id<Sample> Id { get; set; }

    public SampleRequest Asked { get; private set; } = null!;

    public string? Email { get; private set; }

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken) =>
        await FindAsync(cancellationToken) ? Page() : NotFound();

    public async Task<IActionResult> OnGetPdfAsync(CancellationToken cancellationToken)
    {
        if (!await FindAsync(cancellationToken))
        {
            return NotFound();
        }

        var file = new MemoryStream();
        RequestLetter.Write(Asked, file);
        file.Position = 0;
        return File(file, RequestLetter.MediaType, $"samples-{Asked.On:yyyy-MM-dd}.pdf");
    }

    private async Task<bool> FindAsync(CancellationToken cancellationToken)
    {
        if (await db.Samples.AsNoTracking().SingleOrDefaultAsync(sample => sample.Id == Id, cancellationToken) is not { } sample
            || await RequestLetters.FindAsync(db, sample, await reader.SealAsync(), User.PersonName(), cancellationToken) is not { } letter)
        {
            return false;
        }

        (Asked, Email) = (letter.Request, letter.Email);
        return true;
    }
}
