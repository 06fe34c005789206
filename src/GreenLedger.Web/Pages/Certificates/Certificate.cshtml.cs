using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Data.Certificates;
using GreenLedger.Domain;
using GreenLedger.Domain.Certificates;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Rendering;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Certificates;

/// <summary>A certificate with its file, and whether it counts.</summary>
public sealed class CertificateModel(LedgerContext db, CertificateQuery query, HouseZone house, TimeProvider clock) : FormPage
{
    /// <summary>The certificate.</summary>
    [BindProperty(SupportsGet = true)]
    public Id<Certificate> Id { get; set; }

    [BindProperty]
    public StandingForm Input { get; set; } = new();

    public HeldCertificate? Held { get; private set; }

    public CertificateHabits Habits { get; private set; } = new();

    public DateOnly Today => house.Today;

    public IEnumerable<SelectListItem> States => Enum.GetValues<CertificateState>().Select(state => new SelectListItem(state.Word(), state.ToString()));

    protected override bool IsThere => Held is not null;

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        if (Held is not { } held)
        {
            return NotFound();
        }

        Input = new StandingForm { Version = held.Certificate.Version, Standing = held.Certificate.Standing };
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        if (await db.Certificates.SingleOrDefaultAsync(one => one.Id == Id, cancellationToken) is not { } certificate)
        {
            return NotFound();
        }

        OpenedOn(certificate, Input.Version);
        certificate.Stand(Input.Standing, Input.StandingReason, User.Person(), clock.GetUtcNow());
        await db.SaveChangesAsync(cancellationToken);
        Say($"{certificate.Number} is {certificate.Standing.Word()} from now on.");
        return RedirectToPage();
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        Held = await query.FindAsync(Id, cancellationToken);
        Habits = await db.CertificateHabits.AsNoTracking().OfHouseAsync(cancellationToken);
    }

    public sealed class StandingForm
    {
        public int Version { get; set; }

        [Display(Name = "It is")]
        public CertificateState Standing { get; set; }

        [Display(Name = "Reason")]
        [Required(ErrorMessage = "Why? The reason is kept.")]
        public string? StandingReason { get; set; }
    }
}
