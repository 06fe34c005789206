using System.Globalization;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Choosing;

/// <summary>A shortlist's reasons in plain trade words, made for one lot at a time.</summary>
public sealed class ShortlistWords(Shortlist shortlist)
{
    private readonly RuleTerms _terms = shortlist.Terms;
    private readonly Lazy<LotSpread?> _lots = new(() => LotSpread.Of(shortlist.Entries));
    private readonly ILookup<ShortlistEntry, (ShortlistEntry Other, string Says)> _close = Separation.Of(shortlist.Front)
        .SelectMany(pair => new[] { (Entry: pair.Cheaper, Other: pair.Dearer, pair.Says), (Entry: pair.Dearer, Other: pair.Cheaper, pair.Says) })
        .ToLookup(side => side.Entry, side => (side.Other, side.Says));

    /// <summary>Gates and terms behind a lot's place, the most telling first.</summary>
    public IReadOnlyList<string> Reasons(ShortlistEntry entry) => entry.Standing switch
    {
        Standing.OtherForm => [OtherForm(entry)],
        Standing.Failed => Failures(entry),
        _ => [Place(entry), .. Terms(entry), Front(entry), .. Close(entry), .. Doubts(entry), .. Price(entry)],
    };

    public string Place(ShortlistEntry entry) =>
        $"Rank {entry.Rank} of {Count(shortlist.Ranked.Count)}: passes every gate, weighted score {Figure(entry.Terms.Total, 4)}.";

    public string Front(ShortlistEntry entry)
    {
        if (entry.IsOnFront)
        {
            return "On the efficient front: no other lot scores at least as much for at most as much money.";
        }

        var better = shortlist.Front.Last(front => front.Candidate.CostPerKilogram <= entry.Candidate.CostPerKilogram);
        return $"Off the efficient front: {better.Candidate.Ref} scores {Points(better.Score!.Value.Score)} for {Cost(better.Candidate.CostPerKilogram!.Value)}.";
    }

    /// <summary>Neighbours on the front whose scores are not told apart from this lot's: <c>not separated by this cupping from B and C</c>.</summary>
    public IReadOnlyList<string> NotSeparated(ShortlistEntry entry) =>
        [.. _close[entry].GroupBy(side => side.Says).Select(sides => $"{sides.Key} from {string.Join(" and ", sides.Select(side => side.Other.Candidate.Ref))}")];

    public static string OtherForm(ShortlistEntry entry) =>
        $"Scored on another form than these rules rank by ({Count(entry.Candidate.Results.Length)} {(entry.Candidate.Results.Length == 1 ? "result" : "results")}): cup it on the rules' form to compare it.";

    /// <summary>One sentence for each gate that the lot fails, with what was found and what was asked.</summary>
    public IReadOnlyList<string> Failures(ShortlistEntry entry) =>
        [.. Enum.GetValues<Gate>().Where(gate => gate != Gate.None && entry.FailedGates.HasFlag(gate)).Select(gate => Failure(gate, entry))];

    /// <summary>True where facts are missing and nothing that is known breaks a gate.</summary>
    public static bool IsMissingOnly(ShortlistEntry entry) =>
        Enum.GetValues<Gate>().Where(gate => gate != Gate.None && entry.FailedGates.HasFlag(gate)).All(gate => IsMissing(gate, entry.Candidate));

    /// <summary>The gate by its name, as a column head or a badge says it.</summary>
    public static string Name(Gate gate) => gate switch
    {
        Gate.NoScore => "no score",
        Gate.NoCost => "no landed cost",
        Gate.LeastScore => "score",
        Gate.LeastLowerBound => "lower bound",
        Gate.HighestCost => "landed cost",
        Gate.Process => "process",
        Gate.Moisture => "moisture",
        Gate.WaterActivity => "water activity",
        Gate.Category1 => "category 1 defects",
        Gate.Category2 => "category 2 defects",
        Gate.Quakers => "quakers",
        Gate.Screen => "screen",
        Gate.Quantity => "quantity",
        Gate.CropYear => "crop year",
        Gate.Certificates => "certificates",
        _ => throw new ArgumentOutOfRangeException(nameof(gate)),
    };

    public static IReadOnlyList<string> Names(Gate gates) =>
        [.. Enum.GetValues<Gate>().Where(gate => gate != Gate.None && gates.HasFlag(gate)).Select(Name)];

