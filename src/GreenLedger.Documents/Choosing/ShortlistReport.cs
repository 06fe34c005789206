using GreenLedger.Domain;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Pricing;

namespace GreenLedger.Documents.Choosing;

/// <summary>A shortlist as it leaves the house: the ranking, what it rests on, and who took it out on what day.</summary>
/// <param name="Rules">Name of the rule set.</param>
/// <param name="Revision">Of the rule set.</param>
/// <param name="IsTrial">True when the weights were tried on the page and are not those of the rule set.</param>
/// <param name="Form">Name of the cupping form that the rules rank by.</param>
/// <param name="Search">What the offers were narrowed to; null for all of them.</param>
/// <param name="On">The day whose rates, quotes and offers were taken.</param>
/// <param name="Costs">Landed cost of each offer, leg by leg; an offer may be absent.</param>
public sealed record ShortlistReport(
    string House,
    string Rules,
    int Revision,
    bool IsTrial,
    string Form,
    string? Search,
    string MadeBy,
    DateTimeOffset MadeAt,
    ClockZone Zone,
    DateOnly On,
    Shortlist Shortlist,
    IReadOnlyDictionary<Id<Offer>, LandedCost> Costs)
{
    /// <summary>The same for the workbook and the PDF, without the ending: <c>Shortlist House rules 2026-11-25</c>.</summary>
    public string FileName =>
        string.Concat($"Shortlist {Rules} {On:yyyy-MM-dd}".Select(letter => IsPlain(letter) ? letter : '-'));

    private static bool IsPlain(char letter) => char.IsLetterOrDigit(letter) || letter is ' ' or '-' or '_' or '.';
}
