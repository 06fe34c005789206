using GreenLedger.Data;
using GreenLedger.Data.Samples;
using GreenLedger.Documents.Samples;
using GreenLedger.Domain;
using GreenLedger.Domain.Samples;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Samples;

/// <summary>Labels for chosen samples; those that an open session keeps from the reader are left out.</summary>
internal sealed class LabelsModel(LedgerContext db, Reader reader) : PageModel
{
    private const int MostAtOnce = 500;

    [BindProperty(SupportsGet = true)]
    public List<Id<Sample>> Samples { get; set; } = [];

    [BindProperty(SupportsGet = true)]
    public string? Sheet { get; set; } = LabelSheet.Usual[0].Code;

    /// <summary>The first free place of the sheet, from 1.</summary>
    [BindProperty(SupportsGet = true)]
    public int From { get; set; } = 1;

    public IReadOnlyList<string> Codes { get; private set; } = [];

    public string? Trouble { get; private set; }

    public LabelPlace Place => new(Sheet, From);

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        var ids = Samples.Distinct().Take(MostAtOnce).ToList();
        Codes = await db.Samples.AsNoTracking().Unsealed(await reader.SealAsync())
            .Where(sample => ids.Contains(sample.Id)).Select(sample => sample.LabelCode).Order().ToListAsync(cancellationToken);
    }

    public async Task<IActionResult> OnGetPdfAsync(CancellationToken cancellationToken)
    {
        await OnGetAsync(cancellationToken);
        if (!ModelState.IsValid || Place.Known is not { } sheet)
        {
            Trouble = Place.Trouble;
            return Page();
        }

        if (Codes.Count == 0)
        {
            return Page();
        }

        var house = await db.Houses.Select(one => one.Name).SingleAsync(cancellationToken);
        var file = new MemoryStream();
        SampleLabels.Write(sheet, [.. Codes.Select(code => new PrintedLabel(code, AddressOf(code)))], From, house, file);
        file.Position = 0;
        return File(file, SampleLabels.MediaType);
    }

    private string AddressOf(string code) => $"{Request.Scheme}://{Request.Host}{Request.PathBase}/s/{code}";
}
