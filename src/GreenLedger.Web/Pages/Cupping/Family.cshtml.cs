using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Data.Cupping;
using GreenLedger.Domain;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Cupping;

/// <summary>Renames a family of words; under the name of another one, the two become one.</summary>
[InArea("Cupping, leading")]
public sealed class FamilyModel(LedgerContext db) : FormPage
{
    [BindProperty]
    public FamilyForm Input { get; set; } = new();

    public IReadOnlyList<string> Families { get; private set; } = [];

    public async Task OnGetAsync(CancellationToken cancellationToken) => await LoadAsync(cancellationToken);

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var words = await db.Descriptors.Where(word => word.Family == Input.From).ToListAsync(cancellationToken);
        Rule.Require(words.Count > 0, "Choose the family to rename.", nameof(Input.From));
        words.ForEach(word => word.Sort(word.Word, Input.Family));
        await db.SaveChangesAsync(cancellationToken);
        Say($"“{Input.From}” is now “{Input.Family!.Trim()}”.");
        return RedirectToPage("Descriptors");
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken) => Families = await db.FamiliesAsync(cancellationToken);

    public sealed class FamilyForm
    {
        [Display(Name = "Family")]
        public string? From { get; set; }

        [Required(ErrorMessage = "Give the family a name.")]
        [Display(Name = "New name")]
        public string? Family { get; set; }
    }
}
