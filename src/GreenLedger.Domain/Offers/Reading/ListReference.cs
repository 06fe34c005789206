using System.Collections.Frozen;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Origins;

namespace GreenLedger.Domain.Offers.Reading;

/// <summary>
/// What the ledger knows when it reads a list: its countries, its process methods, and the checks that the buyer set.
/// Built once for a list, since it keeps what it looked up.
/// </summary>
public sealed class ListReference
{
    private readonly FrozenDictionary<string, string> _countries;
    private readonly List<(string[] Words, ProcessMethod Method)> _processWords;
    private readonly Remembered<ProcessMethod?> _processes;
    private readonly Remembered<string?> _countryCodes;

    public ListReference(IEnumerable<Country> countries, IEnumerable<ProcessMethod> methods, ListChecks checks, DateOnly today)
    {
        Countries = [.. countries];
        _countries = Countries
            .SelectMany(country => country.OtherNames.Append(country.Name).Append(country.Code).Select(name => (Name: SearchText.Of(name), country.Code)))
            .DistinctBy(pair => pair.Name).ToFrozenDictionary(pair => pair.Name, pair => pair.Code);
        _processWords =
        [
            .. methods.SelectMany(method => method.Synonyms.Append(method.Name).Select(word => (SearchText.Of(word).Split(' '), method)))
                .Where(pair => pair.Item1[0].Length > 0),
        ];
        _processes = new Remembered<ProcessMethod?>(Look);
        _countryCodes = new Remembered<string?>(LookUpCountry);
        Checks = checks;
        Today = today;
    }

    public IReadOnlyList<Country> Countries { get; }

    public ListChecks Checks { get; }

    /// <summary>The day on which the list is read: a futures month with a one-digit year is the next such.</summary>
    public DateOnly Today { get; }

    /// <summary>The country of this name in any language, or of this code; null when it is none of the ledger's.</summary>
    public string? CountryOf(string? text) => string.IsNullOrWhiteSpace(text) ? null : _countryCodes.Of(text);

    /// <summary>
    /// The method whose word stands in the text, whatever the order of the words: of several the one with the most words,
    /// so that "natural anaeróbico, 48 h" is the anaerobic natural. Null when no word is known or two methods fit equally.
    /// </summary>
    public ProcessMethod? ProcessOf(string? text) => string.IsNullOrWhiteSpace(text) ? null : _processes.Of(text);

    private string? LookUpCountry(string text) =>
        _countries.GetValueOrDefault(SearchText.Of(text)) ?? _countries.GetValueOrDefault(SearchText.Of(text.Split(',', '/', '(')[0]));

    private ProcessMethod? Look(string text)
    {
        var words = SearchText.Of(text).Split(' ');
        var fitting = _processWords.Where(known => known.Words.All(words.Contains)).ToList();
        if (fitting.Count == 0)
        {
            return null;
        }

        var most = fitting.Max(known => known.Words.Length);
        var best = fitting.Where(known => known.Words.Length == most).Select(known => known.Method).Distinct().ToList();
        return best.Count == 1 ? best[0] : null;
    }
}
