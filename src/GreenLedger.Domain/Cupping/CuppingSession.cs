using System.Globalization;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;

namespace GreenLedger.Domain.Cupping;

/// <summary>
/// Samples cupped together on one form: laid out under blind codes, a sheet per cupper and sample, then closed, which
/// computes the panel's result. Nothing is written to a closed session.
/// </summary>
public sealed partial class CuppingSession
{
    /// <summary>Three digits from 100 to 999; a session with more samples gets four digits.</summary>
    private const int FewestCodes = 900;

    private readonly List<SessionSample> _samples = [];
    private readonly List<ScoreSheet> _sheets = [];
    private readonly List<KeyOpening> _keyOpenings = [];
    private readonly HashSet<(Id<Sample> Sample, string Cupper)> _pastKeys = [];

    private CuppingSession()
    {
        Title = "";
        SearchText = "";
        Form = null!;
    }

    private CuppingSession(string title, DateOnly heldOn, CuppingForm form, int cupsPerSample, bool isPast)
    {
        ArgumentNullException.ThrowIfNull(form);
        Rule.Require(form.Rules.CupCounts.Contains(cupsPerSample), $"This form is cupped with {string.Join(", ", form.Rules.CupCounts)} cups a sample.", nameof(CupsPerSample));
        Id = Id<CuppingSession>.New();
        Title = Rule.Text(title, "The title", field: nameof(Title));
        SearchText = Measures.SearchText.Of(Title);
        HeldOn = heldOn;
        Form = form;
        FormId = form.Id;
        CupsPerSample = cupsPerSample;
        IsPast = isPast;
    }

    public CuppingSession(string title, DateOnly heldOn, CuppingForm form, int cupsPerSample, Id<Person> laidOutBy)
        : this(title, heldOn, form, cupsPerSample, isPast: false)
    {
        LaidOutBy = laidOutBy;
    }

    public Id<CuppingSession> Id { get; private set; }

    public int Version { get; private set; }

    public string Title { get; private set; }

    public string SearchText { get; private set; }

    public DateOnly HeldOn { get; private set; }

    public Id<CuppingForm> FormId { get; private set; }

    public CuppingForm Form { get; private set; }

    public int CupsPerSample { get; private set; }

    /// <summary>How every cup is made; null where nobody said.</summary>
    public TablePlan? Plan => CupMilliliters is { } cup && Dose is { } dose ? new TablePlan(cup, dose, Water) : null;

    /// <summary>Water of a full cup, in mL.</summary>
    public int? CupMilliliters { get; private set; }

    /// <summary>Whole beans weighed for one cup.</summary>
    public Weight? Dose { get; private set; }

    public string? Water { get; private set; }

    /// <summary>The steps at this table and their times; null for the protocol as delivered.</summary>
    public Id<TastingProtocol>? ProtocolId { get; private set; }

    /// <summary>The descriptive form beside the score form; null for a table without.</summary>
    public Id<DescriptiveForm>? DescriptiveFormId { get; private set; }

    public Blinding Blinding { get; private set; }

    /// <summary>True for results taken in from a file; such a session was never open here.</summary>
    public bool IsPast { get; private set; }

    /// <summary>The file that past results came from.</summary>
    public Id<StoredFile>? SourceId { get; private set; }

    public Id<Person>? LaidOutBy { get; private set; }

    public DateTimeOffset? ClosedAt { get; private set; }

    public Id<Person>? ClosedBy { get; private set; }

    public bool IsClosed => ClosedAt is not null;

    public IReadOnlyList<SessionSample> Samples => _samples;

    public IReadOnlyList<ScoreSheet> Sheets => _sheets;

    /// <summary>Who looked up which lot is behind a code while the session was open, and when.</summary>
    public IReadOnlyList<KeyOpening> KeyOpenings => _keyOpenings;

    /// <summary>Null until the session is closed.</summary>
    public PanelResult? Result { get; private set; }

    /// <summary>A session held elsewhere or earlier, to be filled with past results and closed at once.</summary>
    public static CuppingSession OfPast(string title, DateOnly heldOn, CuppingForm form, Id<StoredFile>? sourceId = null) =>
        new(title, heldOn, form, FormRules.UsualCups, isPast: true) { SourceId = sourceId };

    /// <summary>Puts a sample on the table under a code of its own.</summary>
    /// <exception cref="RuleBrokenException">The session is closed or the sample is already on the table.</exception>
    public SessionSample Pour(Sample sample, Random random)
    {
        ArgumentNullException.ThrowIfNull(random);
        return Pour(sample, NewCode(random));
    }

