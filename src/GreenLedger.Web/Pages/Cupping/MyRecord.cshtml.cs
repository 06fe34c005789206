using GreenLedger.Data.Cupping;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Web.Cupping;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace GreenLedger.Web.Pages.Cupping;

/// <summary>The reader's own record as a cupper.</summary>
public sealed class MyRecordModel(CupperRecordQuery query) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public Id<CuppingForm>? Form { get; set; }

    public CupperRecordView? Found { get; private set; }

    public async Task OnGetAsync(CancellationToken cancellationToken) =>
        Found = await CupperRecordView.FindAsync(query, User.Person(), Form, cancellationToken);
}
