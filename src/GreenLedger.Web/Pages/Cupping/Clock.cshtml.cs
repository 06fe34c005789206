using System.Text.Json;
using GreenLedger.Data.Cupping;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Web.Api;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.Extensions.Options;

namespace GreenLedger.Web.Pages.Cupping;

/// <summary>The table's clock, large enough for the whole room.</summary>
internal sealed class ClockModel(LiveTableQuery query, TimeProvider clock, IOptions<Microsoft.AspNetCore.Http.Json.JsonOptions> json) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public Id<CuppingSession> Id { get; set; }

    public LiveTable Found { get; private set; } = null!;

    public string Json => JsonSerializer.Serialize(
        new { Id = Found.Id.Value, Found.Protocol.Steps, Clock = ClockReply.Of(Found.Poured, Found.IsClosed, clock.GetUtcNow()) },
        json.Value.SerializerOptions);

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (await query.FindAsync(Id, cancellationToken) is not { } found)
        {
            return NotFound();
        }

        Found = found;
        return Page();
    }
}
