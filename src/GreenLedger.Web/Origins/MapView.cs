using System.Globalization;
using GreenLedger.Domain.Origins;
using NetTopologySuite.Geometries;

namespace GreenLedger.Web.Origins;

/// <summary>
/// Which part of the Earth a map shows: its middle, and how many kilometres it shows from west to east. Degrees are drawn evenly, those
/// of longitude shorter by the cosine of the middle's latitude, so that both ways have one scale there.
/// </summary>
public sealed record MapView
{
    /// <summary>The drawing's own units; the page stretches it.</summary>
    public const int Width = 640;
    public const int Height = 480;

    private const double Nearest = 0.2;
    private const double Farthest = 20_000;

    private MapView(double longitude, double latitude, double kilometres) => (Longitude, Latitude, Kilometres) =
        (Math.Clamp(Math.Round(longitude, 6), -180, 180), Math.Clamp(Math.Round(latitude, 6), -80, 80), Math.Round(Math.Clamp(kilometres, Nearest, Farthest), 3));

    public double Longitude { get; }

    public double Latitude { get; }

    /// <summary>From west to east through the middle.</summary>
    public double Kilometres { get; }

    public static MapView World { get; } = new(0, 0, Farthest);

    /// <summary>The middle as addresses write it.</summary>
    public string At => string.Create(CultureInfo.InvariantCulture, $"{Longitude:0.######},{Latitude:0.######}");

    public string Across => Kilometres.ToString("0.###", CultureInfo.InvariantCulture);

    /// <summary>How wide it is and about which place, for who does not see it.</summary>
    public string Words => string.Create(CultureInfo.InvariantCulture, $"{Math.Round(Kilometres, Kilometres < 10 ? 2 : 0):#,0.##} km from west to east about longitude {Longitude:0.####}, latitude {Latitude:0.####}");

    public Envelope Box => new(Longitude - Degrees / 2, Longitude + Degrees / 2, Latitude - Degrees * Shrink * Height / Width / 2, Latitude + Degrees * Shrink * Height / Width / 2);

    /// <summary>Degrees of longitude across.</summary>
    private double Degrees => Kilometres / (Sphere.KilometresPerDegree * Shrink);

    private double Shrink => Math.Cos(Latitude * Math.PI / 180);

    /// <summary>As an address says it; null where it says nothing that can be read.</summary>
    public static MapView? Read(string? at, string? across) =>
        PlotCorners.Position(at) is { } middle && double.TryParse(across, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var kilometres)
            ? new MapView((double)middle.Longitude, (double)middle.Latitude, kilometres)
            : null;

    /// <summary>All of a rectangle with some room about it.</summary>
    /// <param name="box">Longitudes and latitudes.</param>
    /// <param name="least">Kilometres across at the least.</param>
    public static MapView Around(Envelope box, double least)
    {
        ArgumentNullException.ThrowIfNull(box);
        var (high, wide) = (box.Height * Sphere.KilometresPerDegree, box.Width * Sphere.KilometresPerDegree * Math.Cos(box.Centre.Y * Math.PI / 180));
        return new MapView(box.Centre.X, box.Centre.Y, Math.Max(least, 1.2 * Math.Max(wide, high * Width / Height)));
    }

    /// <summary>About another middle, from as near as now or nearer.</summary>
    public MapView To((decimal Longitude, decimal Latitude) middle, double most) => new((double)middle.Longitude, (double)middle.Latitude, Math.Min(Kilometres, most));

    public MapView Nearer() => new(Longitude, Latitude, Kilometres / 2);

    public MapView Farther() => new(Longitude, Latitude, Kilometres * 2);

    /// <summary>Moved by parts of what it shows.</summary>
    public MapView Moved(double east, double north) => new(Longitude + east * Box.Width, Latitude + north * Box.Height, Kilometres);

    public double X(double longitude) => (longitude - Box.MinX) / Box.Width * Width;

    public double Y(double latitude) => (Box.MaxY - latitude) / Box.Height * Height;
}
