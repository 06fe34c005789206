using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Cupping;

/// <summary>A sheet as it was handed in, kept when it was opened again; who did so, when and why.</summary>
public sealed class EarlierSheet
{
    private readonly List<int> _markHundredths = [];
    private readonly List<int> _goodCups = [];
    private readonly List<int> _deductedCups = [];
    private readonly List<string> _cups = [];
    private readonly List<string> _descriptors = [];

    private EarlierSheet()
    {
        Reason = "";
    }

    internal EarlierSheet(ScoreSheet sheet, Id<Person> by, string reason, DateTimeOffset at)
    {
        Id = Id<EarlierSheet>.New();
        Number = sheet.EarlierSheets.Count + 1;
        WrittenAt = sheet.WrittenAt;
        Total = sheet.Total;
        ReopenedBy = by;
        ReopenedAt = at;
        Reason = Rule.Text(reason, "The reason for opening the sheet again", 500, nameof(Reason));
        StatedTotal = sheet.StatedTotal;
        Note = sheet.Note;
        DefectName = sheet.DefectName;
        Description = sheet.Description;
        _markHundredths.AddRange(sheet.MarkHundredths);
        _goodCups.AddRange(sheet.GoodCups);
        _deductedCups.AddRange(sheet.DeductedCups);
        _cups.AddRange(sheet.Cups);
        _descriptors.AddRange(sheet.Descriptors);
    }

    public Id<EarlierSheet> Id { get; private set; }

    /// <summary>1 for the first that was handed in.</summary>
    public int Number { get; private set; }

    public DateTimeOffset WrittenAt { get; private set; }

    public Score Total { get; private set; }

    public IReadOnlyList<int> MarkHundredths => _markHundredths;

    public IReadOnlyList<int> GoodCups => _goodCups;

    public IReadOnlyList<int> DeductedCups => _deductedCups;

    /// <summary>As <see cref="ScoreSheet.Cups"/>.</summary>
    public IReadOnlyList<string> Cups => _cups;

    public IReadOnlyList<string> Descriptors => _descriptors;

    public Score? StatedTotal { get; private set; }

    public string? Note { get; private set; }

    public string? DefectName { get; private set; }

    public SheetDescription? Description { get; private set; }

    public Id<Person> ReopenedBy { get; private set; }

    public DateTimeOffset ReopenedAt { get; private set; }

    public string Reason { get; private set; }
}
