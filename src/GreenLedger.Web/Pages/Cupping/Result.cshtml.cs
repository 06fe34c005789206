using GreenLedger.Data;
using GreenLedger.Data.Cupping;
using GreenLedger.Documents.Layout;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Cupping.Reading;
using GreenLedger.Domain.Samples;
using GreenLedger.Web.Cupping;
using GreenLedger.Web.Display;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Cupping;

/// <summary>What a closed session says, how it was computed, and every sheet behind it.</summary>
public sealed class ResultModel(LedgerContext db, SessionQuery query) : PageModel
{
    /// <summary>Above this many samples the page leaves the single sheets to the workbook.</summary>
    public const int MostShown = 80;

    /// <summary>A sheet this many residual deviations from the fit is listed; common practice, no source.</summary>
    private const double FarFromFit = 2;

    private IReadOnlyList<TableSampleRow> _rows = [];

    [BindProperty(SupportsGet = true)]
    public Id<CuppingSession> Id { get; set; }

    public CuppingSession Session { get; private set; } = null!;

    /// <summary>What stood under the codes, by sample; a hidden duplicate is in <see cref="CodesOf"/>.</summary>
    public IReadOnlyDictionary<Id<Sample>, TableSampleRow> Key { get; private set; } = new Dictionary<Id<Sample>, TableSampleRow>();

    public Agreement? Agreement { get; private set; }

    /// <summary>How each cupper worked beside the others; empty where too few tasted the same samples.</summary>
    public IReadOnlyDictionary<string, CupperPerformance> Work { get; private set; } = new Dictionary<string, CupperPerformance>();

    public Spread? Spread { get; private set; }

    public IReadOnlyList<string> Notes { get; private set; } = [];

    public IReadOnlyList<Disagreement> Disagreements { get; private set; } = [];

    public IReadOnlyList<string> KeyOpenings { get; private set; } = [];

    /// <summary>Names of those who opened the key and scored.</summary>
    public IReadOnlyList<string> NotBlind { get; private set; } = [];

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (!await FindAsync(cancellationToken))
        {
            return NotFound();
        }

        if (!Session.IsClosed)
        {
            return RedirectToPage("Table", new { Id });
        }

