using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Offers;
using GreenLedger.Web.Arrivals;
using GreenLedger.Web.Mail;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Pages.Arrivals;

/// <summary>Sends the report on an arrival to contacts that receive arrival reports.</summary>
internal sealed class SendArrivalModel(LedgerContext db, LetterCases cases, ArrivalReports reports, Outbox outbox) : SendPage(db, outbox)
{
    [BindProperty(SupportsGet = true)]
    public Id<Arrival> Id { get; set; }

    protected override IActionResult Back() => RedirectToPage("Arrival", new { Id });

    protected override Task<LetterCase?> FindAsync(CancellationToken cancellationToken) => cases.ArrivalAsync(Id, Chosen, User.PersonName(), cancellationToken);

    protected override Task SentAsync(CancellationToken cancellationToken) => reports.KeepLanguageAsync(Case.Supplier, Case.Language(Chosen), cancellationToken);

    private string? Chosen => SupplierContact.Languages.Contains(Language) ? Language : null;
}
