using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace GreenLedger.Domain.Offers;

/// <summary>
/// One cell of a list as it was received. <see cref="Number"/> is set where the workbook itself holds a number, so that
/// no decimal mark has to be guessed; text is never turned into a number or a formula here.
/// </summary>
public readonly record struct Cell(string Text, decimal? Number = null, DateOnly? Date = null)
{
    public static Cell Empty { get; } = new("");

    public bool IsEmpty => string.IsNullOrWhiteSpace(Text);

    public string Trimmed => (Text ?? "").Trim();

    public static Cell Of(string? text) => new(text ?? "");

    public static Cell Of(decimal number) => new(number.ToString("0.############", CultureInfo.InvariantCulture), number);

    public static Cell Of(DateOnly date) => new(date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), null, date);

    /// <summary>Cells as a JSON array in which numbers are numbers and texts are texts.</summary>
    public static string Write(IEnumerable<Cell> cells)
    {
        var array = new JsonArray();
        foreach (var cell in cells)
        {
            array.Add(cell.Number is { } number ? JsonValue.Create(number) : JsonValue.Create(cell.Text));
        }

        return array.ToJsonString();
    }

    /// <summary>Reads what <see cref="Write"/> wrote.</summary>
    public static IReadOnlyList<Cell> Read(string json)
    {
        using var document = JsonDocument.Parse(json);
        return [.. document.RootElement.EnumerateArray().Select(element =>
            element.ValueKind == JsonValueKind.Number ? Of(element.GetDecimal()) : Of(element.GetString()))];
    }
}
