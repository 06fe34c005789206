using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Grading;

/// <summary>
/// The share of the mass that stayed on one screen. Screen n has round holes of n/64 inch; screen 0 is the pan.
/// </summary>
public sealed class ScreenShare
{
    public const int Pan = 0;
    public const int Smallest = 8;
    public const int Largest = 20;

    private ScreenShare()
    {
    }

    internal ScreenShare(int screen, Percent retained)
    {
        Screen = screen;
        Retained = retained;
    }

    public int Screen { get; private set; }

    public Percent Retained { get; private set; }

    internal void Sieve(Percent retained) => Retained = retained;

    /// <summary>The hole in millimetres: screen × 25.4 / 64 (screen 16 is 6.350 mm).</summary>
    public static decimal HoleMillimetres(int screen) => screen * 25.4m / 64m;
}
