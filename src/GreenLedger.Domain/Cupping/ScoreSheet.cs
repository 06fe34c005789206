using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;

namespace GreenLedger.Domain.Cupping;

/// <summary>
/// One cupper's marks for one sample of a session; or one row of a past result, whose points may be averages. What was
/// observed is kept, the totals are worked out from it when it is written.
/// </summary>
public sealed class ScoreSheet
{
    private readonly List<int> _markHundredths = [];
    private readonly List<int> _goodCups = [];
    private readonly List<int> _deductedCups = [];
    private readonly List<int> _averageTenThousandths = [];
    private readonly List<string> _cups = [];
    private readonly List<string> _descriptors = [];
    private readonly List<EarlierSheet> _earlierSheets = [];

    private ScoreSheet()
    {
        CupperName = "";
    }

    private ScoreSheet(Id<CuppingSession> sessionId, SessionSample sample, Id<Person>? cupperId, string cupperName, DateTimeOffset at)
    {
        Id = Id<ScoreSheet>.New();
        Version = 1;
        SessionId = sessionId;
        SampleId = sample.SampleId;
        LotId = sample.LotId;
        Repeat = sample.Repeat;
        CupperId = cupperId;
        CupperName = Rule.Text(cupperName, "The cupper's name", field: nameof(CupperName));
        WrittenAt = at;
    }

    public Id<ScoreSheet> Id { get; private set; }

    /// <summary>1 when handed in; each correction counts one up.</summary>
    public int Version { get; private set; }

    public Id<CuppingSession> SessionId { get; private set; }

    public Id<Sample> SampleId { get; private set; }

    public Id<Lot> LotId { get; private set; }

    /// <summary>0, or 1 where the sheet is of the sample's hidden duplicate.</summary>
    public int Repeat { get; private set; }

    /// <summary>Null for a past result whose cupper is not one of the house.</summary>
    public Id<Person>? CupperId { get; private set; }

    /// <summary>The name as it was on the day, or as the file of past results says it.</summary>
    public string CupperName { get; private set; }

    public DateTimeOffset WrittenAt { get; private set; }

    /// <summary>Marks of the form's scale attributes, in the form's order, in hundredths of a point.</summary>
    public IReadOnlyList<int> MarkHundredths => _markHundredths;

    /// <summary>Good cups of the form's cup-counted attributes, in the form's order.</summary>
    public IReadOnlyList<int> GoodCups => _goodCups;

    /// <summary>Cups with each of the form's deductions, in the form's order.</summary>
    public IReadOnlyList<int> DeductedCups => _deductedCups;

    /// <summary>Which cups were good or bad, as <see cref="SheetMarks.Cups"/>; empty where only their number was written down.</summary>
    public IReadOnlyList<string> Cups => _cups;

    /// <summary>
    /// For a past result only: the points of all attributes in the form's order, then the points deducted of each
    /// deduction, in ten-thousandths. Empty for a sheet written here.
    /// </summary>
    public IReadOnlyList<int> AverageTenThousandths => _averageTenThousandths;

    /// <summary>True for a row of past results.</summary>
    public bool IsPast => _averageTenThousandths.Count > 0;

    /// <summary>What the form prints: with the form's rounding.</summary>
    public Score Total { get; private set; }

    /// <summary>Before the form's rounding; this enters the panel's fit.</summary>
    public Score Unrounded { get; private set; }

    /// <summary>The total written on the paper or in the file, if one was; never corrected.</summary>
    public Score? StatedTotal { get; private set; }

    /// <summary>Words for what was tasted, as the cupper chose them.</summary>
    public IReadOnlyList<string> Descriptors => _descriptors;

    public string? Note { get; private set; }

    /// <summary>What a taint or fault was: phenolic, fermented, mouldy, potato.</summary>
    public string? DefectName { get; private set; }

    /// <summary>The descriptive part beside the score; null where the session has none or nothing was described.</summary>
    public SheetDescription? Description { get; private set; }

    /// <summary>True from opening the sheet again until it is handed in anew.</summary>
    public bool IsReopened { get; private set; }

    /// <summary>The sheet as it was handed in each time before it was opened again.</summary>
    public IReadOnlyList<EarlierSheet> EarlierSheets => _earlierSheets;

    /// <summary>Tells cuppers apart in the fit: the person, or for past results the name.</summary>
    public string CupperKey => CupperId?.ToString() ?? CupperName.ToUpperInvariant();