    /// <summary>Puts a sample on the table under this code; again as its hidden duplicate.</summary>
    /// <exception cref="RuleBrokenException">The session is closed, the code is taken, or the sample stands there already.</exception>
    public SessionSample Pour(Sample sample, string code, int flight = 1, bool isDuplicate = false, bool isReference = false)
    {
        ArgumentNullException.ThrowIfNull(sample);
        Rule.Require(!IsClosed, "This session is closed.", nameof(Samples));
        Rule.Require(sample.IsReceived, $"Sample {sample.LabelCode} has not come yet: receive it first.", nameof(Samples));
        var before = _samples.Count(other => other.SampleId == sample.Id);
        Rule.Require(before > 0 == isDuplicate, isDuplicate ? $"Sample {sample.LabelCode} is not on the table yet." : $"Sample {sample.LabelCode} is already on the table.", nameof(Samples));
        Rule.Require(_samples.All(other => other.Code != code), $"The code {code} is already on this table.", nameof(Samples));
        Rule.Require(flight >= 1, "Flights are counted from 1.", nameof(Flights));
        var poured = new SessionSample(sample, _samples.Count + 1, code, before, isReference, flight);
        _samples.Add(poured);
        return poured;
    }

    /// <summary>Says how the cups are made, by which steps they are tasted, and what stands beside the score.</summary>
    /// <exception cref="RuleBrokenException">The session is closed.</exception>
    public void Prepare(TablePlan? plan, TastingProtocol? protocol, DescriptiveForm? descriptive, Blinding blinding = Blinding.ByKey)
    {
        Rule.Require(!IsClosed, "This session is closed.", nameof(Plan));
        (CupMilliliters, Dose, Water) = (plan?.CupMilliliters, plan?.Dose, plan?.Water);
        ProtocolId = protocol?.Id;
        DescriptiveFormId = descriptive?.Id;
        Blinding = blinding;
    }

    /// <summary>A cupper hands in a sheet for the sample under this code.</summary>
    /// <exception cref="RuleBrokenException">Closed, no such code, a second sheet of this cupper, or marks off the form.</exception>
    public ScoreSheet Submit(string code, Person cupper, SheetMarks marks, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(cupper);
        Rule.Require(!IsClosed, "This session is closed: no sheet can be handed in any more.", nameof(Sheets));
        var sample = Poured(code);
        Rule.Require(_panel.Count == 0 || MemberOf(cupper.Id)?.Cups == true, $"{cupper.Name} does not cup at this table: whoever leads can add a latecomer.", nameof(Panel));
        Rule.Require(SheetOf(sample, cupper.Id) is null, $"{cupper.Name} has already handed in a sheet for {code}: open it again with a reason to change it.", nameof(Sheets));
        var sheet = ScoreSheet.Write(this, sample, cupper, marks, at);
        _sheets.Add(sheet);
        return sheet;
    }

    /// <summary>Opens a sheet that was handed in, to change it; what was handed in is kept with the reason.</summary>
    /// <exception cref="RuleBrokenException">Closed, no such sheet, already open, or no reason.</exception>
    public ScoreSheet Reopen(string code, Id<Person> cupper, string reason, Id<Person> by, DateTimeOffset at)
    {
        Rule.Require(!IsClosed, "This session is closed: its sheets stay as they were handed in.", nameof(Sheets));
        var sheet = SheetOf(Poured(code), cupper);
        Rule.Require(sheet is not null, $"There is no sheet for {code} to open again.", nameof(Sheets));
        Rule.Require(!sheet.IsReopened, $"The sheet for {code} is already open.", nameof(Sheets));
        sheet.Reopen(by, reason, at);
        return sheet;
    }

    /// <summary>A cupper hands a sheet in again that was opened again, until the session is closed.</summary>
    /// <exception cref="RuleBrokenException">Closed, no such sheet, not opened again, or marks off the form.</exception>
    public ScoreSheet Correct(string code, Person cupper, SheetMarks marks, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(cupper);
        Rule.Require(!IsClosed, "This session is closed: its sheets stay as they were handed in.", nameof(Sheets));
        var sheet = SheetOf(Poured(code), cupper.Id);
        Rule.Require(sheet is not null, $"{cupper.Name} has not handed in a sheet for {code} yet.", nameof(Sheets));
        Rule.Require(sheet.IsReopened, $"The sheet for {code} is handed in and closed: open it again with a reason to change it.", nameof(Sheets));
        sheet.Correct(this, marks, at);
        return sheet;
    }

    /// <summary>Submits the cupper's first sheet for this code, or corrects the one that is there.</summary>
    /// <exception cref="RuleBrokenException">Closed, no such code, or marks off the form.</exception>
    public ScoreSheet HandIn(string code, Person cupper, SheetMarks marks, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(cupper);
        Rule.Require(!IsByPlace, "The codes stand under the bowls: hand in by place, P1 and on, until you have looked.", nameof(Places));
        return Write(code, cupper, marks, at);
    }

