using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Domain.Certificates;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Certificates;

/// <summary>Which day matters for which scheme, and when the house is told of an end.</summary>
public sealed class HabitsModel(LedgerContext db) : FormPage
{
    [BindProperty]
    public HabitsForm Input { get; set; } = new();

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        var habits = await db.CertificateHabits.AsNoTracking().OfHouseAsync(cancellationToken);
        Input = new HabitsForm { Version = habits.Version, FirstAlertDays = habits.FirstAlertDays, LastAlertDays = habits.LastAlertDays, ByContractDay = habits.ByContractDay };
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var habits = await db.ToChangeAsync<CertificateHabits>(Input.Version, cancellationToken);
        habits.Keep(Input.FirstAlertDays!.Value, Input.LastAlertDays!.Value, Input.ByContractDay);
        await db.SaveChangesAsync(cancellationToken);
        Say("Certificates are looked at by these from now on.");
        return RedirectToPage();
    }

    public sealed class HabitsForm
    {
        public int Version { get; set; }

        [Display(Name = "First alert (days before the end)")]
        [Required(ErrorMessage = "How many days before the end?")]
        public int? FirstAlertDays { get; set; }

        [Display(Name = "Last alert (days before the end)")]
        [Required(ErrorMessage = "How many days before the end?")]
        public int? LastAlertDays { get; set; }

        [Display(Name = "Schemes by the day that the contract was signed")]
        public string? ByContractDay { get; set; }
    }
}
