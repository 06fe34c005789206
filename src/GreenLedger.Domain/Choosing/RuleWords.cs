using System.Globalization;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Choosing;

/// <summary>One line of a rule set that an edit changed; null where it was or is not asked.</summary>
public sealed record RuleChange(string What, string? Before, string? After);

/// <summary>A limit of a gate as a figure: "at least" 85 points, "at most" 12 %.</summary>
public sealed record GateFigure(string Bound, decimal Figure, string Unit);

/// <summary>
/// One gate of a rule set in words, with its limits as figures where it has any; <see cref="Gate.None"/> for what is said
/// of all of them.
/// </summary>
public sealed record GateWords(Gate Gate, string What, string Says, IReadOnlyList<GateFigure> Figures);

/// <summary>What a rule set says, line by line, in plain trade words; what it does not ask is left out.</summary>
/// <param name="terms">The terms.</param>
/// <param name="form">The name of the form that they rank by; null where it is not known.</param>
public sealed class RuleWords(RuleTerms terms, string? form)
{
    public IReadOnlyList<(string What, string Says)> Lines => [.. Weighing, .. Gates.Select(line => (line.What, line.Says))];

    /// <summary>What is compared and what weighs how much.</summary>
    public IReadOnlyList<(string What, string Says)> Weighing => [.. Ranking()];

    public string Sessions => Word(terms.Sessions);

    public string Stated => terms.RanksStatedScores ? $"ranked, with a doubt of ± {terms.StatedDoubt} points" : "not ranked";

    public string CostPerPoint =>
        terms.CostPerPoint == CostPerPointRule.PricePerPointAbove ? $"{Word(terms.CostPerPoint)} of {terms.BaseScore}" : Word(terms.CostPerPoint);

    /// <summary>The gates that are asked; none where the rules ask for none.</summary>
    public IReadOnlyList<GateWords> Gates => [.. Asked().OfType<GateWords>()];

    private IEnumerable<(string, string)> Ranking()
    {
        var (weights, anchors) = (terms.Weights, terms.Anchors);
        yield return ("Form", form ?? "unknown");
        yield return ("Several sessions", Sessions);
        yield return ("Stated scores", Stated);
        yield return ("Cost per point", CostPerPoint);
        yield return ("Weight of score", $"{Share(weights.Score)}; {anchors.LowScore} counts 0, {anchors.HighScore} counts 1");
        yield return ("Weight of landed cost", $"{Share(weights.Cost)}; {Cost(anchors.HighCost)} counts 0, {Cost(anchors.LowCost)} counts 1");
        if (weights.CostPerPoint > 0m)
        {
            yield return ("Weight of cost per point", $"{Share(weights.CostPerPoint)}; {Amount(anchors.HighCostPerPoint)} counts 0, {Amount(anchors.LowCostPerPoint)} counts 1");
        }

        if (weights.Process > 0m)
        {
            var preferred = terms.Processes.Where(choice => choice.Preference > 0m).Select(choice => $"{choice.Name} {Number(choice.Preference)}");
            yield return ("Weight of process", $"{Share(weights.Process)}; {string.Join(", ", preferred.DefaultIfEmpty("none preferred"))}, any other 0");
        }
    }

