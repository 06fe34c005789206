using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Grading;

namespace GreenLedger.Domain.Arrivals;

/// <summary>The limits that an arrival is held against: each from the contract, else the house's own.</summary>
/// <param name="Agreed">The names of those that the contract sets, as the verdict calls them.</param>
public sealed record ArrivalLimits(PhysicalLimits Limits, IReadOnlySet<string> Agreed)
{
    /// <param name="terms">Of the contract; null where it names none.</param>
    public static ArrivalLimits Of(LimitTerms? terms, ArrivalHabits habits)
    {
        ArgumentNullException.ThrowIfNull(habits);
        var agreed = terms ?? new LimitTerms();
        var names = new HashSet<string>(StringComparer.Ordinal);
        Name(agreed.LowestMoisture is not null || agreed.HighestMoisture is not null, "Moisture");
        Name(agreed.WaterActivityBelow is not null, "Water activity");
        Name(agreed.Category1 is not null, "Category 1 full defects");
        Name(agreed.Category2 is not null, "Category 2 full defects");
        Name(agreed.LeastOnScreen is not null, FormattableString.Invariant($"Screen {agreed.Screen} and above"));
        return new ArrivalLimits(
            new PhysicalLimits(
                names.Count == 0 ? "The house's own" : "Agreed",
                (agreed.LowestMoisture ?? habits.LowestMoisture).Points,
                (agreed.HighestMoisture ?? habits.HighestMoisture).Points,
                (agreed.WaterActivityBelow ?? habits.WaterActivityBelow)?.Ratio,
                agreed.Category1,
                agreed.Category2,
                null,
                LeastOnStatedScreen: (agreed.LeastOnScreen ?? habits.LeastOnStatedScreen)?.Points,
                Screen: agreed.Screen,
                CountedBy: agreed.CountedBy,
                OwnTable: agreed.OwnTable),
            names);

        void Name(bool isAgreed, string name)
        {
            if (isAgreed)
            {
                names.Add(name);
            }
        }
    }
}
