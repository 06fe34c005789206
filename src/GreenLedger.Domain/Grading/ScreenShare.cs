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

    /// <summary>
    /// The nominal holes of ISO 4150:2011 in millimetres, from screen 12 up; 16 and 18 as published, the others from memory (handbook
    /// quality.md section 2.2).
    /// </summary>
    private static readonly decimal[] NominalHoles = [4.75m, 5.00m, 5.60m, 6.00m, 6.30m, 6.70m, 7.10m, 7.50m, 8.00m];

    /// <summary>The nominal hole of the standard in millimetres; null below screen 12.</summary>
    public static decimal? NominalMillimetres(int screen) => screen is >= 12 and <= Largest ? NominalHoles[screen - 12] : null;

    /// <summary>The hole in millimetres: screen × 25.4 / 64 (screen 16 is 6.350 mm).</summary>
    public static decimal HoleMillimetres(int screen) => screen * 25.4m / 64m;
}
