using GreenLedger.Data.Cupping;
using GreenLedger.Documents.Cupping;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Samples;
using GreenLedger.Web.Display;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace GreenLedger.Web.Pages.Cupping;

/// <summary>The papers of an open table that everybody at it may hold: they say codes and no coffee. The key is not among them.</summary>
public sealed class PrintModel(TableOnPaperQuery query) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public Id<CuppingSession> Id { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? Sheet { get; set; } = LabelSheet.Usual[0].Code;

    /// <summary>The first free place of the sheet of labels, from 1.</summary>
    [BindProperty(SupportsGet = true)]
    public int From { get; set; } = 1;

    public TableOnPaper Table { get; private set; } = null!;

    public int Codes => Table.Flights.Sum(flight => flight.Codes.Count);

    public LabelPlace Place => new(Sheet, From);

    public string? Trouble { get; private set; }

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken) =>
        await FindAsync(cancellationToken) ? Page() : NotFound();

    public Task<IActionResult> OnGetPlanAsync(CancellationToken cancellationToken) =>
        PdfAsync(PlanPaper.Write, cancellationToken);

    public Task<IActionResult> OnGetSheetsAsync(CancellationToken cancellationToken) =>
        PdfAsync(SheetsPaper.Write, cancellationToken);

    public async Task<IActionResult> OnGetLabelsAsync(CancellationToken cancellationToken)
    {
        if (ModelState.IsValid && Place.Known is { } sheet)
        {
            return await PdfAsync((table, file) => CupLabels.Write(sheet, table, From, file), cancellationToken);
        }

        Trouble = Place.Trouble;
        return await OnGetAsync(cancellationToken);
    }

    private async Task<IActionResult> PdfAsync(Action<TableOnPaper, Stream> write, CancellationToken cancellationToken)
    {
        if (!await FindAsync(cancellationToken))
        {
            return NotFound();
        }

        var file = new MemoryStream();
        write(Table, file);
        file.Position = 0;
        return File(file, PlanPaper.MediaType);
    }

    private async Task<bool> FindAsync(CancellationToken cancellationToken)
    {
        if (await query.FindAsync(Id, cancellationToken) is not { } found)
        {
            return false;
        }

        Table = found;
        return true;
    }
}
