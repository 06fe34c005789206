using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Offers;

/// <summary>
/// A lot as far as a name in somebody's file may mean it: by its reference, else by its ICO mark, else by its name. Case, accents,
/// spaces and punctuation do not count, as on offer lists.
/// </summary>
public sealed record NamedLot(Id<Lot> Id, string Ref, string Name, string? Mark = null)
{
    private const int MostNamed = 4;

    private readonly string _ref = SearchText.Of(Ref);
    private readonly string _name = SearchText.Of(Name);
    private readonly string? _mark = IcoMark.Normalise(Mark);

    /// <summary>The texts under which this lot is looked up.</summary>
    public IEnumerable<string> Keys => _mark is null ? [_ref, _name] : [_ref, _name, _mark];

    /// <summary>The text under which a name is looked up: of an ICO mark its padded form.</summary>
    public static string KeyOf(string name) => IcoMark.Normalise(name) ?? SearchText.Of(name);

    /// <summary>The lots that a name means best: those of this reference, else of this mark, else of this name.</summary>
    public static IReadOnlyList<NamedLot> Meant(string name, IReadOnlyCollection<NamedLot> lots)
    {
        var (text, mark) = (SearchText.Of(name), IcoMark.Normalise(name));
        foreach (var fits in new Func<NamedLot, bool>[] { lot => lot._ref == text, lot => mark is not null && lot._mark == mark, lot => lot._name == text })
        {
            if (lots.Where(fits).ToList() is { Count: > 0 } meant)
            {
                return meant;
            }
        }

        return [];
    }

    /// <summary>Why a row of this name is set aside rather than guessed.</summary>
    public static string SeveralSentence(string name, IReadOnlyList<NamedLot> lots)
    {
        ArgumentNullException.ThrowIfNull(lots);
        var some = string.Join(", ", lots.OrderBy(lot => lot.Ref, StringComparer.Ordinal).Take(MostNamed).Select(lot => lot.Name == lot.Ref ? lot.Ref : $"{lot.Ref} ({lot.Name})"));
        return $"'{name}' may be {some}{(lots.Count > MostNamed ? " or others" : "")}: write the label code of the sample that was cupped instead.";
    }
}
