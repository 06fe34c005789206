using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Cupping;

/// <summary>How every cup of a session is made, so that it can be made again. A past session says nothing of it.</summary>
public sealed record TablePlan
{
    /// <summary>The smallest and largest cup that is believed, in mL; the protocol's bowls hold 175 to 266.</summary>
    private const int Smallest = 50, Largest = 500;

    /// <exception cref="RuleBrokenException">The cup or the dose is not one that anybody cups with.</exception>
    public TablePlan(int cupMilliliters, Weight dose, string? water)
    {
        Rule.Require(cupMilliliters is >= Smallest and <= Largest, $"A cup holds between {Smallest} and {Largest} mL.", nameof(CupMilliliters));
        Rule.Require(dose.Grams is >= 1m and <= 50m, "The dose of a cup lies between 1 and 50 g.", nameof(Dose));
        CupMilliliters = cupMilliliters;
        Dose = dose;
        Water = Rule.OptionalText(water, "What is said of the water", 200, nameof(Water));
    }

    /// <summary>Water of a full cup, in mL.</summary>
    public int CupMilliliters { get; }

    /// <summary>Whole beans weighed for one cup.</summary>
    public Weight Dose { get; }

    /// <summary>What the house says of its water: filtered, 150 mg/L dissolved solids, 93 °C.</summary>
    public string? Water { get; }

    /// <summary>Grams of coffee in a litre of water; the protocol asks for 55 (8.25 g in 150 mL, handbook quality.md section 1.1).</summary>
    public decimal GramsPerLiter => Dose.Grams * 1000m / CupMilliliters;

    /// <summary>The dose for a cup: so many grams a litre times its volume, to the nearest 0.01 g, half away from zero.</summary>
    public static Weight ProposedDose(int cupMilliliters, decimal gramsPerLiter) =>
        Weight.FromGrams(Math.Round(gramsPerLiter * cupMilliliters / 1000m, 2, MidpointRounding.AwayFromZero));
}
