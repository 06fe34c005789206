using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Roasting;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Roasting;

internal sealed class RoastModel(LedgerContext db, Reader reader) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public Id<SampleRoast> Id { get; set; }

    public SampleRoast Found { get; private set; } = null!;

    public string LabelCode { get; private set; } = "";

    public string LotName { get; private set; } = "";

    /// <summary>On a table where the reader cups: a note may name the coffee.</summary>
    public bool IsSealed { get; private set; }

    public string? Roaster { get; private set; }

    public string? WithdrawnBy { get; private set; }

    /// <summary>The windows that held when it was written down.</summary>
    public RoastWindows? Windows { get; private set; }

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (await db.SampleRoasts.AsNoTracking().WithWithdrawn().SingleOrDefaultAsync(roast => roast.Id == Id, cancellationToken) is not { } found)
        {
            return NotFound();
        }

        Found = found;
        LabelCode = await db.Samples.Where(sample => sample.Id == found.SampleId).Select(sample => sample.LabelCode).SingleAsync(cancellationToken);
        IsSealed = (await reader.SealAsync()).Covers(found.SampleId.Value);
        LotName = IsSealed ? "Shown when the open cupping session is closed" : await db.Lots.Where(lot => lot.Id == found.LotId).Select(lot => lot.Name).SingleAsync(cancellationToken);
        WithdrawnBy = await db.People.Where(person => person.Id == found.WithdrawnBy).Select(person => person.Name).SingleOrDefaultAsync(cancellationToken);
        Roaster = await db.People.Where(person => person.Id == found.By).Select(person => person.Name).SingleOrDefaultAsync(cancellationToken);
        Windows = (await db.RoastProtocols.AsNoTracking().SingleOrDefaultAsync(protocol => protocol.Id == found.ProtocolId, cancellationToken))?.Windows;
        return Page();
    }
}
