using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Cupping;

/// <summary>What the house does at every table unless a session says otherwise: one row, kept by whoever leads.</summary>
public sealed class CuppingHabits
{
    private CuppingHabits()
    {
    }

    public Id<CuppingHabits> Id { get; private set; }

    public int Version { get; private set; }

    /// <summary>Water of a full cup, in mL. The protocol's worked figure is 150 mL; bowls of 207 to 266 mL are usual too.</summary>
    public int CupMilliliters { get; private set; } = 150;

    /// <summary>Coffee in a litre of water: 0.055 g/mL by the protocol (handbook quality.md section 1.1).</summary>
    public Weight DosePerLiter { get; private set; } = Weight.FromGrams(55m);

    public string? Water { get; private set; } = "filtered, 93 °C when poured";

    /// <summary>Samples that one palate takes before a break; common practice, no source.</summary>
    public int MostInFlight { get; private set; } = 8;

    /// <summary>Whether the descriptive form stands beside the score form unless a session says otherwise.</summary>
    public bool UsesDescriptiveForm { get; private set; }

    /// <summary>
    /// The repeatability below which a cupper's sheets count less, one standard deviation in points, as closing proposes it;
    /// null lets everybody count alike.
    /// </summary>
    public Score? StatedRepeatability { get; private set; }

    /// <exception cref="RuleBrokenException">It is not above 0 and at most 10 points.</exception>
    public void Expect(Score? statedRepeatability)
    {
        Rule.Require(statedRepeatability is null || statedRepeatability.Value.Points is > 0m and <= 10m, "State a repeatability above 0 and at most 10 points, or none.", nameof(StatedRepeatability));
        StatedRepeatability = statedRepeatability;
    }

    /// <summary>The habits of a house that has not said any.</summary>
    public static CuppingHabits Usual() => new() { Id = Id<CuppingHabits>.New() };

    /// <exception cref="RuleBrokenException">A number lies outside what anybody cups with.</exception>
    public void Change(int cupMilliliters, Weight dosePerLiter, string? water, int mostInFlight, bool usesDescriptiveForm)
    {
        Rule.Require(dosePerLiter.Grams is >= 20m and <= 120m, "The dose lies between 20 and 120 g a litre.", nameof(DosePerLiter));
        Rule.Require(mostInFlight is >= 1 and <= 30, "A flight holds between 1 and 30 samples.", nameof(MostInFlight));
        var plan = new TablePlan(cupMilliliters, TablePlan.ProposedDose(cupMilliliters, dosePerLiter.Grams), water);
        CupMilliliters = plan.CupMilliliters;
        DosePerLiter = dosePerLiter;
        Water = plan.Water;
        MostInFlight = mostInFlight;
        UsesDescriptiveForm = usesDescriptiveForm;
    }
}