        await ReadKeyAsync(cancellationToken);
        var scores = Scores();
        Agreement = Agreement.Of(scores);
        Work = CupperPerformance.Of(scores).ToDictionary(one => Session.Result!.Cuppers[one.Cupper].CupperKey);
        Spread = Session.Result!.Samples.Count <= MostShown ? Spread.Of(Session, Key) : null;
        Notes = [.. PanelNotes.Of(Session.Result!)];
        Disagreements = [.. Stated().Concat(Far())];
        KeyOpenings = await OpeningsAsync(cancellationToken);
        return Page();
    }

    public async Task<IActionResult> OnGetWorkbookAsync(CancellationToken cancellationToken)
    {
        if (!await FindAsync(cancellationToken) || !Session.IsClosed)
        {
            return NotFound();
        }

        await ReadKeyAsync(cancellationToken);
        return await this.WorkbookAsync(Session.Title, Columns(), Session.Sheets, cancellationToken);
    }

    /// <summary>The code of a sample, with that of its hidden duplicate behind it.</summary>
    public string CodesOf(Id<Sample> sample) => string.Join(" + ", _rows.Where(row => row.SampleId == sample).OrderBy(row => row.Repeat).Select(row => row.Code));

    /// <summary>The code under which this sheet's cups stood.</summary>
    public string CodeOf(ScoreSheet sheet) => _rows.First(row => row.SampleId == sheet.SampleId && row.Repeat == sheet.Repeat).Code;

    private async Task ReadKeyAsync(CancellationToken cancellationToken)
    {
        _rows = await query.KeyAsync(Id, cancellationToken);
        Key = _rows.Where(row => row.Repeat == 0).ToDictionary(row => row.SampleId);
    }

    private async Task<bool> FindAsync(CancellationToken cancellationToken)
    {
        var found = await db.CuppingSessions.AsNoTracking().Whole().SingleOrDefaultAsync(session => session.Id == Id, cancellationToken);
        Session = found!;
        return found is not null;
    }

    private List<PanelScore> Scores()
    {
        var place = Session.Samples.Where(sample => !sample.IsDuplicate).Select((sample, index) => (sample.SampleId, index)).ToDictionary(pair => pair.SampleId, pair => pair.index);
        var seat = Session.Result!.Cuppers.Select((cupper, index) => (cupper.CupperKey, index)).ToDictionary(pair => pair.CupperKey, pair => pair.index);
        return [.. Session.Sheets.Select(sheet => new PanelScore(place[sheet.SampleId], seat[sheet.CupperKey], (double)sheet.Unrounded.Points))];
    }

    private IEnumerable<Disagreement> Stated() => Session.Sheets
        .Where(sheet => sheet.StatedTotal is { } stated && Math.Abs(stated.Points - sheet.Total.Points) > ResultRow.Tolerance)
        .Select(sheet => new Disagreement(CodeOf(sheet), sheet.CupperName, "stated total", sheet.Total.Points, sheet.StatedTotal!.Value.Points));

    private IEnumerable<Disagreement> Far()
    {
        if (Session.Result is not { ErrorFrom: ErrorSource.OwnResidual, ResidualDeviation: { } deviation } result)
        {
            return [];
        }

        var effects = result.Cuppers.ToDictionary(cupper => cupper.CupperKey, cupper => cupper.Effect.Points);
        var fitted = result.Samples.ToDictionary(sample => sample.SampleId, sample => sample.Fitted.Points);
        return Session.Sheets
            .Select(sheet => (sheet, expected: fitted[sheet.SampleId] + effects[sheet.CupperKey]))
            .Where(pair => Math.Abs((double)(pair.sheet.Unrounded.Points - pair.expected)) > FarFromFit * (double)deviation.Points)
            .Select(pair => new Disagreement(CodeOf(pair.sheet), pair.sheet.CupperName, "far from the fit", pair.sheet.Unrounded.Points, pair.expected));
    }

    private async Task<IReadOnlyList<string>> OpeningsAsync(CancellationToken cancellationToken)
    {
        var ids = Session.KeyOpenings.Select(opening => opening.By).Distinct().ToList();
        var names = await db.People.Where(person => ids.Contains(person.Id)).ToDictionaryAsync(person => person.Id, person => person.Name, cancellationToken);
        NotBlind = [.. Session.NotBlind().Select(person => names[person])];
        return [.. Session.KeyOpenings.OrderBy(opening => opening.At).Select(opening => $"{names[opening.By]}, {Figures.Moment(opening.At)}")];
    }

    private TableColumn<ScoreSheet>[] Columns() =>
    [
        TableColumn<ScoreSheet>.Text("Code", CodeOf, 8),
        TableColumn<ScoreSheet>.Text("Label", sheet => Key[sheet.SampleId].LabelCode, 10),
        TableColumn<ScoreSheet>.Text("Lot", sheet => Key[sheet.SampleId].LotRef),
        TableColumn<ScoreSheet>.Text("Cupper", sheet => sheet.CupperName),
        .. Session.Form.Rules.Attributes.Select((line, index) => TableColumn<ScoreSheet>.Number(
            $"{line.Name} (points)", sheet => sheet.Arithmetic(Session.Form.Rules, Session.CupsPerSample).Attributes[index].Points)),
        TableColumn<ScoreSheet>.Number("Deducted (points)", sheet => sheet.Arithmetic(Session.Form.Rules, Session.CupsPerSample).Deductions.Sum(line => line.Points)),
        TableColumn<ScoreSheet>.Number("Total (points)", sheet => sheet.Total.Points, 4),
        TableColumn<ScoreSheet>.Number("Stated total (points)", sheet => sheet.StatedTotal?.Points, 4),
        TableColumn<ScoreSheet>.Number("Fitted score (points)", sheet => Session.Result!.Samples.Single(result => result.SampleId == sheet.SampleId).Fitted.Points, 4),
        TableColumn<ScoreSheet>.Text("Descriptors", sheet => string.Join(", ", sheet.Descriptors), 36),
        TableColumn<ScoreSheet>.Text("Note", sheet => sheet.Note, 36),
    ];

    /// <summary>A sheet that says something else than its stated total or than the fit.</summary>
    public sealed record Disagreement(string Code, string Cupper, string What, decimal Sheet, decimal Against);
}
