using GreenLedger.Documents.Layout;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Documents.Choosing;

/// <summary>One line of the rules: what is asked, the figure with its unit in words, and how many lots miss it.</summary>
internal sealed record RuleLine(string Name, object Value, string Unit, Gate Gate);

/// <summary>A rule set in plain trade words, as every document prints it.</summary>
internal static class PrintedRules
{
    /// <summary>The gates that the rules ask for, in the order of the page; empty when they ask for none.</summary>
    public static IReadOnlyList<RuleLine> Gates(RuleTerms terms)
    {
        var gates = terms.Gates;
        var lines = new List<RuleLine?>
        {
            Line("Least score", gates.LeastScore?.Points, "points", Gate.LeastScore),
            Line("Least lower bound of the score", gates.LeastLowerBound?.Points, "points", Gate.LeastLowerBound),
            Line("Highest landed cost", gates.HighestCostPerKilogram, $"{terms.Currency}/kg", Gate.HighestCost),
            Line("Least moisture", gates.LeastMoisture?.Points, "%", Gate.Moisture),
            Line("Highest moisture", gates.HighestMoisture?.Points, "%", Gate.Moisture),
            Line("Highest water activity", gates.HighestWaterActivity?.ToString(), "", Gate.WaterActivity),
            Line("Most category 1 defects", gates.HighestCategory1?.ToString(), "full defects", Gate.Category1),
            Line("Most category 2 defects", gates.HighestCategory2?.ToString(), "full defects", Gate.Category2),
            Line("Most quakers", gates.HighestQuakers, "beans", Gate.Quakers),
            Line($"Least kept by screen {gates.Screen}", gates.LeastRetained?.Points, "% of the mass", Gate.Screen),
            Line("Least quantity", gates.LeastQuantity?.Kilograms, "kg", Gate.Quantity),
            Line("Earliest crop", gates.EarliestCropYear, "", Gate.CropYear),
            Line("Certificates", gates.Certificates.Count == 0 ? null : string.Join(", ", gates.Certificates), "", Gate.Certificates),
            Line("Processes allowed", Allowed(terms), "", Gate.Process),
        };
        return [.. lines.OfType<RuleLine>()];
    }

    public static string CostPerPoint(RuleTerms terms) => terms.CostPerPoint switch
    {
        CostPerPointRule.PricePerPoint => "landed cost of a kg ÷ score",
        CostPerPointRule.PricePerPointAbove => $"landed cost of a kg ÷ points above {Points(terms.BaseScore)}",
        _ => "extra cost of a kg ÷ extra points over the cheapest lot that passes",
    };

    public static string Sessions(RuleTerms terms) => terms.Sessions switch
    {
        SessionRule.Latest => "the session held last",
        SessionRule.Mean => "the mean of all sessions",
        _ => "all sessions, each by one over its error squared",
    };

    public static string Stated(RuleTerms terms) => terms.RanksStatedScores
        ? $"ranked, with a doubt of ± {Points(terms.StatedDoubt)} points"
        : "not ranked";

    private static RuleLine? Line(string name, object? value, string unit, Gate gate) =>
        value is null ? null : new RuleLine(name, value, unit, gate);

    private static string? Allowed(RuleTerms terms)
    {
        var (yes, no) = (Names(terms, allowed: true), Names(terms, allowed: false));
        return (terms.OtherProcessesAllowed, no.Length) switch
        {
            (true, 0) => null,
            (true, _) => "all but " + no,
            _ => yes.Length == 0 ? "none" : yes,
        };
    }

    private static string Names(RuleTerms terms, bool allowed) =>
        string.Join(", ", terms.Processes.Where(choice => choice.IsAllowed == allowed).Select(choice => choice.Name));

    private static string Points(Score score) => Printed.Points(score);
}
