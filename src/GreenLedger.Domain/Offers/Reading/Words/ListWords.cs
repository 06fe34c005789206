using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Offers.Reading.Words;

/// <summary>
/// The words of one language that offer lists use: for headings, and for what stands in titles and cells. All words are
/// folded (<see cref="SearchText"/>), so case, accents and signs do not matter.
/// </summary>
internal sealed class ListWords
{
    private readonly Dictionary<string, string[]> _words;

    private ListWords(string language, Dictionary<string, string[]> words)
    {
        Language = language;
        _words = words;
        Headings = [.. words.Where(pair => Enum.IsDefined(typeof(ColumnMeaning), pair.Key))
            .SelectMany(pair => pair.Value.Select(word => (Enum.Parse<ColumnMeaning>(pair.Key), word)))];
    }

    /// <summary>ISO 639-1.</summary>
    public string Language { get; }

    public IReadOnlyList<(ColumnMeaning Meaning, string Phrase)> Headings { get; }

    public IEnumerable<string> Keys => _words.Keys;

    public IReadOnlyList<string> this[string key] => _words.GetValueOrDefault(key, []);

    /// <summary>
    /// Reads a table whose lines are <c>key: word, word</c>. A key is a <see cref="ColumnMeaning"/> or, in lower case,
    /// a kind of word in titles and cells.
    /// </summary>
    public static ListWords Of(string language, string table) => new(
        language,
        table.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
            .Select(line => line.Split(':', 2))
            .ToDictionary(
                parts => parts[0],
                parts => parts[1].Split(',').Select(word => SearchText.Of(word)).Where(word => word.Length > 0).ToArray()));
}
