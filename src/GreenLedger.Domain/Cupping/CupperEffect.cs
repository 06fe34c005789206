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

    internal CupperEffect(string cupperKey, string cupperName, Score effect, int sheets)
    {
        CupperKey = cupperKey;
        CupperName = cupperName;
        Effect = effect;
        Sheets = sheets;
    }

    public string CupperKey { get; private set; }

    public string CupperName { get; private set; }

    /// <summary>Points above (+) or below (−); sums to zero over the cuppers of a connected part.</summary>
    public Score Effect { get; private set; }

    public int Sheets { get; private set; }
}
