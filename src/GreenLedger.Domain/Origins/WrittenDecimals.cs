using System.Globalization;

namespace GreenLedger.Domain.Origins;

/// <summary>
/// How many decimals the numbers of a plot's positions have as they were written. Regulation (EU) 2023/1115 asks for at least six
/// (handbook, trade 7.3); the EU's system fills missing ones with zeros, and so may hide that a place was rounded.
/// </summary>
/// <param name="Fewest">Of any longitude or latitude of the plot.</param>
/// <param name="Most">Of any longitude or latitude of the plot.</param>
public readonly record struct WrittenDecimals(int Fewest, int Most)
{
    /// <summary>What the rules ask for (handbook, trade 7.3).</summary>
    public const int Asked = 6;

    /// <summary>
    /// Programs leave out zeros at the end: of a number of six decimals one in ten shows five and one in a hundred four, so this many beside
    /// others of six tell little; fewer than that only one in a thousand has by chance.
    /// </summary>
    private const int MayLackZeros = 4;

    /// <summary>Counted as written: 2.50 has two.</summary>
    public static WrittenDecimals Of(IEnumerable<(decimal Longitude, decimal Latitude)> positions)
    {
        var counts = positions.SelectMany(one => new[] { (int)one.Longitude.Scale, one.Latitude.Scale }).ToList();
        return new WrittenDecimals(counts.Min(), counts.Max());
    }

    public bool IsEnough => Fewest >= Asked;

    /// <summary>Whether zeros that a program left out explain what is missing.</summary>
    public bool MayBeZerosLeftOut => !IsEnough && Most >= Asked && Fewest >= MayLackZeros;

    /// <summary>From one place that so many decimals can write to the next, in metres from south to north, by <see cref="Sphere"/>.</summary>
    public static double StepMetres(int decimals) => Sphere.KilometresPerDegree * 1000 / Math.Pow(10, decimals);

    /// <summary>The fewest decimals with the step that they leave, in words.</summary>
    public string Said => string.Create(CultureInfo.InvariantCulture, $"{Count(Fewest)}, steps of about {Metres(StepMetres(Fewest))} on the ground");

    private static string Count(int decimals) => decimals switch
    {
        0 => "no decimals",
        1 => "1 decimal",
        _ => string.Create(CultureInfo.InvariantCulture, $"{decimals} decimals"),
    };

    private static string Metres(double metres) => metres.ToString(metres < 10 ? "0.0 m" : "#,0 m", CultureInfo.InvariantCulture);
}
