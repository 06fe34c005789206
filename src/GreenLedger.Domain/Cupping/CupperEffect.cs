using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Cupping;

/// <summary>How far above or below the panel one cupper scored in a session.</summary>
public sealed class CupperEffect
{
    private CupperEffect()
    {
        CupperKey = "";
        CupperName = "";
    }

    internal CupperEffect(string cupperKey, string cupperName, Score effect, int sheets, CupperWeight? weight)
    {
        CupperKey = cupperKey;
        CupperName = cupperName;
        Effect = effect;
        Sheets = sheets;
        Weight = weight?.Weight ?? 1;
        WeightReason = weight?.Reason;
    }

    public string CupperKey { get; private set; }

    public string CupperName { get; private set; }

    /// <summary>Points above (+) or below (−); sums to zero over the cuppers of a connected part.</summary>
    public Score Effect { get; private set; }

    public int Sheets { get; private set; }

    /// <summary>What the cupper's sheets count in the fit, above 0 and at most 1.</summary>
    public double Weight { get; private set; } = 1;

    /// <summary>Why; null where the house lets everyone count alike.</summary>
    public string? WeightReason { get; private set; }
}
