using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Data.Samples;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Cupping.LayingOut;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;
using GreenLedger.Web.Cupping;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Rendering;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Cupping;

[InArea("Cupping, leading")]
internal sealed class NewModel(LedgerContext db, SampleQuery query, Reader reader, TimeProvider clock) : FormPage
{
    private const int Shown = 200;

    [BindProperty]
    public NewForm Input { get; set; } = new();

    public IReadOnlyList<SampleRow> Samples { get; private set; } = [];

    public IReadOnlyList<SelectListItem> Forms { get; private set; } = [];

    /// <summary>Who can cup or pour: everybody of the house who may write in this room.</summary>
    public IReadOnlyList<Person> People { get; private set; } = [];

    public async Task OnGetAsync(Id<Sample>? sample, CancellationToken cancellationToken)
    {
        Input.Samples = sample is { } chosen ? [chosen] : [];
        Input.HeldOn = DateOnly.FromDateTime(clock.GetLocalNow().DateTime);
        Input.Show(await db.CuppingHabits.AsNoTracking().SingleAsync(cancellationToken));
        await LoadAsync(cancellationToken);
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        Rule.Require(Input.Samples.Count > 0, "Choose at least one sample for the table.", nameof(Input.Samples));
        var form = await db.CuppingForms.SingleAsync(form => form.Id == Input.FormId, cancellationToken);
        var session = new CuppingSession(Input.Title!, Input.HeldOn!.Value, form, Input.CupsPerSample, User.Person());
        session.Prepare(Input.Plan(), null, Input.UsesDescriptiveForm ? await db.DescriptiveForms.FirstAsync(cancellationToken) : null);
        var samples = await db.Samples.Where(sample => Input.Samples.Contains(sample.Id)).ToListAsync(cancellationToken);
        var people = await db.People.Where(person => Input.Cuppers.Contains(person.Id) || Input.Pourers.Contains(person.Id)).ToListAsync(cancellationToken);
        new TableLayout(samples, people.FindAll(person => Input.Cuppers.Contains(person.Id)), people.FindAll(person => Input.Pourers.Contains(person.Id)))
            .Fill(session, new Unforeseeable());
        db.Add(session);
        await db.SaveChangesAsync(cancellationToken);
        Say("The session is laid out. Open its key to see which sample goes under which code.");
        return RedirectToPage("Table", new { session.Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        var forms = await db.CuppingForms.AsNoTracking().OrderBy(form => form.Code).ThenByDescending(form => form.Revision).ToListAsync(cancellationToken);
        Forms = [.. forms.Select(form => new SelectListItem(form.ToString(), form.Id.ToString()))];
        var active = await db.People.AsNoTracking().Where(person => person.IsActive).OrderBy(person => person.Name).ToListAsync(cancellationToken);
        People = active.FindAll(person => AreaAccess.Of("Cupping", person.Roles) == Access.Write);
        var seal = await reader.SealAsync();
        var waiting = await query.ListAsync(new SampleFilter(Waiting: SampleStep.Cupped), seal, 0, Shown, cancellationToken);
        var others = await query.ListAsync(new SampleFilter(), seal, 0, Shown, cancellationToken);
        Samples = [.. waiting.Concat(others).DistinctBy(row => row.Id).Take(Shown)];
    }

    public sealed class NewForm
    {
        [Required(ErrorMessage = "Give the session a title.")]
        public string? Title { get; set; }

        [Required(ErrorMessage = "Give the day of the cupping.")]
        [Display(Name = "Held on")]
        public DateOnly? HeldOn { get; set; }

        [Display(Name = "Form")]
        public Id<CuppingForm> FormId { get; set; } = CuppingForm.HundredPointId;

        [Display(Name = "Cups a sample")]
        public int CupsPerSample { get; set; } = FormRules.UsualCups;

        public List<Id<Sample>> Samples { get; set; } = [];

        public List<Id<Person>> Cuppers { get; set; } = [];

        public List<Id<Person>> Pourers { get; set; } = [];

        [Display(Name = "Cup (mL)")]
        public int CupMilliliters { get; set; }

        [Display(Name = "Dose (g a cup)")]
        public decimal? DoseGrams { get; set; }

        public string? Water { get; set; }

        [Display(Name = "Beside the score")]
        public bool UsesDescriptiveForm { get; set; }

        /// <summary>What the house does at every table.</summary>
        internal void Show(CuppingHabits habits)
        {
            CupMilliliters = habits.CupMilliliters;
            DoseGrams = TablePlan.ProposedDose(habits.CupMilliliters, habits.DosePerLiter.Grams).Grams;
            Water = habits.Water;
            UsesDescriptiveForm = habits.UsesDescriptiveForm;
        }

        /// <summary>Null where no cup was said.</summary>
        internal TablePlan? Plan() => CupMilliliters == 0 ? null : new TablePlan(CupMilliliters, Weight.FromGrams(DoseGrams ?? 0m), Water);
    }
}