    /// <summary>Hands in what a cupper has written, or hands it in again after the sheet was opened again.</summary>
    /// <exception cref="RuleBrokenException">Closed, marks are missing, or the sheet is handed in already.</exception>
    public ScoreSheet HandIn(SheetDraft draft, Person cupper, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(draft);
        var sheet = Take(draft, draft.Code, cupper, at);
        draft.HandIn(at);
        return sheet;
    }

    /// <summary>One row of past results for a sample that was put on the table before.</summary>
    /// <exception cref="RuleBrokenException">Not a past session, the same cupper twice, or points off the form.</exception>
    public ScoreSheet TakeIn(Sample sample, PastResult past, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(sample);
        ArgumentNullException.ThrowIfNull(past);
        Rule.Require(IsPast && !IsClosed, "Past results are taken into a session of their own.", nameof(Sheets));
        var poured = _samples.Find(other => other.SampleId == sample.Id);
        Rule.Require(poured is not null, "The sample is not on the table.", nameof(Samples));
        var sheet = ScoreSheet.OfPast(this, poured, past, at);
        Rule.Require(_pastKeys.Add((sample.Id, sheet.CupperKey)), "The same sample and cupper stand twice in these results.", nameof(Sheets));
        _sheets.Add(sheet);
        return sheet;
    }

    /// <summary>Ends the cupping and computes the panel's result over all sheets.</summary>
    /// <param name="withMissing">Sheets are missing and whoever closes knows it.</param>
    /// <param name="weights">By which cuppers who repeat badly count less; null lets everyone count alike.</param>
    /// <exception cref="RuleBrokenException">Already closed, no sheet was handed in, or sheets are missing that nobody asked about.</exception>
    public PanelResult Close(Id<Person> by, DateTimeOffset at, ExpectedErrors expected, bool withMissing = true, PanelWeights? weights = null)
    {
        Rule.Require(!IsClosed, "This session is already closed.", nameof(ClosedAt));
        Rule.Require(_sheets.Count > 0, "Nobody has handed in a sheet yet: a session is closed after at least one.", nameof(Sheets));
        var missing = withMissing ? [] : Missing();
        Rule.Require(missing.Count == 0, $"{missing.Count} {(missing.Count == 1 ? "sheet is" : "sheets are")} missing ({string.Join(", ", missing.Select(one => one.Code).Distinct().Order())}): wait, or say that you close without.", nameof(Missing));
        Result = PanelResult.Of(this, expected, weights);
        ClosedAt = at;
        ClosedBy = by;
        return Result;
    }

    /// <summary>Records that somebody looked behind the codes; on a closed session there is nothing to record.</summary>
    public void OpenKey(Id<Person> by, DateTimeOffset at)
    {
        if (!IsClosed)
        {
            _keyOpenings.Add(new KeyOpening(by, at));
        }
    }

    /// <exception cref="RuleBrokenException">No sample has this code.</exception>
    public SessionSample Poured(string code)
    {
        var sample = _samples.Find(poured => poured.Code == code?.Trim());
        Rule.Require(sample is not null, $"No sample on this table has the code {code}.", nameof(SessionSample.Code));
        return sample;
    }

    /// <summary>This cupper's sheet for the sample; null while there is none.</summary>
    public ScoreSheet? SheetOf(SessionSample sample, Id<Person> cupper) =>
        _sheets.Find(sheet => sheet.SampleId == sample.SampleId && sheet.Repeat == sample.Repeat && sheet.CupperId == cupper);

    private ScoreSheet Take(SheetDraft draft, string code, Person cupper, DateTimeOffset at)
    {
        var sheet = Write(code, cupper, SheetFields.Marks(draft.Values, Form.Rules, CupsPerSample), at);
        sheet.Remark(SheetFields.Words(draft.Values.GetValueOrDefault("words")), draft.Values.GetValueOrDefault("note"), null);
        return sheet.Describe(draft.Values.GetValueOrDefault("defect"), SheetFields.Description(draft.Values));
    }

    private ScoreSheet Write(string code, Person cupper, SheetMarks marks, DateTimeOffset at) =>
        SheetOf(Poured(code), cupper.Id) is null ? Submit(code, cupper, marks, at) : Correct(code, cupper, marks, at);

    private string NewCode(Random random)
    {
        var (from, to) = _samples.Count < FewestCodes / 2 ? (100, 1_000) : (100_000, 1_000_000);
        while (true)
        {
            var code = random.Next(from, to).ToString(CultureInfo.InvariantCulture);
            if (_samples.All(other => other.Code != code))
            {
                return code;
            }
        }
    }
}
