using System.Text.Json;
using GreenLedger.Data.Cupping;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.People;
using GreenLedger.Web.Api;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.Extensions.Options;

namespace GreenLedger.Web.Pages.Cupping;

/// <summary>One cupper's table on a phone. The page brings what the API says of it, so that it can go on without the network.</summary>
internal sealed class CupModel(CupperTableQuery query, TimeProvider clock, IOptions<Microsoft.AspNetCore.Http.Json.JsonOptions> json) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public Id<CuppingSession> Id { get; set; }

    public CupperTable Found { get; private set; } = null!;

    public Id<Person> Person => User.Person();

    public string Json => JsonSerializer.Serialize(TableReply.Of(Found, clock.GetUtcNow()), json.Value.SerializerOptions);

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (await query.FindAsync(Id, Person, cancellationToken) is not { } found)
        {
            return NotFound();
        }

        Found = found;
        return found.IsClosed ? RedirectToPage("Result", new { Id }) : Page();
    }
}
