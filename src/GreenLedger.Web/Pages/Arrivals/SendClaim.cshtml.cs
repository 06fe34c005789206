using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Web.Mail;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Pages.Arrivals;

/// <summary>Sends the letter of a claim to contacts that receive claims.</summary>
internal sealed class SendClaimModel(LedgerContext db, LetterCases cases, Outbox outbox) : SendPage(db, outbox)
{
    [BindProperty(SupportsGet = true)]
    public Id<Claim> Id { get; set; }

    protected override IActionResult Back() => RedirectToPage("Claim", new { Id });

    protected override Task<LetterCase?> FindAsync(CancellationToken cancellationToken) => cases.ClaimAsync(Id, User.PersonName(), cancellationToken);
}
