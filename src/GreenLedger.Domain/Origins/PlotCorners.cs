using System.Globalization;

namespace GreenLedger.Domain.Origins;

/// <summary>Positions as somebody typed or drew them, a line each: longitude, then latitude, in degrees with a decimal point.</summary>
public static class PlotCorners
{
    private const string Field = "Corners";

    /// <summary>One line is a point; several are the corners of a polygon, the last line equal to the first.</summary>
    /// <exception cref="RuleBrokenException">A line is no position, or the ring breaks a rule of <see cref="PlotShape"/>; told of the field Corners.</exception>
    public static PlotShape Shape(string? text)
    {
        var positions = Positions(text);
        try
        {
            return positions.Count == 1 ? PlotShape.Point(positions[0].Longitude, positions[0].Latitude) : PlotShape.Polygons([positions]);
        }
        catch (RuleBrokenException refused)
        {
            // The rules of a shape name its own members; here the trouble stands in the one field that was typed.
            throw new RuleBrokenException(refused.Message, Field);
        }
    }

    /// <summary>Every position, in order; empty lines do not count.</summary>
    /// <exception cref="RuleBrokenException">A line is no position, or there is none.</exception>
    public static IReadOnlyList<(decimal Longitude, decimal Latitude)> Positions(string? text)
    {
        var positions = new List<(decimal, decimal)>();
        foreach (var (at, line) in (text ?? "").Split('\n').Index().Where(one => !string.IsNullOrWhiteSpace(one.Item)))
        {
            Rule.Require(Position(line) is not null, $"Line {at + 1}, '{line.Trim()}', is no position: write the longitude, a comma and the latitude with decimal points, such as -75.899123, 2.001234.", Field);
            positions.Add(Position(line)!.Value);
        }

        Rule.Require(positions.Count > 0, "Draw the plot on the map, or write a longitude and a latitude in each line.", Field);
        return positions;
    }

    /// <summary>A longitude and a latitude parted by a comma, a semicolon or blanks; null for anything else.</summary>
    public static (decimal Longitude, decimal Latitude)? Position(string? text)
    {
        var parts = (text ?? "").Replace('−', '-').Split([',', ';', ' ', '\t', '\r'], StringSplitOptions.RemoveEmptyEntries);
        return parts.Length == 2 && Number(parts[0]) is { } longitude && Number(parts[1]) is { } latitude ? (longitude, latitude) : null;
    }

    private static decimal? Number(string text) =>
        decimal.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) ? number : null;
}
