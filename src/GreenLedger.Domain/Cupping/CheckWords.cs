using System.Globalization;

namespace GreenLedger.Domain.Cupping;

/// <summary>
/// The words of a list as a person types them: one on a line, and one that begins with a hyphen belongs to the last word
/// before it without.
/// </summary>
public static class CheckWords
{
    private const char Narrower = '-';

    public static string Text(IReadOnlyList<CheckWord> words)
    {
        ArgumentNullException.ThrowIfNull(words);
        return string.Join('\n', words.Select(word => word.Parent is null ? word.Word : $"{Narrower} {word.Word}"));
    }

    /// <param name="known">The words of the list before; one that is typed again keeps its key, so that sheets compare.</param>
    /// <exception cref="RuleBrokenException">The first word is a narrower one, or a word is too long.</exception>
    public static IReadOnlyList<CheckWord> Read(string? text, IReadOnlyList<CheckWord> known, string field)
    {
        ArgumentNullException.ThrowIfNull(known);
        var words = new List<CheckWord>();
        string? broader = null;
        foreach (var line in (text ?? "").Split('\n').Select(line => line.Trim()).Where(line => line.Length > 0))
        {
            var isNarrower = line[0] == Narrower;
            var word = Rule.Text(line.TrimStart(Narrower), "A word", 40, field);
            Rule.Require(!isNarrower || broader is not null, $"'{word}' has no broader word before it: begin the list with one.", field);
            var key = KeyOf(word, isNarrower ? broader : null, known, words);
            words.Add(new CheckWord(key, word, isNarrower ? broader : null));
            broader = isNarrower ? broader : key;
        }

        return words;
    }

    private static string KeyOf(string word, string? parent, IReadOnlyList<CheckWord> known, List<CheckWord> taken)
    {
        var same = known.FirstOrDefault(other => string.Equals(other.Word, word, StringComparison.OrdinalIgnoreCase) && other.Parent == parent)
            ?? known.FirstOrDefault(other => string.Equals(other.Word, word, StringComparison.OrdinalIgnoreCase));
        var plain = same?.Key ?? string.Concat(word.ToLowerInvariant().Select(letter => char.IsLetterOrDigit(letter) ? letter : '-')).Trim('-');
        var key = plain.Length == 0 ? "word" : plain;
        for (var number = 2; taken.Exists(other => other.Key == key); number++)
        {
            key = string.Create(CultureInfo.InvariantCulture, $"{plain}-{number}");
        }

        return key;
    }
}
