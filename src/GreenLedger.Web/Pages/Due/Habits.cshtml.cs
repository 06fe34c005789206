using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Domain.Due;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Pages.Due;

/// <summary>The days that the house allows where no contract dates anything.</summary>
public sealed class HabitsModel(LedgerContext db) : FormPage
{
    [BindProperty]
    public HabitsForm Input { get; set; } = new();

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        var habits = await FindAsync(cancellationToken) ?? new DueHabits();
        Input = new HabitsForm { Version = habits.Version, DocumentDays = habits.DocumentDays, ReceiptDays = habits.ReceiptDays, CuppingDays = habits.CuppingDays, NoticeDays = habits.NoticeDays, MailHour = habits.MailHour, PastDays = habits.PastDays, ApprovalDays = habits.ApprovalDays };
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var habits = await FindAsync(cancellationToken);
        if (habits is null)
        {
            habits = new DueHabits();
            db.Add(habits);
        }
        else
        {
            OpenedOn(habits, Input.Version);
        }

        habits.Allow(Input.DocumentDays, Input.ReceiptDays, Input.CuppingDays, Input.NoticeDays);
        habits.MailFrom(Input.MailHour);
        habits.Show(Input.PastDays, Input.ApprovalDays);
        await db.SaveChangesAsync(cancellationToken);
        Say("What is due is dated by these from now on.");
        return RedirectToPage("Habits");
    }

    private Task<DueHabits?> FindAsync(CancellationToken cancellationToken) => db.DueHabits.StatedAsync(cancellationToken);

    public sealed class HabitsForm
    {
        public int Version { get; set; }

        [Display(Name = "Documents within")]
        public int DocumentDays { get; set; }

        [Display(Name = "Received within")]
        public int ReceiptDays { get; set; }

        [Display(Name = "Cupped within")]
        public int CuppingDays { get; set; }

        [Display(Name = "Notice")]
        public int NoticeDays { get; set; }

        [Display(Name = "Shown after it passed")]
        public int PastDays { get; set; }

        [Display(Name = "Approvals ahead")]
        public int ApprovalDays { get; set; }

        [Display(Name = "Daily mails from")]
        public int MailHour { get; set; }
    }
}