    private IEnumerable<GateWords?> Asked()
    {
        var gates = terms.Gates;
        return
        [
            AtLeast(Gate.LeastScore, "Score", gates.LeastScore, gates.LeastScore?.Points, "points"),
            AtLeast(Gate.LeastLowerBound, "Lower bound of the score", gates.LeastLowerBound, gates.LeastLowerBound?.Points, "points"),
            AtMost(Gate.HighestCost, "Landed cost", gates.HighestCostPerKilogram is { } highest ? Cost(highest) : null, gates.HighestCostPerKilogram, $"{terms.Currency.Code}/kg"),
            Words(Gate.Process, "Process", Processes()),
            Moisture(gates.LeastMoisture, gates.HighestMoisture),
            AtMost(Gate.WaterActivity, "Water activity", gates.HighestWaterActivity, gates.HighestWaterActivity?.Ratio, "ratio"),
            AtMost(Gate.Category1, "Category 1 defects", gates.HighestCategory1, gates.HighestCategory1?.Count, "full defects"),
            AtMost(Gate.Category2, "Category 2 defects", gates.HighestCategory2, gates.HighestCategory2?.Count, "full defects"),
            AtMost(Gate.Quakers, "Quakers", gates.HighestQuakers, gates.HighestQuakers, "quakers"),
            Screen(gates.Screen, gates.LeastRetained),
            AtLeast(Gate.Quantity, "Quantity", gates.LeastQuantity is { } quantity ? $"{quantity.Kilograms.ToString("#,##0.##", CultureInfo.InvariantCulture)} kg" : null, gates.LeastQuantity?.Kilograms, "kg"),
            Words(Gate.CropYear, "Crop year", gates.EarliestCropYear is { } year ? $"{year} or later" : null),
            Words(Gate.Certificates, "Certificates", gates.Certificates.Count > 0 ? string.Join(", ", gates.Certificates) : null),
            Words(Gate.None, "What was not measured", terms.MeasurementsRequired ? "fails its gate" : null),
        ];
    }

    /// <summary>What differs between two editions of a rule set: what the later says, then what it no longer asks.</summary>
    public static IReadOnlyList<RuleChange> Changes(RuleWords before, RuleWords after)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        var (was, now) = (before.Lines.ToDictionary(line => line.What, line => line.Says), after.Lines.ToDictionary(line => line.What, line => line.Says));
        var changed = after.Lines.Where(line => was.GetValueOrDefault(line.What) != line.Says)
            .Select(line => new RuleChange(line.What, was.GetValueOrDefault(line.What), line.Says));
        var gone = before.Lines.Where(line => !now.ContainsKey(line.What)).Select(line => new RuleChange(line.What, line.Says, null));
        return [.. changed, .. gone];
    }

    public static string Word(SessionRule rule) => rule switch
    {
        SessionRule.Latest => "the latest counts",
        SessionRule.Mean => "their mean",
        SessionRule.InverseVariance => "the surer, the more it counts",
        _ => throw new ArgumentOutOfRangeException(nameof(rule)),
    };

    public static string Word(CostPerPointRule rule) => rule switch
    {
        CostPerPointRule.PricePerPoint => "cost divided by the score",
        CostPerPointRule.PricePerPointAbove => "cost divided by the points above a base score",
        CostPerPointRule.StepUp => "extra cost for each extra point over the cheapest lot that passes",
        _ => throw new ArgumentOutOfRangeException(nameof(rule)),
    };

    /// <summary>Null where every process is allowed.</summary>
    private string? Processes()
    {
        var named = terms.Processes.Where(choice => choice.IsAllowed != terms.OtherProcessesAllowed).Select(choice => choice.Name).ToList();
        return terms.OtherProcessesAllowed
            ? named.Count == 0 ? null : "any but " + string.Join(", ", named)
            : named.Count == 0 ? "none allowed" : string.Join(", ", named);
    }

    private static GateWords? Words(Gate gate, string what, string? says) => says is null ? null : new GateWords(gate, what, says, []);

    private static GateWords? AtLeast(Gate gate, string what, object? limit, decimal? figure, string unit) =>
        figure is null ? null : new GateWords(gate, what, $"at least {limit}", [new GateFigure("at least", figure.Value, unit)]);

    private static GateWords? AtMost(Gate gate, string what, object? limit, decimal? figure, string unit) =>
        figure is null ? null : new GateWords(gate, what, $"at most {limit}", [new GateFigure("at most", figure.Value, unit)]);

    private static GateWords? Moisture(Percent? least, Percent? highest)
    {
        var (low, high) = (AtLeast(Gate.Moisture, "Moisture", least, least?.Points, "%"), AtMost(Gate.Moisture, "Moisture", highest, highest?.Points, "%"));
        return low is null || high is null ? low ?? high : new GateWords(Gate.Moisture, "Moisture", $"{least} to {highest}", [.. low.Figures, .. high.Figures]);
    }

    private static GateWords? Screen(int? screen, Percent? kept) => screen is { } size
        ? AtLeast(Gate.Screen, "Screen", $"{kept} kept by screen {Number(size)}", kept?.Points, $"% kept by screen {Number(size)}") : null;

    private string Share(decimal weight) => (weight / terms.Weights.Sum * 100m).ToString("0.#", CultureInfo.InvariantCulture) + " %";

    private string Cost(decimal perKilogram) => Amount(perKilogram) + "/kg";

    private string Amount(decimal amount) => amount.ToString("#,##0.00##", CultureInfo.InvariantCulture) + " " + terms.Currency.Code;

    private static string Number(decimal figure) => figure.ToString("0.##", CultureInfo.InvariantCulture);
}
