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

namespace GreenLedger.Web.Pages.Cupping;

/// <summary>What a closed session says, how it was computed, and every sheet behind it.</summary>
public sealed class ResultModel(ResultQuery query, BlindTableQuery blind) : PageModel
{
    /// <summary>Above this many samples the page leaves the single sheets to the workbook.</summary>
    public const int MostShown = 80;

    /// <summary>Above this many pairs the page leaves them to the API.</summary>
    public const int MostPairs = 200;

    /// <summary>A sheet this many residual deviations from the fit is listed; common practice, no source.</summary>
    private const double FarFromFit = 2;

    [BindProperty(SupportsGet = true)]
    public Id<CuppingSession> Id { get; set; }

    public ClosedSession Found { get; private set; } = null!;

    public CuppingSession Session => Found.Session;

    public ResultDetail Detail { get; private set; } = null!;

    /// <summary>What stood under the codes, by sample; a hidden duplicate is in <see cref="CodesOf"/>.</summary>
    public IReadOnlyDictionary<Id<Sample>, TableSampleRow> Key { get; private set; } = new Dictionary<Id<Sample>, TableSampleRow>();

    public Spread? Spread { get; private set; }

    public ToldApart? ToldApart { get; private set; }

    public IReadOnlyList<string> Notes { get; private set; } = [];

    public IReadOnlyList<Disagreement> Disagreements { get; private set; } = [];

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (!await FindAsync(cancellationToken))
        {
            return await blind.FindAsync(Id, null, cancellationToken) is null ? NotFound() : RedirectToPage("Table", new { Id });
        }

        Detail = ResultDetail.Of(Session, Found.Descriptive);
        Spread = Session.Result!.Samples.Count <= MostShown ? Spread.Of(Session, Key) : null;
        ToldApart = Detail.Differences is { } differences ? ToldApart.Of(differences, Names()) : null;
        Notes = [.. PanelNotes.Of(Session.Result!)];
        Disagreements = [.. Stated().Concat(Far())];
        return Page();
    }

    public async Task<IActionResult> OnGetWorkbookAsync(CancellationToken cancellationToken)
    {
        if (!await FindAsync(cancellationToken))
        {
            return NotFound();
        }

        return await this.WorkbookAsync(Session.Title, Columns(), Session.Sheets, cancellationToken);
    }

    /// <summary>The code of a sample, with that of its hidden duplicate behind it.</summary>
    public string CodesOf(Id<Sample> sample) => string.Join(" + ", Found.Key.Where(row => row.SampleId == sample).OrderBy(row => row.Repeat).Select(row => row.Code));

    /// <summary>The code under which this sheet's cups stood.</summary>
    public string CodeOf(ScoreSheet sheet) => Found.Key.First(row => row.SampleId == sheet.SampleId && row.Repeat == sheet.Repeat).Code;

    /// <summary>What a sentence or a drawing calls each sample of the fit: its code and its label.</summary>
    public IReadOnlyList<string> Names() => [.. Detail.Scores.Samples.Select(Name)];

    public string Name(Id<Sample> sample) => $"{Key[sample].Code} · {Key[sample].LabelCode}";

    /// <summary>The discussed score that stands for a sample; null where none was written down.</summary>
    public decimal? DiscussedOf(Id<Sample> sample) => Found.DiscussedOf(sample)?.Points.Points;

    /// <summary>A cupper's name, marked where the cupper was not blind.</summary>
    public string Cupper(string key, string name) => Found.NotBlind.ContainsKey(key) ? $"{name} · not blind" : name;

    private async Task<bool> FindAsync(CancellationToken cancellationToken)
    {
        if (await query.FindAsync(Id, cancellationToken) is not { } found)
        {
            return false;
        }

        Found = found;
        Key = found.Key.Where(row => row.Repeat == 0).ToDictionary(row => row.SampleId);
        return true;
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
        TableColumn<ScoreSheet>.Number("Discussed score (points)", sheet => DiscussedOf(sheet.SampleId), 2),
        TableColumn<ScoreSheet>.Text("Discussed because", sheet => Found.DiscussedOf(sheet.SampleId)?.Reason, 36),
        TableColumn<ScoreSheet>.Number("Weight of the cupper", sheet => (decimal?)Session.Result!.Cuppers.FirstOrDefault(cupper => cupper.CupperKey == sheet.CupperKey)?.Weight, 2),
        TableColumn<ScoreSheet>.Text("Why it weighs so", sheet => Session.Result!.Cuppers.FirstOrDefault(cupper => cupper.CupperKey == sheet.CupperKey)?.WeightReason, 36),
        TableColumn<ScoreSheet>.Text("Descriptors", sheet => string.Join(", ", sheet.Descriptors), 36),
        TableColumn<ScoreSheet>.Text("Note", sheet => sheet.Note, 36),
    ];

    /// <summary>A sheet that says something else than its stated total or than the fit.</summary>
    public sealed record Disagreement(string Code, string Cupper, string What, decimal Sheet, decimal Against);
}
