using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Pricing;

/// <summary>One rate as a file states it: units of the currency for 1 EUR. The code may be of a closed currency.</summary>
public sealed record RateLine(string Code, DateOnly On, decimal UnitsPerEuro);

/// <summary>A file of reference rates as it was read. A file with problems is not taken at all.</summary>
public sealed record RateFile(IReadOnlyList<RateLine> Lines, IReadOnlyList<Problem> Problems);

/// <summary>
/// What became of the lines of a rate file: new entries, entries whose figure was put right, lines that said what was
/// known, and codes of closed or unknown currencies that were left out.
/// </summary>
public sealed record RateTaking(
    IReadOnlyList<ExchangeRate> Added, int Corrected, int Unchanged, IReadOnlyList<string> UnknownCodes)
{
    /// <summary>
    /// Takes the lines over the entries that are stored for their days. Taking the same file twice changes nothing.
    /// </summary>
    public static RateTaking Of(
        IEnumerable<RateLine> lines, IEnumerable<ExchangeRate> stored, RateKind kind, string source, Id<Person>? by, DateTimeOffset at)
    {
        var known = stored.Where(rate => rate.Kind == kind).ToDictionary(rate => (rate.Currency, rate.On));
        var added = new List<ExchangeRate>();
        var unknown = new SortedSet<string>(StringComparer.Ordinal);
        var (corrected, unchanged) = (0, 0);
        foreach (var line in lines)
        {
            if (!Currency.TryParse(line.Code, null, out var currency) || currency == Currency.Eur)
            {
                unknown.Add(line.Code);
            }
            else if (!known.TryGetValue((currency, line.On), out var rate))
            {
                rate = new ExchangeRate(currency, line.On, line.UnitsPerEuro, source, by, at, kind);
                known.Add((currency, line.On), rate);
                added.Add(rate);
            }
            else if (rate.UnitsPerEuro == line.UnitsPerEuro)
            {
                unchanged++;
            }
            else
            {
                rate.Correct(line.UnitsPerEuro, source, by, at);
                corrected++;
            }
        }

        return new RateTaking(added, corrected, unchanged, [.. unknown]);
    }
}
