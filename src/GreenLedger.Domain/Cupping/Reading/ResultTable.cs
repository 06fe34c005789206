using GreenLedger.Domain.Offers;

namespace GreenLedger.Domain.Cupping.Reading;

/// <summary>A file of past results as lines without judgement, with the proposed meaning of each column.</summary>
public sealed record ResultTable(IReadOnlyList<OfferLine> Lines, ResultMapping Mapping)
{
    private const int DeepestHeading = 40;

    /// <summary>
    /// Finds the headings (one line, or two that belong together) among the first lines and proposes what each column
    /// holds. Whole words win over parts of a heading; each meaning is proposed once.
    /// </summary>
    /// <exception cref="RuleBrokenException">No line looks like the headings of cupping results.</exception>
    public static ResultTable Of(IReadOnlyList<OfferLine> lines)
    {
        ArgumentNullException.ThrowIfNull(lines);
        var found = Enumerable.Range(0, Math.Min(lines.Count, DeepestHeading))
            .SelectMany(row => new[] { Propose(lines, row, 1), Propose(lines, row, 2) })
            .Select(mapping => (mapping, score: Attributes(mapping)))
            .OrderByDescending(pair => pair.score).ThenBy(pair => pair.mapping.HeadingRows).ThenBy(pair => pair.mapping.HeadingRow)
            .FirstOrDefault();
        Rule.Require(found.score >= 3, "No line of this file names the attributes of a cupping form: the first row should say what each column holds (flavor, acidity, body …).", "File");
        return new ResultTable(lines, found.mapping);
    }

    /// <summary>The lines below the headings that hold anything.</summary>
    public IEnumerable<OfferLine> Rows => Lines.Skip(Mapping.HeadingRow + Mapping.HeadingRows)
        .Where(line => !line.IsBlank && line.Sheet == Lines[Mapping.HeadingRow].Sheet);

    private static int Attributes(ResultMapping mapping) => CuppingForm.Published()
        .Max(form => form.Rules.Attributes.Count(attribute => mapping.Column(attribute.Key) >= 0))
        * 10 + mapping.Meanings.Count(meaning => meaning != ResultWords.Ignored);

    private static ResultMapping Propose(IReadOnlyList<OfferLine> lines, int row, int rows)
    {
        var used = lines.Skip(row).Take(rows).ToList();
        var width = used.Max(line => line.Cells.Count);
        var headings = Enumerable.Range(0, width)
            .Select(column => string.Join(' ', used.Select(line => line[column]).Where(cell => cell.Number is null).Select(cell => cell.Trimmed).Where(text => text.Length is > 0 and <= 80)))
            .ToList();
        var meanings = headings.Select(heading => ResultWords.Whole(heading) ?? ResultWords.Ignored).ToArray();
        JoinFragranceAndAroma(meanings);
        for (var column = 0; column < width; column++)
        {
            if (Array.IndexOf(meanings, meanings[column]) < column)
            {
                meanings[column] = ResultWords.Ignored;
            }

            if (meanings[column] == ResultWords.Ignored && ResultWords.Part(headings[column]) is { } part && !meanings.Contains(part))
            {
                meanings[column] = part;
            }
        }

        return new ResultMapping(row, rows, headings, meanings);
    }

    /// <summary>The 100-point form has one attribute for both; files often call it by one of the two words.</summary>
    private static void JoinFragranceAndAroma(string[] meanings)
    {
        var fragrance = Array.IndexOf(meanings, "fragrance");
        var aroma = Array.IndexOf(meanings, "aroma");
        if (!meanings.Contains("fragrance-aroma") && (fragrance < 0) != (aroma < 0))
        {
            meanings[Math.Max(fragrance, aroma)] = "fragrance-aroma";
        }
    }
}
