using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Offers.Reading.Words;

/// <summary>
/// Short names of certification schemes and the words by which lists say them. Handbook, trade 6 names the schemes; the
/// words are from memory.
/// </summary>
internal static class CertificateWords
{
    private static readonly (string Scheme, string[] Words)[] Schemes =
    [
        ("organic", Folded("organic, orgánico, orgánica, orgânico, biologique, bio, öko, eu organic, nop, ecológico, biológico, jas")),
        ("fairtrade", Folded("fairtrade, fair trade, flo, comercio justo, comércio justo, commerce équitable")),
        ("rainforest alliance", Folded("rainforest alliance, rainforest, rfa, ra")),
        ("4C", Folded("4c")),
        ("women grown", Folded("women grown, mujeres cafeteras")),
    ];

    /// <summary>The schemes that a text names, each once.</summary>
    public static IEnumerable<string> In(string text)
    {
        var folded = SearchText.Of(text);
        return Schemes.Where(scheme => scheme.Words.Any(word => TradeWords.HasPhrase(folded, word))).Select(scheme => scheme.Scheme);
    }

    private static string[] Folded(string words) => [.. words.Split(',').Select(word => SearchText.Of(word))];
}
