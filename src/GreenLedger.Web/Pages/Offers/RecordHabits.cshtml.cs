using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Domain.Summaries;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Pages.Offers;

/// <summary>How much the house wants behind a figure before it ranks by it.</summary>
public sealed class RecordHabitsModel(LedgerContext db) : FormPage
{
    [BindProperty]
    public HabitsForm Input { get; set; } = new();

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        var habits = await FindAsync(cancellationToken) ?? new RecordHabits();
        Input = new HabitsForm { Version = habits.Version, LeastNumber = habits.LeastNumber };
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var habits = await FindAsync(cancellationToken);
        if (habits is null)
        {
            habits = new RecordHabits();
            db.Add(habits);
        }
        else
        {
            OpenedOn(habits, Input.Version);
        }

        habits.Ask(Input.LeastNumber);
        await db.SaveChangesAsync(cancellationToken);
        Say("Records are ranked by this from now on.");
        return RedirectToPage("Records");
    }

    private Task<RecordHabits?> FindAsync(CancellationToken cancellationToken) => db.RecordHabits.StatedAsync(cancellationToken);

    public sealed class HabitsForm
    {
        public int Version { get; set; }

        [Display(Name = "Least number")]
        public int LeastNumber { get; set; }
    }
}
