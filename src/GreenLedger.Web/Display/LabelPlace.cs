using GreenLedger.Domain.Samples;

namespace GreenLedger.Web.Display;

/// <summary>Where labels are printed, as it was asked for: on which sheet, and from which place on, from 1.</summary>
public sealed record LabelPlace(string? Sheet, int From)
{
    /// <summary>The sheet; null where there is no such sheet or no such place on it.</summary>
    public LabelSheet? Known => Found is { } sheet && From >= 1 && From <= sheet.LabelsOnPage ? sheet : null;

    /// <summary>What to do where it is not known.</summary>
    public string Trouble => $"Choose a sheet and a place on it{(Found is { } sheet ? $" from 1 to {sheet.LabelsOnPage}" : "")}.";

    private LabelSheet? Found => LabelSheet.Find(Sheet);
}
