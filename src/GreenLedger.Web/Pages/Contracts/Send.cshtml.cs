using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Contracts;
using GreenLedger.Web.Mail;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Pages.Contracts;

/// <summary>Sends the purchase confirmation to contacts that receive contract papers.</summary>
internal sealed class SendModel(LedgerContext db, LetterCases cases, Outbox outbox) : SendPage(db, outbox)
{
    [BindProperty(SupportsGet = true)]
    public Id<Contract> Id { get; set; }

    protected override IActionResult Back() => RedirectToPage("Contract", new { Id });

    protected override Task<LetterCase?> FindAsync(CancellationToken cancellationToken) => cases.ConfirmationAsync(Id, User.PersonName(), cancellationToken);
}
