using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Stock;

/// <summary>How stock is valued (IAS 2.23 to 2.25, from memory; handbook, trade 9.1).</summary>
public enum ValuationMethod
{
    /// <summary>Every lot at its own cost: right for goods that are not interchangeable, as green lots are.</summary>
    EachLot = 0,

    /// <summary>First in, first out, over interchangeable coffee.</summary>
    FirstInFirstOut = 1,

    /// <summary>The weighted average after each receipt, over interchangeable coffee.</summary>
    WeightedAverage = 2,
}

public static class ValuationMethods
{
    public static string Word(this ValuationMethod method) => method switch
    {
        ValuationMethod.EachLot => "each lot at its own cost",
        ValuationMethod.FirstInFirstOut => "first in, first out",
        ValuationMethod.WeightedAverage => "weighted average",
        _ => throw new ArgumentOutOfRangeException(nameof(method)),
    };
}

/// <summary>A receipt with what it cost, or an issue with no cost of its own.</summary>
/// <param name="Weight">Above zero for a receipt, below zero for an issue.</param>
/// <param name="Cost">Of a receipt; null for an issue, whose cost the method says.</param>
public sealed record StockStep(Weight Weight, Money? Cost);

/// <summary>What was issued and what is left, with their cost; together they are what was received, to the cent.</summary>
public sealed record StockValue(Weight Issued, Money IssuedCost, Weight Left, Money LeftCost)
{
    /// <summary>
    /// Works through receipts and issues in their order. Costs are rounded to the cent once, at each issue; what is left
    /// takes the rest, so that nothing is lost.
    /// </summary>
    /// <exception cref="RuleBrokenException">More is issued than was there, or the steps are in two currencies.</exception>
    public static StockValue Of(IEnumerable<StockStep> steps, ValuationMethod method, Currency currency)
    {
        ArgumentNullException.ThrowIfNull(steps);
        var layers = new List<(Weight Weight, Money Cost)>();
        var (issued, issuedCost) = (Weight.Zero, Money.Zero(currency));
        foreach (var step in steps)
        {
            Rule.Require(step.Weight > Weight.Zero || -step.Weight.Micrograms <= layers.Sum(layer => layer.Weight.Micrograms), "More is issued than was there: check the order of the movements.", nameof(Issued));
            if (step.Weight > Weight.Zero)
            {
                Rule.Require(step.Cost is { } cost && cost.Currency == currency, $"Every receipt needs its cost in {currency}.", nameof(LeftCost));
                layers.Add((step.Weight, step.Cost!.Value));
                Merge(layers, method);
            }
            else
            {
                issued -= step.Weight;
                issuedCost += Issue(layers, new Weight(-step.Weight.Micrograms));
            }
        }

        return new StockValue(
            issued,
            issuedCost,
            layers.Aggregate(Weight.Zero, (sum, layer) => sum + layer.Weight),
            layers.Aggregate(Money.Zero(currency), (sum, layer) => sum + layer.Cost));
    }

    private static void Merge(List<(Weight Weight, Money Cost)> layers, ValuationMethod method)
    {
        if (method != ValuationMethod.FirstInFirstOut && layers.Count > 1)
        {
            var whole = layers.Aggregate((sum, layer) => (sum.Weight + layer.Weight, sum.Cost + layer.Cost));
            layers.Clear();
            layers.Add(whole);
        }
    }

    /// <summary>Takes from the first layers on.</summary>
    private static Money Issue(List<(Weight Weight, Money Cost)> layers, Weight wanted)
    {
        Money? taken = null;
        while (wanted > Weight.Zero)
        {
            var (weight, cost) = layers[0];
            var share = wanted < weight ? wanted : weight;
            var part = share == weight ? cost : Money.Of(cost.Amount * share.Micrograms / weight.Micrograms, cost.Currency);
            taken = taken is { } sum ? sum + part : part;
            wanted -= share;
            layers.RemoveAt(0);
            if (share < weight)
            {
                layers.Insert(0, (weight - share, cost - part));
            }
        }

        return taken!.Value;
    }
}
