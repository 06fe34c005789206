using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Data.Samples;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Samples;
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

    public async Task OnGetAsync(Id<Sample>? sample, CancellationToken cancellationToken)
    {
        Input.Samples = sample is { } chosen ? [chosen] : [];
        Input.HeldOn = DateOnly.FromDateTime(clock.GetLocalNow().DateTime);
        await LoadAsync(cancellationToken);
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        Rule.Require(Input.Samples.Count > 0, "Choose at least one sample for the table.", nameof(Input.Samples));
        var form = await db.CuppingForms.SingleAsync(form => form.Id == Input.FormId, cancellationToken);
        var session = new CuppingSession(Input.Title!, Input.HeldOn!.Value, form, Input.CupsPerSample, User.Person());
        var samples = await db.Samples.Where(sample => Input.Samples.Contains(sample.Id)).OrderBy(sample => sample.LabelCode).ToListAsync(cancellationToken);
        foreach (var sample in samples)
        {
            session.Pour(sample, Random.Shared);
        }

        db.Add(session);
        await db.SaveChangesAsync(cancellationToken);
        Say("The session is laid out. Open its key to see which sample goes under which code.");
        return RedirectToPage("Table", new { session.Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        var forms = await db.CuppingForms.AsNoTracking().OrderBy(form => form.Code).ThenByDescending(form => form.Revision).ToListAsync(cancellationToken);
        Forms = [.. forms.Select(form => new SelectListItem(form.ToString(), form.Id.ToString()))];
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
    }
}
