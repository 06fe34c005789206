using GreenLedger.Data;
using GreenLedger.Data.Cupping;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Cupping;

/// <summary>Puts a word of the house's list right, sorts it into another family, or stops offering it.</summary>
[InArea("Cupping, leading")]
public sealed class DescriptorModel(LedgerContext db) : FormPage
{
    [BindProperty(SupportsGet = true)]
    public Id<Descriptor> Id { get; set; }

    [BindProperty]
    public DescriptorForm Input { get; set; } = new();

    public IReadOnlyList<string> Families { get; private set; } = [];

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (await db.Descriptors.AsNoTracking().SingleOrDefaultAsync(word => word.Id == Id, cancellationToken) is not { } found)
        {
            return NotFound();
        }

        Input = new DescriptorForm { Version = found.Version, Word = found.Word, Family = found.Family, IsRetired = found.IsRetired };
        await LoadAsync(cancellationToken);
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        if (await db.Descriptors.SingleOrDefaultAsync(word => word.Id == Id, cancellationToken) is not { } found)
        {
            return NotFound();
        }

        OpenedOn(found, Input.Version);
        found.Sort(Input.Word, Input.Family);
        found.Retire(Input.IsRetired);
        await db.RequireNewWordAsync(found, cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        Say($"“{found.Word}” is saved.");
        return RedirectToPage("Descriptors");
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken) => Families = await db.FamiliesAsync(cancellationToken);
}
