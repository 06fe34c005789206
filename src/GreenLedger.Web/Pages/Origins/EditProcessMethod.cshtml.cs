using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Origins;
using GreenLedger.Web.Origins;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Origins;

public sealed class EditProcessMethodModel(LedgerContext db, OriginActs acts) : FormPage
{
    [BindProperty(SupportsGet = true)]
    public Id<ProcessMethod> Id { get; set; }

    [BindProperty]
    public ProcessMethodForm Input { get; set; } = new();

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        var method = await db.ProcessMethods.SingleOrDefaultAsync(one => one.Id == Id, cancellationToken);
        if (method is null)
        {
            return NotFound();
        }

        Input = ProcessMethodForm.Of(method);
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var method = await db.ProcessMethods.SingleOrDefaultAsync(one => one.Id == Id, cancellationToken);
        if (method is null)
        {
            return NotFound();
        }

        OpenedOn(method, Input.Version);
        await acts.DescribeAsync(method, Input.Name, Input.Family, Input.Words, cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        Say("The method is changed.");
        return RedirectToPage("ProcessMethods");
    }
}
