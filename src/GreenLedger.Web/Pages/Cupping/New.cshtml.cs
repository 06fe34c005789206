using GreenLedger.Data;
using GreenLedger.Data.Cupping;
using GreenLedger.Data.Samples;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Cupping.LayingOut;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;
using GreenLedger.Web.Cupping;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Rendering;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Cupping;

/// <summary>Lays out a session. What the choice gives is shown before anything is stored.</summary>
[InArea("Cupping, leading")]
internal sealed class NewModel(LedgerContext db, SampleQuery query, SessionQuery sessions, Reader reader, HouseZone house) : FormPage
{
    private const int Shown = 200;

    [BindProperty]
    public NewForm Input { get; set; } = new();

    /// <summary>What narrows the samples to choose from.</summary>
    [BindProperty]
    public string? Find { get; set; }

    public SamplePicks Picks { get; private set; } = SamplePicks.None;

    public IReadOnlyList<SelectListItem> Forms { get; private set; } = [];

    public IReadOnlyList<SelectListItem> DescriptiveForms { get; private set; } = [];

    public IReadOnlyList<SelectListItem> References { get; private set; } = [];

    /// <summary>What to take for a reference, as long as no session here has had one.</summary>
    public string? FirstReference { get; private set; }

    /// <summary>Who can cup or pour: everybody of the house who may write in this room.</summary>
    public IReadOnlyList<Person> People { get; private set; } = [];

    public CuppingHabits Habits { get; private set; } = null!;

    /// <summary>What the choice would give; null until it was asked for.</summary>
    public TableProposal? Proposal { get; private set; }

    /// <param name="sample">Those that are chosen from the start: an arrival and what was approved, for instance.</param>
    public async Task OnGetAsync(Id<Sample>[] sample, CancellationToken cancellationToken)
    {
        Input.Samples = [.. sample];
        Input.ReferenceId = await sessions.LastReferenceAsync(cancellationToken)
            ?? (await StockAsync(cancellationToken)).FirstOrDefault(row => !sample.Contains(row.Id))?.Id;
        Input.HeldOn = house.Today;
        await LoadAsync(cancellationToken);
        Input.Show(Habits, await db.NewestDescriptiveAsync(cancellationToken));
    }

    /// <summary>Other samples to choose from; stores nothing, and what was typed stays.</summary>
    public async Task<IActionResult> OnPostFindAsync(CancellationToken cancellationToken)
    {
        ModelState.Clear();
        await LoadAsync(cancellationToken);
        return Page();
    }

    /// <summary>Shows what the choice gives and stores nothing.</summary>
    public async Task<IActionResult> OnPostProposeAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        Proposal = (await LayoutAsync(cancellationToken)).Propose(Input.CupsPerSample, await Errors.ExpectedAsync(db, cancellationToken), new Unforeseeable());
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        Rule.Require(Input.Samples.Count > 0, "Choose at least one sample for the table.", nameof(Input.Samples));
        var form = await db.CuppingForms.SingleAsync(form => form.Id == Input.FormId, cancellationToken);
        var habits = await db.CuppingHabits.AsNoTracking().SingleAsync(cancellationToken);
        var session = new CuppingSession(Input.Title!, Input.HeldOn!.Value, form, Input.CupsPerSample, User.Person());
        session.Prepare(
            Input.Plan(habits),
            await db.NewestProtocolAsync(cancellationToken),
            await db.DescriptiveForms.SingleOrDefaultAsync(one => one.Id == Input.DescriptiveFormId, cancellationToken));
        var layout = await LayoutAsync(cancellationToken);
        layout.Fill(session, await sessions.RecentCodesAsync(cancellationToken), new Unforeseeable());
        db.Add(session);
        await db.SaveChangesAsync(cancellationToken);
        Say("The session is laid out. Whoever pours opens its key to see which sample goes under which code.");
        return RedirectToPage("Table", new { session.Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        Habits = await db.CuppingHabits.AsNoTracking().SingleAsync(cancellationToken);
        var forms = await db.CuppingForms.AsNoTracking().OrderBy(form => form.Code).ThenByDescending(form => form.Revision).ToListAsync(cancellationToken);
        Forms = [.. forms.Select(form => new SelectListItem(form.ToString(), form.Id.ToString()))];
        var descriptive = await db.DescriptiveForms.AsNoTracking().OrderBy(form => form.Name).ThenByDescending(form => form.Revision).ToListAsync(cancellationToken);
        DescriptiveForms = [new SelectListItem("nothing", ""), .. descriptive.Select(form => new SelectListItem(form.ToString(), form.Id.ToString()))];
        var active = await db.People.AsNoTracking().Where(person => person.IsActive).OrderBy(person => person.Name).ToListAsync(cancellationToken);
        People = active.FindAll(person => AreaAccess.Of("Cupping", person.Roles) == Access.Write);
        Picks = await SamplePicks.OfAsync(query, Find, [.. Input.Samples, .. Input.ReferenceId is { } reference ? [reference] : Array.Empty<Id<Sample>>()], await reader.SealAsync(), Shown, cancellationToken);
        await LoadReferencesAsync(cancellationToken);
    }

    /// <summary>The house's own stock first: of a reference there must be enough to be poured again and again.</summary>
    private async Task LoadReferencesAsync(CancellationToken cancellationToken)
    {
        var stock = await StockAsync(cancellationToken);
        var (own, others) = (new SelectListGroup { Name = "Own stock" }, new SelectListGroup { Name = "Other samples" });
        References =
        [
            new SelectListItem("none", ""),
            .. stock.Concat(Picks.Rows).DistinctBy(row => row.Id)
                .Select(row => new SelectListItem($"{row.LabelCode} · {row.LotName}", row.Id.ToString()) { Group = row.Kind == SampleKind.Stock ? own : others })
                .OrderBy(item => item.Group == others),
        ];
        FirstReference = await sessions.LastReferenceAsync(cancellationToken) is not null ? null
            : stock.Count > 0 ? "No session here has had a house reference yet. The newest sample of your own stock is proposed: keep it, choose another, or none."
            : "No session here has had a house reference yet, and no stock sample is here that could be proposed: choose any sample of a coffee that the house knows well and has enough of, or none.";
    }

    private async Task<IReadOnlyList<SampleRow>> StockAsync(CancellationToken cancellationToken) =>
        await query.ListAsync(new SampleFilter(Kind: SampleKind.Stock), await reader.SealAsync(), 0, Shown, cancellationToken);

    private async Task<TableLayout> LayoutAsync(CancellationToken cancellationToken)
    {
        var samples = await db.Samples.Where(sample => Input.Samples.Contains(sample.Id) || sample.Id == Input.ReferenceId).ToListAsync(cancellationToken);
        var seal = await reader.SealAsync();
        Rule.Require(
            !samples.Exists(sample => seal.Covers(sample.Id.Value)),
            "One of these samples stands on a table where you cup: choose it again when that session is closed.", nameof(Input.Samples));
        var people = await db.People.Where(person => Input.Cuppers.Contains(person.Id) || Input.Pourers.Contains(person.Id))
            .OrderBy(person => person.Name).ToListAsync(cancellationToken);
        return new TableLayout(
            samples.FindAll(sample => Input.Samples.Contains(sample.Id)),
            samples.Find(sample => sample.Id == Input.ReferenceId),
            Input.Duplicates,
            people.FindAll(person => Input.Cuppers.Contains(person.Id)),
            people.FindAll(person => Input.Pourers.Contains(person.Id)),
            Input.MostInFlight);
    }
}
