using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Web.Mail;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Pages.Arrivals;

/// <summary>Sends both verdicts on an arrival to contacts that receive arrival reports.</summary>
internal sealed class SendArrivalModel(LedgerContext db, LetterCases cases, Outbox outbox) : SendPage(db, outbox)
{
    [BindProperty(SupportsGet = true)]
    public Id<Arrival> Id { get; set; }

    protected override IActionResult Back() => RedirectToPage("Arrival", new { Id });

    protected override Task<LetterCase?> FindAsync(CancellationToken cancellationToken) => cases.ArrivalAsync(Id, cancellationToken);
}
