using GreenLedger.Data;
using GreenLedger.Data.Samples;
using GreenLedger.Documents.Layout;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Samples;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Samples;

internal sealed class IndexModel(LedgerContext db, SampleQuery query, Reader reader, HouseZone house) : PageModel
{
    private const int MostExported = 100_000;

    [BindProperty(SupportsGet = true)]
    public string? Q { get; set; }

    [BindProperty(SupportsGet = true)]
    public SampleKind? Kind { get; set; }

    [BindProperty(SupportsGet = true)]
    public SampleStep? Waiting { get; set; }

    /// <summary>Only samples that stand at this step.</summary>
    [BindProperty(SupportsGet = true)]
    public SampleStep? At { get; set; }

    /// <summary>Only samples that stand at their step for longer than the house allows.</summary>
    [BindProperty(SupportsGet = true)]
    public bool Late { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? Sort { get; set; }

    [BindProperty(SupportsGet = true)]
    public int PageNumber { get; set; } = 1;

    public Paging Paging { get; private set; } = Paging.Of(1, 0);

    public IReadOnlyList<SampleRow> Samples { get; private set; } = [];

    public bool IsNarrowed => !string.IsNullOrWhiteSpace(Q) || Kind is not null || Waiting is not null || At is not null || Late;

    private LateRule _rule = new(new SampleHabits(), default, ClockZone.Utc);

    private SampleFilter Filter => new(Q, Kind, Waiting, Sort, At, Late ? _rule : null, WithExpected: true);

    /// <summary>How many samples are on the table of an open session and so not in the list.</summary>
    public int Sealed { get; private set; }

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadHabitsAsync(cancellationToken);
        var seal = await reader.SealAsync();
        Sealed = seal.IsOfEveryCoffee ? 0 : seal.Samples.Count;
        Paging = Paging.Of(PageNumber, await query.CountAsync(Filter, seal, cancellationToken), "sample", "samples");
        Samples = await query.ListAsync(Filter, seal, Paging.Skip, Paging.Size, cancellationToken);
    }

    public async Task<IActionResult> OnGetWorkbookAsync(CancellationToken cancellationToken)
    {
        await LoadHabitsAsync(cancellationToken);
        var rows = await query.ListAsync(Filter, await reader.SealAsync(), 0, MostExported, cancellationToken);
        return await this.WorkbookAsync("Samples", Columns, rows, cancellationToken);
    }

    /// <summary>Where a sample stands, for how many days, and whether that is too long; no days where its way has ended.</summary>
    public SampleStop? StandsOf(SampleRow row) =>
        SampleWay.Of([.. row.Taken], _rule.Habits, _rule.Today, row.IsWanted).LastOrDefault(stop => stop.State == StepState.Done);

    private async Task LoadHabitsAsync(CancellationToken cancellationToken) =>
        _rule = new LateRule(await db.SampleHabits.AsNoTracking().OfHouseAsync(cancellationToken), house.Today, house.Zone);

    private static readonly TableColumn<SampleRow>[] Columns =
    [
        TableColumn<SampleRow>.Text("Label", row => row.LabelCode, 10),
        TableColumn<SampleRow>.Text("Kind", row => SampleKinds.Word(row.Kind), 14),
        TableColumn<SampleRow>.Text("Lot", row => row.LotName, 36),
        TableColumn<SampleRow>.Text("Reference", row => row.LotRef),
        TableColumn<SampleRow>.Day("Received", row => row.ReceivedOn),
        TableColumn<SampleRow>.Number("Green (g)", row => row.Weight?.Grams, 0),
        TableColumn<SampleRow>.Text("Stands at", row => row.Stands?.Step.Word(), 12),
        TableColumn<SampleRow>.Day("Since", row => row.Stands?.On),
        TableColumn<SampleRow>.Day("Graded", row => row.GradedOn),
        TableColumn<SampleRow>.Day("Cupped", row => row.CuppedOn),
        TableColumn<SampleRow>.Number("Score (points)", row => row.Fitted?.Points, 4),
    ];
}
