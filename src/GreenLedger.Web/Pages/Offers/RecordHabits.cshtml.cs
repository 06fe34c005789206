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
        Input = new HabitsForm { Version = habits.Version, LeastNumber = habits.LeastNumber, SeasonMonths = habits.SeasonMonths, SeasonLots = habits.SeasonLots, SeasonSuppliers = habits.SeasonSuppliers };
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
        habits.HoldBeside(Input.SeasonMonths, Input.SeasonLots, Input.SeasonSuppliers);
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

        [Display(Name = "Months of a season")]
        public int SeasonMonths { get; set; }

        [Display(Name = "Lots of others at the least")]
        public int SeasonLots { get; set; }

        [Display(Name = "Other suppliers at the least")]
        public int SeasonSuppliers { get; set; }
    }
}