    /// <summary>The arithmetic of the lot's cost per point; a sentence where it has none.</summary>
    public string CostPerPoint(ShortlistEntry entry)
    {
        if (entry.Score is not { } score || entry.Candidate.CostPerKilogram is not { } cost)
        {
            return "No cost per point without a score and a landed cost.";
        }

        var equals = entry.CostPerPoint is { } value ? $" = {Figure(value, 4)} {shortlist.Currency} per point" : "";
        return _terms.CostPerPoint switch
        {
            CostPerPointRule.PricePerPoint => $"{Cost(cost)} ÷ {Points(score.Score)} points{equals}",
            CostPerPointRule.PricePerPointAbove when entry.CostPerPoint is null => $"None: {Points(score.Score)} is not above the base score of {Points(_terms.BaseScore)}.",
            CostPerPointRule.PricePerPointAbove => $"{Cost(cost)} ÷ ({Points(score.Score)} − {Points(_terms.BaseScore)}) points{equals}",
            _ => StepUp(entry, score, cost, equals),
        };
    }

    private string StepUp(ShortlistEntry entry, in LotScore score, decimal cost, string equals)
    {
        if (shortlist.Reference is not { } reference || reference == entry)
        {
            return "None: this is the cheapest lot that passes, and steps up are counted from it.";
        }

        return entry.CostPerPoint is null
            ? $"None: it gains no point over {reference.Candidate.Ref}, the cheapest lot that passes."
            : $"({Cost(cost)} − {Cost(reference.Candidate.CostPerKilogram!.Value)}) ÷ ({Points(score.Score)} − {Points(reference.Score!.Value.Score)}) points{equals}, over {reference.Candidate.Ref}";
    }

    private IEnumerable<string> Terms(ShortlistEntry entry)
    {
        var (weights, anchors) = (_terms.Weights, _terms.Anchors);
        yield return Term("Score", Points(entry.Score!.Value.Score), entry.Terms.Score, weights.Score, $"{Points(anchors.LowScore)} counts 0, {Points(anchors.HighScore)} counts 1");
        yield return Term("Landed cost", Cost(entry.Candidate.CostPerKilogram!.Value), entry.Terms.Cost, weights.Cost, $"{Amount(anchors.HighCost)} counts 0, {Amount(anchors.LowCost)} counts 1");
        if (weights.CostPerPoint > 0)
        {
            yield return Term("Cost per point", entry.CostPerPoint is { } value ? Figure(value, 4) : "none", entry.Terms.CostPerPoint, weights.CostPerPoint, $"{Amount(anchors.HighCostPerPoint)} counts 0, {Amount(anchors.LowCostPerPoint)} counts 1");
        }

        if (weights.Process > 0)
        {
            yield return Term("Process", entry.Candidate.Process ?? "not stated", entry.Terms.Process, weights.Process, "by the preference in the rules");
        }
    }

    private string Term(string name, string value, double gives, decimal weight, string anchors) =>
        $"{name} {value} gives {Figure(gives, 4)} at a weight of {Figure((double)(weight / _terms.Weights.Sum * 100m), 0)} % ({anchors}).";

    private IEnumerable<string> Close(ShortlistEntry entry) => _close[entry].Select(side =>
        $"{char.ToUpperInvariant(side.Says[0])}{side.Says[1..]} from {side.Other.Candidate.Ref}, its neighbour on the front: the 95 % intervals of {Points(entry.Score!.Value.Score)} and {Points(side.Other.Score!.Value.Score)} overlap.");

    private IEnumerable<string> Doubts(ShortlistEntry entry)
    {
        if (entry.Score is { Origin: ScoreOrigin.Stated } stated)
        {
            yield return $"The score is the seller's own, taken with a doubt of ± {Figure(stated.StandardError, 2)} points; we have not cupped it.";
        }
        else if (entry.Score is { Sessions: > 1 } several)
        {
            yield return $"The score combines {several.Sessions} sessions.";
        }

        if (entry.Score is { Origin: ScoreOrigin.Cupped } cupped && _lots.Value is { } lots && (double)cupped.Score.Points > lots.Mean)
        {
            var read = ShrunkenScore.Of((double)cupped.Score.Points, cupped.AnyCupperError, lots);
            yield return $"Who scores high among many owes some of it to luck: drawn towards {Figure(lots.Mean, 2)}, the mean of {Count(lots.Lots)} lots, the score reads {Figure(read.Points, 2)} ± {Figure(read.StandardError, 2)} (one standard error).";
        }

        if (entry.Chance is { } chance)
        {
            yield return $"Chance of being the best {Share(chance.Best)}, of being among the first three {Share(chance.FirstThree)}.";
        }
    }

    private IEnumerable<string> Price(ShortlistEntry entry)
    {
        if (entry.PriceCheck is { Difference: { } difference, PredictedPerKilogram: { } predicted })
        {
            var lies = Math.Abs(difference) < 0.0005 ? "as predicted" : $"{Figure(Math.Abs(difference) * 100, 1)} % {(difference < 0 ? "below" : "above")} what our past offers predict";
            yield return $"Its cost lies {lies}: {Cost((decimal)predicted)}.";
        }
        else if (entry.PriceCheck?.WhyNot is { } whyNot)
        {
            yield return "No predicted price. " + whyNot;
        }
    }

