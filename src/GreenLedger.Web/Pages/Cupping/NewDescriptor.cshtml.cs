using GreenLedger.Data;
using GreenLedger.Data.Cupping;
using GreenLedger.Domain.Cupping;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Pages.Cupping;

/// <summary>Adds a word to the house's list.</summary>
[InArea("Cupping, leading")]
public sealed class NewDescriptorModel(LedgerContext db) : FormPage
{
    [BindProperty]
    public DescriptorForm Input { get; set; } = new();

    public IReadOnlyList<string> Families { get; private set; } = [];

    public async Task OnGetAsync(CancellationToken cancellationToken) => await LoadAsync(cancellationToken);

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var word = new Descriptor(Input.Word!, Input.Family!);
        await db.RequireNewWordAsync(word, cancellationToken);
        db.Add(word);
        await db.SaveChangesAsync(cancellationToken);
        Say($"“{word.Word}” is offered from now on.");
        return RedirectToPage("Descriptors");
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken) => Families = await db.FamiliesAsync(cancellationToken);
}
