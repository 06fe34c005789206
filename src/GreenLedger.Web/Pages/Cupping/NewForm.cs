using System.ComponentModel.DataAnnotations;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;

namespace GreenLedger.Web.Pages.Cupping;

/// <summary>What whoever lays out a session chooses.</summary>
public sealed class NewForm
{
    [Required(ErrorMessage = "Give the session a title.")]
    public string? Title { get; set; }

    [Required(ErrorMessage = "Give the day of the cupping.")]
    [Display(Name = "Held on")]
    public DateOnly? HeldOn { get; set; }

    [Display(Name = "Form")]
    public Id<CuppingForm> FormId { get; set; } = CuppingForm.HundredPointId;

    [Display(Name = "Beside the score")]
    public Id<DescriptiveForm>? DescriptiveFormId { get; set; }

    [Display(Name = "Cups a sample")]
    public int CupsPerSample { get; set; } = FormRules.UsualCups;

    [Display(Name = "Cup (mL)")]
    public int CupMilliliters { get; set; }

    [Display(Name = "Dose (g a cup)")]
    public decimal? DoseGrams { get; set; }

    public string? Water { get; set; }

    public List<Id<Sample>> Samples { get; set; } = [];

    [Display(Name = "House reference")]
    public Id<Sample>? ReferenceId { get; set; }

    [Display(Name = "Hidden duplicates")]
    public int? Duplicates { get; set; }

    [Display(Name = "Codes in a flight, at most")]
    public int MostInFlight { get; set; }

    public List<Id<Person>> Cuppers { get; set; } = [];

    public List<Id<Person>> Pourers { get; set; } = [];

    /// <summary>What the house does at every table.</summary>
    internal void Show(CuppingHabits habits, DescriptiveForm newest)
    {
        CupMilliliters = habits.CupMilliliters;
        DoseGrams = null;
        Water = habits.Water;
        MostInFlight = habits.MostInFlight;
        DescriptiveFormId = habits.UsesDescriptiveForm ? newest.Id : null;
    }

    /// <summary>The dose is that of the house's ratio where none was said.</summary>
    internal TablePlan Plan(CuppingHabits habits) => new(
        CupMilliliters,
        DoseGrams is { } grams ? Weight.FromGrams(grams) : TablePlan.ProposedDose(CupMilliliters, habits.DosePerLiter.Grams),
        Water);
}
