using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Pricing;

/// <summary>One quote as a file states it, in the market's unit; the row is counted from 1.</summary>
public sealed record QuoteLine(int Row, FuturesMonth Month, DateOnly On, decimal Quoted);

/// <summary>A file of futures quotes as it was read. A file with problems is not taken at all.</summary>
public sealed record QuoteFile(IReadOnlyList<QuoteLine> Lines, IReadOnlyList<Problem> Problems);

/// <summary>What became of the lines of a quote file. A line that its market cannot show is a problem.</summary>
public sealed record QuoteTaking(IReadOnlyList<FuturesQuote> Added, int Corrected, int Unchanged, IReadOnlyList<Problem> Problems)
{
    /// <summary>
    /// Takes the lines over the entries that are stored for their days. Taking the same file twice changes nothing.
    /// </summary>
    public static QuoteTaking Of(
        IEnumerable<QuoteLine> lines, IEnumerable<FuturesQuote> stored, string source, Id<Person>? by, DateTimeOffset at)
    {
        var known = stored.ToDictionary(quote => (quote.Month, quote.On));
        var added = new List<FuturesQuote>();
        var problems = new List<Problem>();
        var (corrected, unchanged) = (0, 0);
        foreach (var line in lines)
        {
            try
            {
                if (!known.TryGetValue((line.Month, line.On), out var quote))
                {
                    quote = new FuturesQuote(line.Month, line.On, line.Quoted, source, by, at);
                    known.Add((line.Month, line.On), quote);
                    added.Add(quote);
                }
                else if (quote.Quoted == line.Quoted)
                {
                    unchanged++;
                }
                else
                {
                    quote.Correct(line.Quoted, source, by, at);
                    corrected++;
                }
            }
            catch (RuleBrokenException broken)
            {
                // A quote that is no price of its market is told with its row, with all others of the file.
                problems.Add(new Problem(line.Row, "price", broken.Message));
            }
        }

        return new QuoteTaking(added, corrected, unchanged, problems);
    }
}
