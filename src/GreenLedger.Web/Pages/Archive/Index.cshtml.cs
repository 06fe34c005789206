using GreenLedger.Data;
using GreenLedger.Documents.Archive;
using GreenLedger.Domain;
using GreenLedger.Domain.People;
using GreenLedger.Web.Archive;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Archive;

/// <summary>The whole house as one archive, and who took it along.</summary>
internal sealed class IndexModel(LedgerContext db, HouseArchives archives) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public int PageNumber { get; set; } = 1;

    public Paging Paging { get; private set; } = Paging.Of(1, 0);

    public IReadOnlyList<TakingRow> Takings { get; private set; } = [];

    public int Files { get; private set; }

    public decimal Megabytes { get; private set; }

    /// <summary>Why it cannot be taken; null for nothing.</summary>
    public string? Trouble { get; private set; }

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        try
        {
            var taken = await archives.TakeAsync(User.Person(), cancellationToken);
            return File(taken.Stream, HouseArchive.MediaType, taken.FileName);
        }
        catch (RuleBrokenException broken)
        {
            Trouble = broken.Message;
            await LoadAsync(cancellationToken);
            return Page();
        }
    }

    private async Task LoadAsync(CancellationToken cancellationToken)
    {
        Files = await db.StoredFiles.CountAsync(cancellationToken);
        Megabytes = await db.StoredFiles.SumAsync(file => file.Size, cancellationToken) / 1_000_000m;
        Paging = Paging.Of(PageNumber, await db.ArchiveTakings.CountAsync(cancellationToken), "archive", "archives");
        Takings = await db.ArchiveTakings.AsNoTracking().OrderByDescending(taking => taking.At).Skip(Paging.Skip).Take(Paging.Size)
            .Join(db.People, taking => taking.By, person => person.Id, (taking, person) => new TakingRow(taking.At, person.Id, person.Name)).ToListAsync(cancellationToken);
    }

    internal sealed record TakingRow(DateTimeOffset At, Id<Person> By, string Name);
}
