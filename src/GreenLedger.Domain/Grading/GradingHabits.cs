namespace GreenLedger.Domain.Grading;

/// <summary>How the house grades where nothing else is said. One row; both are habits, without a published rule.</summary>
public sealed class GradingHabits
{
    public Id<GradingHabits> Id { get; private set; } = Id<GradingHabits>.New();

    public int Version { get; private set; }

    /// <summary>What becomes of a part of a full defect; dropped by habit.</summary>
    public DefectFractions Fractions { get; private set; }

    /// <summary>How moisture is usually measured here.</summary>
    public string? MoistureMethod { get; private set; }

    public void Grade(DefectFractions fractions, string? moistureMethod)
    {
        Rule.Require(Enum.IsDefined(fractions), "Choose what becomes of parts of a full defect.", nameof(Fractions));
        Fractions = fractions;
        MoistureMethod = Rule.OptionalText(moistureMethod, "The method", 100, nameof(MoistureMethod));
    }
}