    private string Failure(Gate gate, ShortlistEntry entry)
    {
        var (lot, gates, score) = (entry.Candidate, _terms.Gates, entry.Score);
        return gate switch
        {
            Gate.NoScore => lot.StatedScore is { } stated
                ? $"No score of ours: the seller states {Points(stated)}, which these rules do not rank. Cup it."
                : "No score: cup it on the rules' form.",
            Gate.NoCost => "No landed cost. " + (lot.CostProblem ?? "A figure is missing."),
            Gate.LeastScore => $"Score {Points(score!.Value.Score)} is below the least score of {Points(gates.LeastScore!.Value)}.",
            Gate.LeastLowerBound => $"The lower bound of the score, {Points(score!.Value.Low)}, is below {Points(gates.LeastLowerBound!.Value)}.",
            Gate.HighestCost => $"Landed cost {Cost(lot.CostPerKilogram!.Value)} is above {Cost(gates.HighestCostPerKilogram!.Value)}.",
            Gate.Process => $"Process {lot.Process ?? "not stated"} is not one that these rules allow.",
            Gate.Moisture => Measured("Moisture", lot.Moisture?.ToString(), $"{Range(gates)}"),
            Gate.WaterActivity => Measured("Water activity", lot.WaterActivity?.ToString(), $"at most {gates.HighestWaterActivity}"),
            Gate.Category1 => Measured("Category 1 defects", lot.Category1?.ToString(), $"at most {gates.HighestCategory1}"),
            Gate.Category2 => Measured("Category 2 defects", lot.Category2?.ToString(), $"at most {gates.HighestCategory2}"),
            Gate.Quakers => Measured("Quakers", lot.Quakers?.ToString(CultureInfo.InvariantCulture), $"at most {gates.HighestQuakers}"),
            Gate.Screen => Measured($"Kept by screen {gates.Screen}", lot.Retained?.ToString(), $"at least {gates.LeastRetained}"),
            Gate.Quantity => $"{Kilograms(lot.Quantity)} on offer is less than {Kilograms(gates.LeastQuantity!.Value)}.",
            Gate.CropYear => $"Crop {lot.CropYear ?? "not stated"} is older than {gates.EarliestCropYear}.",
            Gate.Certificates => $"Certificates {(lot.Certificates.Count == 0 ? "none" : string.Join(", ", lot.Certificates))}; the rules ask for {string.Join(", ", gates.Certificates)}.",
            _ => throw new ArgumentOutOfRangeException(nameof(gate)),
        };
    }

    private static bool IsMissing(Gate gate, Candidate lot) => gate switch
    {
        Gate.NoScore or Gate.NoCost => true,
        Gate.Moisture => lot.Moisture is null,
        Gate.WaterActivity => lot.WaterActivity is null,
        Gate.Category1 => lot.Category1 is null,
        Gate.Category2 => lot.Category2 is null,
        Gate.Quakers => lot.Quakers is null,
        Gate.Screen => lot.Retained is null,
        Gate.Quantity => lot.Quantity == Weight.Zero,
        Gate.CropYear => lot.CropYear is null,
        _ => false,
    };

    private static string Measured(string what, string? found, string asked) =>
        found is null ? $"{what} has not been measured; the rules ask for {asked}." : $"{what} {found}; the rules ask for {asked}.";

    private static string Range(Gates gates) => (gates.LeastMoisture, gates.HighestMoisture) switch
    {
        ({ } low, { } high) => $"{low} to {high}",
        ({ } low, null) => $"at least {low}",
        (_, { } high) => $"at most {high}",
        _ => "none",
    };

    private string Cost(decimal perKilogram) => $"{Amount(perKilogram)}/kg";

    private string Amount(decimal amount) => $"{amount.ToString("#,##0.00", CultureInfo.InvariantCulture)} {shortlist.Currency}";

    /// <summary>Two decimals, or all that are known where two would hide that a gate was missed: 79.9167.</summary>
    private static string Points(Score score) =>
        score.Points.ToString(Math.Round(score.Points, 2) == score.Points ? "0.00" : "0.00##", CultureInfo.InvariantCulture);

    private static string Kilograms(Weight weight) => weight.Kilograms.ToString("#,##0.##", CultureInfo.InvariantCulture) + " kg";

    private static string Count(int count) => count.ToString("#,##0", CultureInfo.InvariantCulture);

    private static string Figure(double value, int decimals) =>
        value.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

    private static string Share(double chance) =>
        chance is > 0 and < 0.001 ? "below 0.1 %" : Figure(chance * 100, 1) + " %";
}
