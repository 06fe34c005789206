using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Data.Samples;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Samples;
using GreenLedger.Web.Cupping;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Rendering;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Cupping;

/// <summary>One cupper with bowls and a phone: a session of one's own, openly or with codes under the bowls.</summary>
internal sealed class AloneModel(LedgerContext db, SampleQuery query, AloneStart alone, Reader reader) : FormPage
{
    private const int Shown = 60;

    [BindProperty]
    public AloneForm Input { get; set; } = new();

    /// <summary>What narrows the samples to choose from.</summary>
    [BindProperty]
    public string? Find { get; set; }

    public SamplePicks Picks { get; private set; } = SamplePicks.None;

    public IReadOnlyList<SelectListItem> Forms { get; private set; } = [];

    public async Task OnGetAsync(Id<Sample>? sample, CancellationToken cancellationToken)
    {
        Input.Samples = sample is { } chosen ? [chosen] : [];
        await LoadAsync(cancellationToken);
        Input.Samples = sample is null && Picks.Rows.Count > 0 ? [Picks.Rows[0].Id] : Input.Samples;
    }

    /// <summary>Other samples to choose from; what was typed stays.</summary>
    public async Task<IActionResult> OnPostFindAsync(CancellationToken cancellationToken)
    {
        ModelState.Clear();
        await LoadAsync(cancellationToken);
        return Page();
    }

    public Task<IActionResult> OnPostAsync(CancellationToken cancellationToken) => StartAsync(Blinding.Open, cancellationToken);

    public Task<IActionResult> OnPostBlindAsync(CancellationToken cancellationToken) => StartAsync(Blinding.Undersides, cancellationToken);

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        var forms = await db.CuppingForms.AsNoTracking().OrderBy(form => form.Code).ThenByDescending(form => form.Revision).ToListAsync(cancellationToken);
        Forms = [.. forms.Select(form => new SelectListItem(form.ToString(), form.Id.ToString()))];
        Picks = await SamplePicks.OfAsync(query, Find, Input.Samples, await reader.SealAsync(), Shown, cancellationToken);
    }

    private async Task<IActionResult> StartAsync(Blinding blinding, CancellationToken cancellationToken)
    {
        var form = await db.CuppingForms.SingleAsync(form => form.Id == Input.FormId, cancellationToken);
        var session = await alone.StartAsync(Input.Samples, form, Input.CupsPerSample, blinding, User.Person(), cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        return RedirectToPage(blinding == Blinding.Undersides ? "Undersides" : "Cup", new { session.Id });
    }

    public sealed class AloneForm
    {
        [Display(Name = "Bowls a sample")]
        public int CupsPerSample { get; set; } = AloneStart.UsualCups;

        [Display(Name = "Form")]
        public Id<CuppingForm> FormId { get; set; } = CuppingForm.HundredPointId;

        public List<Id<Sample>> Samples { get; set; } = [];
    }
}
