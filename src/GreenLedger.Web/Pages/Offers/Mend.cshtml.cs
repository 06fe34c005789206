using GreenLedger.Data.Offers;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Offers.Reading;
using GreenLedger.Web.Offers;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Pages.Offers;

/// <summary>One row that a list had set aside: mended here and taken in.</summary>
public sealed class MendModel(Mending mending, ListStore store, ListLoading loading, TimeProvider clock) : FormPage
{
    [BindProperty]
    public MendForm Input { get; set; } = new();

    [BindProperty(SupportsGet = true)]
    public Id<SetAsideRow> Id { get; set; }

    public SetAsideCase Set { get; private set; } = null!;

    protected override bool IsThere => Set is not null;

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        return IsThere ? Page() : NotFound();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        if (Set is null)
        {
            return NotFound();
        }

        OpenedOn(Set.Row, Input.Version);
        var line = Input.Onto(Set);
        var (row, problems) = ListReading.Mend(line, Set.Mapping, await store.ReferenceAsync(loading.Today, cancellationToken));
        if (row is null)
        {
            ShowFaults(problems);
            return Page();
        }

        var taken = await mending.TakeInAsync(Set, line.Cells, row, User.Person(), clock.GetUtcNow(), cancellationToken);
        Say($"Row {Set.Row.RowNumber} is taken in: {Words(taken)}");
        return RedirectToPage("List", new { Id = Set.List.Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        if (await mending.FindAsync(Id, cancellationToken) is { } set)
        {
            Set = set;
            Input = Input.Cells.Count == set.Mapping.Columns.Count ? Input : MendForm.Of(set);
        }
    }

    /// <summary>Each sentence beside the field that it is about; on top where it is about the row.</summary>
    private void ShowFaults(IReadOnlyList<Problem> problems)
    {
        foreach (var problem in problems)
        {
            var at = Input.Cells.ToList().FindIndex(cell => cell.Heading == problem.Column);
            ModelState.AddModelError(at < 0 ? "" : $"Input.Cells[{at}].Text", problem.Message);
        }
    }

    private static string Words(MendedRow taken) => taken switch
    {
        { IsNew: true } => $"{taken.Outcome.Offer.Ref} is a new offer.",
        { IsRevised: true } => $"{taken.Outcome.Offer.Ref} was known, and its offer is revised.",
        _ => $"{taken.Outcome.Offer.Ref} was known, and the row says nothing newer.",
    };
}
