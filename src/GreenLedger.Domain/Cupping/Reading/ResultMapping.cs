namespace GreenLedger.Domain.Cupping.Reading;

/// <summary>
/// Which column of a file of past results holds what: the heading's place (row and column from 0), the headings, and a
/// meaning of <see cref="ResultWords"/> for each; <see cref="ResultWords.Ignored"/> for a column not taken.
/// </summary>
public sealed record ResultMapping(int HeadingRow, int HeadingRows, IReadOnlyList<string> Headings, IReadOnlyList<string> Meanings)
{
    /// <summary>The column with this meaning, from 0; −1 when there is none.</summary>
    public int Column(string meaning) => Meanings.ToList().IndexOf(meaning);

    /// <summary>The heading of the column with this meaning.</summary>
    public string? Heading(string meaning) => Column(meaning) is >= 0 and var column ? Headings[column] : null;

    /// <summary>The mapping with the columns that somebody corrected, by heading.</summary>
    /// <exception cref="RuleBrokenException">A heading or a meaning is not known, or a meaning is given twice.</exception>
    public ResultMapping With(IReadOnlyDictionary<string, string> corrections)
    {
        ArgumentNullException.ThrowIfNull(corrections);
        var meanings = Meanings.ToArray();
        foreach (var (heading, meaning) in corrections)
        {
            var column = Headings.ToList().FindIndex(other => string.Equals(other.Trim(), heading.Trim(), StringComparison.OrdinalIgnoreCase));
            Rule.Require(column >= 0, $"The file has no column '{heading}'.", "Mapping");
            Rule.Require(meaning == ResultWords.Ignored || ResultWords.Meanings.Contains(meaning), $"'{meaning}' is not something that a column of results can hold.", "Mapping");
            for (var other = 0; other < meanings.Length; other++)
            {
                meanings[other] = meaning != ResultWords.Ignored && meanings[other] == meaning ? ResultWords.Ignored : meanings[other];
            }

            meanings[column] = meaning;
        }

        return this with { Meanings = meanings };
    }
}