    internal static ScoreSheet Write(CuppingSession session, SessionSample sample, Person cupper, SheetMarks marks, DateTimeOffset at)
    {
        var sheet = new ScoreSheet(session.Id, sample, cupper.Id, cupper.Name, at);
        sheet.Take(session, marks);
        return sheet;
    }

    internal static ScoreSheet OfPast(CuppingSession session, SessionSample sample, PastResult past, DateTimeOffset at)
    {
        var total = SheetTotal.OfAverages(session.Form.Rules, past.Points, past.Deducted);
        var sheet = new ScoreSheet(session.Id, sample, null, past.Cupper, at)
        {
            Total = Score.Of(total.Total),
            Unrounded = Score.Of(total.Unrounded),
            StatedTotal = past.StatedTotal is { } stated ? Score.Of(stated) : null,
            Note = Rule.OptionalText(past.Note, "The note", 2000, nameof(Note)),
        };
        sheet._averageTenThousandths.AddRange(past.Points.Concat(past.Deducted)
            .Select(points => decimal.ToInt32(Math.Round(points * 10_000m, 0, MidpointRounding.AwayFromZero))));
        sheet._descriptors.AddRange(Words(past.Descriptors));
        return sheet;
    }

    internal void Correct(CuppingSession session, SheetMarks marks, DateTimeOffset at)
    {
        Take(session, marks);
        WrittenAt = at;
        IsReopened = false;
    }

    internal void Reopen(Id<Person> by, string reason, DateTimeOffset at)
    {
        _earlierSheets.Add(new EarlierSheet(this, by, reason, at));
        IsReopened = true;
    }

    /// <summary>What a taint or fault was called, and the descriptive part where the session has one.</summary>
    /// <exception cref="RuleBrokenException">The name is too long.</exception>
    public ScoreSheet Describe(string? defectName, SheetDescription? description)
    {
        DefectName = Rule.OptionalText(defectName, "The name of the taint or fault", 60, nameof(DefectName));
        Description = description is { IsEmpty: false } ? description : null;
        return this;
    }

    /// <summary>Words and a free note, and the total that the cupper added up on paper.</summary>
    public ScoreSheet Remark(IEnumerable<string> descriptors, string? note, decimal? statedTotal)
    {
        _descriptors.Clear();
        _descriptors.AddRange(Words(descriptors));
        Note = Rule.OptionalText(note, "The note", 2000, nameof(Note));
        StatedTotal = statedTotal is { } stated ? Score.Of(stated) : null;
        return this;
    }

    /// <summary>The sheet's marks; null for a past result, which has averages instead.</summary>
    public SheetMarks? Marks() => IsPast
        ? null
        : new SheetMarks([.. _markHundredths.Select(hundredths => new Mark(hundredths))], GoodCups, DeductedCups) { Cups = Cups };

    /// <summary>The total's arithmetic again, from what was observed.</summary>
    public SheetTotal Arithmetic(FormRules rules, int cups)
    {
        ArgumentNullException.ThrowIfNull(rules);
        if (Marks() is { } marks)
        {
            return SheetTotal.Of(rules, marks, cups);
        }

        var points = _averageTenThousandths.Select(value => value / 10_000m).ToList();
        var attributes = rules.Attributes.Count;
        return SheetTotal.OfAverages(rules, points[..attributes], points[attributes..]);
    }

    private static IEnumerable<string> Words(IEnumerable<string> descriptors) => descriptors
        .Select(word => Rule.OptionalText(word, "A descriptor", 60, nameof(Descriptors)))
        .OfType<string>()
        .Distinct(StringComparer.OrdinalIgnoreCase)
        .Take(40);

    private void Take(CuppingSession session, SheetMarks marks)
    {
        var total = SheetTotal.Of(session.Form.Rules, marks, session.CupsPerSample);
        _markHundredths.Clear();
        _markHundredths.AddRange(marks.Marks.Select(mark => mark.Hundredths));
        _goodCups.Clear();
        _goodCups.AddRange(marks.GoodCups);
        _deductedCups.Clear();
        _deductedCups.AddRange(marks.DeductedCups);
        _cups.Clear();
        _cups.AddRange(marks.Cups);
        Total = Score.Of(total.Total);
        Unrounded = Score.Of(total.Unrounded);
    }
}
