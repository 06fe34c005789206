using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Data.Stock;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Stock;
using GreenLedger.Web.Display;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Stock;

/// <summary>How the house keeps and values its stock.</summary>
public sealed class HabitsModel(LedgerContext db, HouseZone house) : FormPage
{
    [BindProperty]
    public HabitsForm Input { get; set; } = new();

    /// <summary>The method that stock is to be valued by.</summary>
    [BindProperty]
    public ValuationMethod Method { get; set; }

    [BindProperty]
    public DateOnly? From { get; set; }

    public StockHabits Habits { get; private set; } = new();

    public Task OnGetAsync(CancellationToken cancellationToken) => LoadAsync(cancellationToken);

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var habits = await OpenAsync(cancellationToken);
        habits.Keep(
            Input.CountNeedsSecondPerson, Input.UseWeeks!.Value, Input.LeadDays!.Value, Input.LeadSpreadDays!.Value, Input.SafetyFactor!.Value,
            Percent.Of(Input.RoastLossPercent!.Value), Weight.FromGrams(Math.Clamp(Input.DoseGrams!.Value, -1m, 1_000_000m)));
        habits.Expect(Input.WayDays!.Value, Input.ShipsAfterMonths!.Value, Input.ShipsUntilMonths!.Value);
        habits.Watch(Input.PastCropMonths!.Value, Percent.Of(Input.MoistureDriftPoints!.Value));
        await db.SaveChangesAsync(cancellationToken);
        Say("Stock is kept by these from now on.");
        return RedirectToPage();
    }

    public async Task<IActionResult> OnPostValueAsync(CancellationToken cancellationToken)
    {
        Rule.Require(From is not null, "From which day on? Name the first day that is valued so.");
        var habits = await OpenAsync(cancellationToken);
        habits.Value(Method, From!.Value, house.Today);
        await db.SaveChangesAsync(cancellationToken);
        Say($"From {Display.Figures.Day(From.Value)} on stock is valued so: {Method.Word()}.");
        return RedirectToPage();
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        Habits = await db.StockHabits.AsNoTracking().Whole().OfHouseAsync(cancellationToken);
        if (!SendsHabits)
        {
            Input = HabitsForm.Of(Habits);
        }
    }

    /// <summary>Whether the upper form was sent; the lower one leaves it as it is stored.</summary>
    private bool SendsHabits => Request.HasFormContentType && Request.Form.ContainsKey("Input.Version");

    private async Task<StockHabits> OpenAsync(CancellationToken cancellationToken)
    {
        var habits = await db.StockHabits.Whole().StatedAsync(cancellationToken);
        if (habits is null)
        {
            habits = new StockHabits();
            db.Add(habits);
        }
        else if (SendsHabits)
        {
            OpenedOn(habits, Input.Version);
        }

        return habits;
    }

    public sealed class HabitsForm
    {
        public int Version { get; set; }

        [Display(Name = "A count is approved by")]
        public bool CountNeedsSecondPerson { get; set; }

        [Required(ErrorMessage = "Over how many weeks?")]
        [Display(Name = "Use of a week, over (weeks)")]
        public int? UseWeeks { get; set; }

        [Required(ErrorMessage = "How many days?")]
        [Display(Name = "Lead time (days)")]
        public int? LeadDays { get; set; }

        [Required(ErrorMessage = "How many days?")]
        [Display(Name = "Spread of the lead time (days)")]
        public int? LeadSpreadDays { get; set; }

        [Required(ErrorMessage = "How many standard deviations?")]
        [Display(Name = "Safety factor")]
        public decimal? SafetyFactor { get; set; }

        [Required(ErrorMessage = "How many days?")]
        [Display(Name = "On the way (days)")]
        public int? WayDays { get; set; }

        [Required(ErrorMessage = "How many months?")]
        [Display(Name = "Shipments begin after (months)")]
        public int? ShipsAfterMonths { get; set; }

        [Required(ErrorMessage = "How many months?")]
        [Display(Name = "Shipments end after (months)")]
        public int? ShipsUntilMonths { get; set; }

        [Required(ErrorMessage = "How many months?")]
        [Display(Name = "Past crop after (months)")]
        public int? PastCropMonths { get; set; }

        [Required(ErrorMessage = "How many percentage points?")]
        [Range(0, 10, ErrorMessage = "Moisture may move by more than 0 and at most 10 percentage points.")]
        [Display(Name = "Moisture may move by (percentage points)")]
        public decimal? MoistureDriftPoints { get; set; }

        [Required(ErrorMessage = "How many per cent?")]
        [Display(Name = "Roast loss (%)")]
        [Range(0, 50, ErrorMessage = "The roast loss lies between 0 and 50 %.")]
        public decimal? RoastLossPercent { get; set; }

        [Required(ErrorMessage = "How many grams?")]
        [Display(Name = "Roasted coffee in a cup (g)")]
        public decimal? DoseGrams { get; set; }

        internal static HabitsForm Of(StockHabits habits) => new()
        {
            Version = habits.Version,
            CountNeedsSecondPerson = habits.CountNeedsSecondPerson,
            UseWeeks = habits.UseWeeks,
            LeadDays = habits.LeadDays,
            LeadSpreadDays = habits.LeadSpreadDays,
            SafetyFactor = habits.SafetyFactor,
            WayDays = habits.WayDays,
            ShipsAfterMonths = habits.ShipsAfterMonths,
            ShipsUntilMonths = habits.ShipsUntilMonths,
            PastCropMonths = habits.PastCropMonths,
            MoistureDriftPoints = habits.MoistureDrift.Points,
            RoastLossPercent = habits.RoastLoss.Points,
            DoseGrams = habits.Dose.Grams,
        };
    }
}
