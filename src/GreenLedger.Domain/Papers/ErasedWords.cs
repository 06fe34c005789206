using System.Text.Json;
using System.Text.RegularExpressions;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Papers;

/// <summary>
/// The words that name somebody, each with what stands in its place: whole words only, whatever their capitals, also as JSON writes
/// them and as the search folds them.
/// </summary>
public sealed class ErasedWords
{
    /// <summary>Shorter ones stand in too many other words and names.</summary>
    public const int Shortest = 3;

    private readonly List<(Regex Word, string Instead)> _words = [];
    private readonly List<(Regex Word, string Instead)> _folded = [];

    /// <param name="names">The name, and other spellings of it.</param>
    /// <param name="addresses">E-mail addresses.</param>
    /// <param name="designation">What stands in place of the names.</param>
    /// <exception cref="RuleBrokenException">A name is too short.</exception>
    public ErasedWords(IEnumerable<string> names, IEnumerable<string> addresses, string designation)
    {
        // A part of an address is no name: addresses first, and the longer before the shorter.
        foreach (var address in addresses.Select(one => one.Trim()).Where(one => one.Length > 0).Distinct().OrderByDescending(one => one.Length))
        {
            Add(address, Erasure.AddressOf(designation));
        }

        foreach (var name in names.Select(one => one.Trim()).Where(one => one.Length > 0).Distinct().OrderByDescending(one => one.Length))
        {
            Rule.Require(name.Length >= Shortest, $"“{name}” is too short to be looked for: it stands in other words. Write at least {Shortest} letters.", "Also");
            Add(name, designation);
        }
    }

    /// <summary>The text without them; null where none of them is in it.</summary>
    /// <param name="text">Any text of the ledger.</param>
    /// <param name="isFolded">Whether it is one that the search folds.</param>
    public string? Without(string text, bool isFolded)
    {
        var changed = (isFolded ? _folded : _words).Aggregate(text, (left, one) => one.Word.Replace(left, one.Instead));
        return changed == text ? null : changed;
    }

    public bool AreIn(string text) => Without(text, isFolded: false) is not null;

    private void Add(string word, string instead)
    {
        foreach (var form in new[] { word, JsonSerializer.Serialize(word)[1..^1] }.Distinct())
        {
            _words.Add((Whole(form), instead));
        }

        var folded = SearchText.Of(word);
        if (folded.Length >= Shortest)
        {
            _folded.Add((Whole(folded), SearchText.Of(instead)));
        }
    }

    private static Regex Whole(string word) =>
        new($@"(?<![\p{{L}}\p{{N}}]){Regex.Escape(word)}(?![\p{{L}}\p{{N}}])", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant, TimeSpan.FromSeconds(10));
}
