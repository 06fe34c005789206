using System.Globalization;
using System.Text.Json;
using CsvHelper;
using GreenLedger.Documents.Pricing;
using GreenLedger.Domain;
using GreenLedger.Domain.Origins;

namespace GreenLedger.Documents.Origins;

/// <summary>A plot as a file tells it.</summary>
/// <param name="Row">Counted from 1: the feature, or the line of a CSV without its heading.</param>
public sealed record PlotLine(int Row, string? Producer, string? Country, string? Name, decimal? Hectares, PlotShape Shape);

/// <summary>What a file of plots holds, and what of it could not be taken.</summary>
public sealed record PlotFile(IReadOnlyList<PlotLine> Lines, IReadOnlyList<Problem> Problems)
{
    /// <summary>The published limit of the EU's system for one statement (handbook, trade 7.4).</summary>
    public const int MostBytes = 25 * 1024 * 1024;

    /// <summary>The plots that can be taken for a producer, by their row, and every problem of the file.</summary>
    /// <param name="countryCode">Of plots that name no country.</param>
    public (IReadOnlyList<(PlotLine Line, Plot Plot)> Plots, IReadOnlyList<Problem> Problems) Taken(Id<Producer> producerId, string? countryCode)
    {
        var (plots, problems) = (new List<(PlotLine, Plot)>(), Problems.ToList());
        foreach (var line in Lines)
        {
            try
            {
                plots.Add((line, new Plot(producerId, line.Name ?? $"Plot {line.Row}", (line.Country ?? countryCode ?? "").Trim().ToUpperInvariant(), line.Shape, line.Hectares)));
            }
            catch (RuleBrokenException refused)
            {
                problems.Add(new Problem(line.Row, null, refused.Message));
            }
        }

        return (plots, problems);
    }

    /// <summary>Reads GeoJSON (RFC 7946), or CSV with the columns name, longitude, latitude and perhaps hectares.</summary>
    /// <exception cref="RuleBrokenException">It is neither, or too large.</exception>
    public static PlotFile Read(byte[] bytes)
    {
        ArgumentNullException.ThrowIfNull(bytes);
        Rule.Require(bytes.Length <= MostBytes, "The file is larger than 25 MB: split it.", "File");
        var text = new StreamReader(new MemoryStream(bytes)).ReadToEnd();
        return text.TrimStart().StartsWith('{') ? ReadGeoJson(text) : ReadCsv(text);
    }

    private static PlotFile ReadGeoJson(string text)
    {
        using var json = Parse(text);
        var root = json.RootElement;
        Rule.Require(
            !root.TryGetProperty("crs", out var system) || system.GetRawText() is var named && (named is "null" || named.Contains("CRS84", StringComparison.OrdinalIgnoreCase) || named.Contains("4326", StringComparison.Ordinal)),
            "The file says that its positions are of another coordinate system: export it in WGS 84, longitude before latitude.", "File");
        var features = Kind(root) switch
        {
            "FeatureCollection" when root.TryGetProperty("features", out var list) && list.ValueKind == JsonValueKind.Array => list.EnumerateArray().ToList(),
            "Feature" => [root],
            _ => throw new RuleBrokenException("This GeoJSON is no FeatureCollection: send one feature for each plot.", "File"),
        };
        var (lines, problems) = (new List<PlotLine>(), new List<Problem>());
        foreach (var (at, feature) in features.Index())
        {
            try
            {
                lines.Add(FeatureOf(at + 1, feature, problems));
            }
            catch (RuleBrokenException refused)
            {
                problems.Add(new Problem(at + 1, null, refused.Message));
            }
            catch (InvalidOperationException)
            {
                // JSON whose text is half a character.
                problems.Add(new Problem(at + 1, null, "A name of this plot cannot be read: export it again."));
            }
        }

        return new PlotFile(lines, problems);
    }

