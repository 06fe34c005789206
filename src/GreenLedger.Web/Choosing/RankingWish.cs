using GreenLedger.Domain;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Offers;

namespace GreenLedger.Web.Choosing;

/// <summary>
/// What an address asks of a ranking: a rule set by its name, weights to try in place of its own, and words that the
/// offers must contain. What is not asked is as the rules say.
/// </summary>
public sealed class RankingWish
{
    public string? Rules { get; set; }

    public decimal? WeightScore { get; set; }

    public decimal? WeightCost { get; set; }

    public decimal? WeightCostPerPoint { get; set; }

    public decimal? WeightProcess { get; set; }

    public string? Search { get; set; }

    public RuleTerms TermsOf(BuyingRules rules)
    {
        var terms = rules.Terms;
        return terms with
        {
            Weights = terms.Weights with
            {
                Score = WeightScore ?? terms.Weights.Score,
                Cost = WeightCost ?? terms.Weights.Cost,
                CostPerPoint = WeightCostPerPoint ?? terms.Weights.CostPerPoint,
                Process = WeightProcess ?? terms.Weights.Process,
            },
        };
    }

    /// <summary>For a link to another page that shall rank the same way; weights that are the rules' own are left out.</summary>
    public IDictionary<string, string> RouteFor(BuyingRules rules)
    {
        var own = rules.Terms.Weights;
        var route = new Dictionary<string, string> { [nameof(Rules)] = rules.Name };
        Add(route, nameof(WeightScore), WeightScore, own.Score);
        Add(route, nameof(WeightCost), WeightCost, own.Cost);
        Add(route, nameof(WeightCostPerPoint), WeightCostPerPoint, own.CostPerPoint);
        Add(route, nameof(WeightProcess), WeightProcess, own.Process);
        return route;
    }

    /// <summary>The same for the page of one offer.</summary>
    public static IDictionary<string, string> RouteTo(Id<Offer> offer, IDictionary<string, string> route) =>
        new Dictionary<string, string>(route) { ["id"] = offer.ToString() };

    private static void Add(Dictionary<string, string> route, string name, decimal? asked, decimal own)
    {
        if (asked is { } weight && weight != own)
        {
            route[name] = weight.ToString(System.Globalization.CultureInfo.InvariantCulture);
        }
    }
}
