using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Measures;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Pages.Arrivals;

/// <summary>How the house judges arrivals.</summary>
public sealed class HabitsModel(LedgerContext db) : FormPage
{
    [BindProperty]
    public HabitsForm Input { get; set; } = new();

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        var habits = await FindAsync(cancellationToken) ?? new ArrivalHabits();
        Input = new HabitsForm
        {
            Version = habits.Version,
            TolerancePoints = habits.Tolerance.Points,
            BetweenSessionsPoints = habits.BetweenSessions?.Points,
            LowestMoisturePercent = habits.LowestMoisture.Points,
            HighestMoisturePercent = habits.HighestMoisture.Points,
            WaterActivityBelow = habits.WaterActivityBelow?.Ratio,
            LeastOnStatedScreenPercent = habits.LeastOnStatedScreen?.Points,
        };
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var habits = await FindAsync(cancellationToken);
        if (habits is null)
        {
            habits = new ArrivalHabits();
            db.Add(habits);
        }
        else
        {
            OpenedOn(habits, Input.Version);
        }

        habits.Judge(Score.Of(Input.TolerancePoints!.Value), Input.BetweenSessionsPoints is { } between ? Score.Of(between) : null);
        habits.Limit(
            Percent.Of(Input.LowestMoisturePercent!.Value),
            Percent.Of(Input.HighestMoisturePercent!.Value),
            Input.WaterActivityBelow is { } activity ? WaterActivity.Of(activity) : null,
            Input.LeastOnStatedScreenPercent is { } share ? Percent.Of(share) : null);
        await db.SaveChangesAsync(cancellationToken);
        Say("Arrivals are judged by these from now on.");
        return RedirectToPage("Habits");
    }

    private Task<ArrivalHabits?> FindAsync(CancellationToken cancellationToken) => db.ArrivalHabits.StatedAsync(cancellationToken);

    public sealed class HabitsForm
    {
        public int Version { get; set; }

        [Required(ErrorMessage = "Give the tolerance in points; 0 for none.")]
        [Display(Name = "Tolerance of the cup (points)")]
        public decimal? TolerancePoints { get; set; }

        [Display(Name = "Between sessions (points)")]
        public decimal? BetweenSessionsPoints { get; set; }

        [Required(ErrorMessage = "Give the lowest moisture; 0 for none.")]
        [Range(0, 30, ErrorMessage = "Moisture lies between 0 and 30 %.")]
        [Display(Name = "Lowest moisture (%)")]
        public decimal? LowestMoisturePercent { get; set; }

        [Required(ErrorMessage = "Give the highest moisture.")]
        [Range(0, 30, ErrorMessage = "Moisture lies between 0 and 30 %.")]
        [Display(Name = "Highest moisture (%)")]
        public decimal? HighestMoisturePercent { get; set; }

        [Range(0, 1, ErrorMessage = "Water activity lies between 0 and 1.")]
        [Display(Name = "Water activity below")]
        public decimal? WaterActivityBelow { get; set; }

        [Range(0, 100, ErrorMessage = "The share lies between 0 and 100 %.")]
        [Display(Name = "Least share on the stated screen (%)")]
        public decimal? LeastOnStatedScreenPercent { get; set; }
    }
}
