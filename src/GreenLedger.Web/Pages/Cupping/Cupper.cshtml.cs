using GreenLedger.Data;
using GreenLedger.Data.Cupping;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.People;
using GreenLedger.Web.Cupping;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Cupping;

/// <summary>One cupper's record, for the lead cupper.</summary>
[InArea("Cuppers' records")]
public sealed class CupperModel(LedgerContext db, CupperRecordQuery query) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public Id<Person> Id { get; set; }

    [BindProperty(SupportsGet = true)]
    public Id<CuppingForm>? Form { get; set; }

    public string Name { get; private set; } = "";

    public CupperRecordView? Found { get; private set; }

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (await db.People.AsNoTracking().SingleOrDefaultAsync(person => person.Id == Id, cancellationToken) is not { } person)
        {
            return NotFound();
        }

        Name = person.Name;
        Found = await CupperRecordView.FindAsync(query, Id, Form, cancellationToken);
        return Page();
    }
}
