using System.Collections.Frozen;
using System.Globalization;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Offers.Reading.Words;

/// <summary>The words of all languages together: lists mix them.</summary>
internal static class TradeWords
{
    private static readonly ListWords[] Languages = [English.Words, Spanish.Words, Portuguese.Words, French.Words, German.Words];

    private static readonly FrozenDictionary<string, string[]> ByKey = Languages.SelectMany(language => language.Keys).Distinct()
        .ToFrozenDictionary(key => key, key => Languages.SelectMany(language => language[key]).Distinct().ToArray());

    private static readonly FrozenDictionary<string, int> MonthsByWord = Enumerable.Range(1, 12)
        .SelectMany(month => Of(CultureInfo.InvariantCulture.DateTimeFormat.GetMonthName(month)).Select(word => (word, month)))
        .DistinctBy(pair => pair.word)
        .ToFrozenDictionary(pair => pair.word, pair => pair.month);

    private static readonly FrozenDictionary<string, FrozenSet<string>> Sets = new[] { "sold", "withdrawn", "available", "total" }
        .ToFrozenDictionary(key => key, key => Of(key).ToFrozenSet());

    private static readonly FrozenDictionary<ColumnMeaning, string[][]> Phrases = Languages.SelectMany(language => language.Headings)
        .GroupBy(heading => heading.Meaning, heading => heading.Phrase)
        .ToFrozenDictionary(group => group.Key, group => group.Distinct().Select(phrase => phrase.Split(' ')).ToArray());

    /// <summary>All words of a kind, of every language, folded.</summary>
    public static IReadOnlyList<string> Of(string key) => ByKey.GetValueOrDefault(key, []);

    /// <summary>Whether the folded text is exactly one of the words of this kind.</summary>
    public static bool Is(string key, string folded) => Sets[key].Contains(folded);

    /// <summary>Whether one of the words of this kind stands in the folded text.</summary>
    public static bool Has(string key, string folded) =>
        folded.Length > 0 && ByKey.TryGetValue(key, out var words) && Array.Exists(words, word => HasPhrase(folded, word));

    /// <summary>Whether a text begins a line of totals.</summary>
    public static bool IsTotal(string text)
    {
        var end = text.AsSpan().TrimStart().IndexOfAny(" :;");
        return Is("total", SearchText.Of(end < 0 ? text : text.TrimStart()[..end]));
    }

    /// <summary>1 to 12 for a folded month name or its short form; null for any other word.</summary>
    public static int? Month(string folded) => MonthsByWord.TryGetValue(folded, out var month) ? month : null;

    /// <summary>
    /// What a heading means: an exact match first, then the longest phrase that stands in it. Null for unknown words.
    /// The second figure is how good the match is.
    /// </summary>
    public static (ColumnMeaning Meaning, int Weight)? Heading(string? heading)
    {
        var words = SearchText.Of(heading).Split(' ', StringSplitOptions.RemoveEmptyEntries);
        (ColumnMeaning Meaning, int Weight)? best = null;
        foreach (var (meaning, phrases) in Phrases)
        {
            foreach (var phrase in phrases)
            {
                var weight = Weight(words, phrase);
                if (weight > (best?.Weight ?? 0))
                {
                    best = (meaning, weight);
                }
            }
        }

        return best;
    }

    /// <summary>The language whose headings these mostly are, ISO 639-1.</summary>
    public static string Language(IReadOnlyList<string> headings)
    {
        var folded = headings.Select(heading => SearchText.Of(heading)).ToList();
        return Languages.MaxBy(language => folded.Count(heading => language.Headings.Any(known => HasPhrase(heading, known.Phrase))))!.Language;
    }

    public static bool HasPhrase(string folded, string phrase)
    {
        var at = folded.IndexOf(phrase, StringComparison.Ordinal);
        while (at >= 0)
        {
            var end = at + phrase.Length;
            if ((at == 0 || folded[at - 1] == ' ') && (end == folded.Length || folded[end] == ' '))
            {
                return true;
            }

            at = folded.IndexOf(phrase, at + 1, StringComparison.Ordinal);
        }

        return false;
    }

    private static int Weight(string[] words, string[] phrase)
    {
        if (words.SequenceEqual(phrase))
        {
            return 1000;
        }

        for (var start = 0; start + phrase.Length <= words.Length; start++)
        {
            if (words.AsSpan(start, phrase.Length).SequenceEqual(phrase))
            {
                return (100 * phrase.Length) + (10 * Math.Min(9, phrase.Sum(word => word.Length))) - Math.Min(start, 9);
            }
        }

        return 0;
    }
}
