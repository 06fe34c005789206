using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Pages.Arrivals;

/// <summary>Writes down what was said or written about a claim.</summary>
public sealed class NoteModel(LedgerContext db, HouseZone house, TimeProvider clock) : ClaimPage(db, house, clock)
{
    [BindProperty]
    public NoteForm Input { get; set; } = new();

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        (Input.Version, Input.On) = (Shown.Version, Today);
        return Page();
    }

    public Task<IActionResult> OnPostAsync(CancellationToken cancellationToken) => ActAsync(Input.Version, claim =>
    {
        claim.Note(Input.Side, Input.On!.Value, Input.Text ?? "", User.Person(), Now);
        return "Written down.";
    }, cancellationToken);

    public sealed class NoteForm
    {
        public int Version { get; set; }

        [Display(Name = "Who spoke")]
        public ClaimSide Side { get; set; }

        [Display(Name = "Day")]
        [Required(ErrorMessage = "On which day was it said or written?")]
        public DateOnly? On { get; set; }

        [Display(Name = "What was said")]
        public string? Text { get; set; }
    }
}