    private static JsonDocument Parse(string text)
    {
        try
        {
            return JsonDocument.Parse(text, new JsonDocumentOptions { MaxDepth = 32 });
        }
        catch (JsonException)
        {
            throw new RuleBrokenException("This file begins like GeoJSON but cannot be read as JSON: export it again.", "File");
        }
    }

    private static PlotLine FeatureOf(int row, JsonElement feature, List<Problem> problems)
    {
        Rule.Require(feature.ValueKind == JsonValueKind.Object && feature.TryGetProperty("geometry", out var geometry) && geometry.ValueKind == JsonValueKind.Object, "The feature has no geometry.", "File");
        var properties = feature.TryGetProperty("properties", out var found) && found.ValueKind == JsonValueKind.Object ? found : default;
        foreach (var property in properties.ValueKind == JsonValueKind.Object ? properties.EnumerateObject().ToList() : [])
        {
            if (PlotProperties.Fix(property.Name) is { } right)
            {
                problems.Add(new Problem(row, property.Name, $"The property {property.Name} is ignored: it is written {right}."));
            }
        }

        return new PlotLine(
            row, Text(properties, PlotProperties.Producer), Text(properties, PlotProperties.Country), Text(properties, PlotProperties.Place), Area(properties), GeoJsonShape.Of(feature.GetProperty("geometry")));
    }

    private static decimal? Area(JsonElement properties)
    {
        if (properties.ValueKind != JsonValueKind.Object || !properties.TryGetProperty(PlotProperties.Area, out var area) || area.ValueKind == JsonValueKind.Null)
        {
            return null;
        }

        Rule.Require(area.ValueKind == JsonValueKind.Number && area.TryGetDecimal(out _), "Area is a number of hectares without quotation marks.", "File");
        return area.GetDecimal();
    }

    private static string? Text(JsonElement properties, string name) =>
        properties.ValueKind == JsonValueKind.Object && properties.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.String ? value.GetString() : null;

    private static string Kind(JsonElement element) =>
        element.ValueKind == JsonValueKind.Object && element.TryGetProperty("type", out var type) && type.ValueKind == JsonValueKind.String ? type.GetString()! : "";

    private static PlotFile ReadCsv(string text)
    {
        var rows = Rows(text);
        var heads = rows.Count == 0 ? [] : rows[0].Cells.Select(head => head.ToLowerInvariant()).ToList();
        Rule.Require(heads.Contains("longitude") && heads.Contains("latitude"), "Send GeoJSON, or CSV with the columns name, longitude, latitude and perhaps hectares.", "File");
        var (lines, problems) = (new List<PlotLine>(), new List<Problem>());
        foreach (var (at, row) in rows.Skip(1).Index())
        {
            string? Cell(string name) => heads.IndexOf(name) is >= 0 and var column && column < row.Cells.Length && row.Cells[column].Length > 0 ? row.Cells[column] : null;
            try
            {
                var shape = PlotShape.Point(Number(Cell("longitude"), "longitude"), Number(Cell("latitude"), "latitude"));
                lines.Add(new PlotLine(at + 1, Cell("producer"), Cell("country"), Cell("name"), Cell("hectares") is { } hectares ? Number(hectares, "hectares") : null, shape));
            }
            catch (RuleBrokenException refused)
            {
                problems.Add(new Problem(at + 1, null, refused.Message));
            }
        }

        return new PlotFile(lines, problems);
    }

    private static List<(int Row, string[] Cells)> Rows(string text)
    {
        var head = text.Split('\n', 2)[0];
        try
        {
            return [.. SeparatedText.Lines(text, head.Contains('\t') ? '\t' : head.Contains(';') ? ';' : ',')];
        }
        catch (CsvFormatException)
        {
            // A line longer than any of points: some other kind of file.
            return [];
        }
    }

    private static decimal Number(string? text, string column)
    {
        Rule.Require(decimal.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number), $"'{text}' is no {column}: write it with a decimal point, such as -75.899123.", "File");
        return number;
    }
}
