using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Data.Cupping;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Cupping;

/// <summary>What the house does at every table, and the times of the protocol.</summary>
[InArea("Cupping, leading")]
public sealed class HabitsModel(LedgerContext db) : FormPage
{
    [BindProperty]
    public HabitsForm Input { get; set; } = new();

    /// <summary>Seconds after the pour as they were typed, by the key of the step.</summary>
    public IReadOnlyDictionary<string, int> Times { get; private set; } = new Dictionary<string, int>();

    public string? Reason { get; private set; }

    public TastingProtocol Protocol { get; private set; } = null!;

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        Input = HabitsForm.Of(await db.CuppingHabits.AsNoTracking().SingleAsync(cancellationToken));
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var habits = await db.CuppingHabits.SingleAsync(cancellationToken);
        OpenedOn(habits, Input.Version);
        habits.Change(Input.CupMilliliters, Weight.FromGrams(Input.DosePerLiterGrams), Input.Water, Input.MostInFlight, Input.UsesDescriptiveForm);
        habits.Expect(Input.StatedRepeatabilityPoints is { } points ? Score.Of(points) : null);
        await db.SaveChangesAsync(cancellationToken);
        Say("The next session begins with these.");
        return RedirectToPage("Habits");
    }

    public async Task<IActionResult> OnPostTimesAsync(Dictionary<string, int> times, string? reason, CancellationToken cancellationToken)
    {
        (Times, Reason) = (times, reason);
        Input = HabitsForm.Of(await db.CuppingHabits.AsNoTracking().SingleAsync(cancellationToken));
        var protocol = await db.NewestProtocolAsync(cancellationToken);
        db.Add(protocol.Retime(Times, Reason));
        await db.SaveChangesAsync(cancellationToken);
        Say("The next session goes by these times.");
        return RedirectToPage("Habits");
    }

    /// <summary>What was typed for a step, else its time.</summary>
    public int? TimeOf(TastingStep step) => Times.TryGetValue(step.Key, out var typed) ? typed : step.AfterSeconds;

    protected override async Task LoadAsync(CancellationToken cancellationToken) => Protocol = await db.NewestProtocolAsync(cancellationToken);

    public sealed class HabitsForm
    {
        public int Version { get; set; }

        [Display(Name = "Cup (mL)")]
        public int CupMilliliters { get; set; }

        [Display(Name = "Dose (g in a litre)")]
        public decimal DosePerLiterGrams { get; set; }

        public string? Water { get; set; }

        [Display(Name = "Codes in a flight, at most")]
        public int MostInFlight { get; set; }

        [Display(Name = "Beside the score")]
        public bool UsesDescriptiveForm { get; set; }

        [Display(Name = "Repeatability to keep (points)")]
        public decimal? StatedRepeatabilityPoints { get; set; }

        internal static HabitsForm Of(CuppingHabits habits) => new()
        {
            Version = habits.Version,
            CupMilliliters = habits.CupMilliliters,
            DosePerLiterGrams = habits.DosePerLiter.Grams,
            Water = habits.Water,
            MostInFlight = habits.MostInFlight,
            UsesDescriptiveForm = habits.UsesDescriptiveForm,
            StatedRepeatabilityPoints = habits.StatedRepeatability?.Points,
        };
    }
}
