using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Papers;
using GreenLedger.Web.Offers;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Offers;

/// <summary>A long list that is looked at or on its way in; it can be left and come back to.</summary>
public sealed class LoadingModel(LedgerContext db, IServiceProvider services) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public Id<Job> Id { get; set; }

    public Job Job { get; private set; } = null!;

    /// <summary>Whether the list is only looked at.</summary>
    public bool IsPreview => Job.Kind == PreviewWork.Preview;

    public string FileName { get; private set; } = "The list";

    /// <summary>The parked file, to choose the columns anew; null when it is not here any more.</summary>
    public Id<StoredFile>? FileId { get; private set; }

    public string Stage { get; private set; } = "";

    public int Done { get; private set; }

    public int Total { get; private set; }

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (!await LoadAsync(cancellationToken))
        {
            return NotFound();
        }

        return Job.State == JobState.Done ? LocalRedirect(Job.Outcome!) : Page();
    }

    /// <summary>The part of the page that htmx asks for again and again; it leads on once the list is stored.</summary>
    public async Task<IActionResult> OnGetProgressAsync(CancellationToken cancellationToken)
    {
        if (!await LoadAsync(cancellationToken))
        {
            return NotFound();
        }

        if (Job.State == JobState.Done)
        {
            Response.Headers["HX-Redirect"] = Job.Outcome;
        }

        return Partial("_Loading", this);
    }

    private async Task<bool> LoadAsync(CancellationToken cancellationToken)
    {
        var job = await db.Jobs.AsNoTracking().SingleOrDefaultAsync(one => one.Id == Id && (one.Kind == ListWork.Load || one.Kind == PreviewWork.Preview), cancellationToken);
        if (job is null)
        {
            return false;
        }

        Job = job;
        (Stage, Done, Total) = services.GetRequiredService<JobProgress>().Of(job);
        var fileId = new Id<StoredFile>(ListOrder.FromJson(job.Order).FileId);
        if (await db.StoredFiles.Where(file => file.Id == fileId).Select(file => file.Name).SingleOrDefaultAsync(cancellationToken) is { } name)
        {
            (FileId, FileName) = (fileId, name);
        }

        return true;
    }
}
