using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Offers;

/// <summary>
/// What the house believes of a row before it sets the row aside: one row of settings. The values to begin with are
/// habits of the trade (handbook, trade 1.1: bags as packed and big bags), so the buyer may change them.
/// </summary>
public sealed class ListChecks
{
    public ListChecks()
    {
        Id = Id<ListChecks>.New();
    }

    public Id<ListChecks> Id { get; private set; }

    public int Version { get; private set; }

    /// <summary>A bag heavier than this is an error, unless the row says that it is a big bag.</summary>
    public Weight HeaviestBag { get; private set; } = Weight.FromKilograms(100);

    public Weight HeaviestBigBag { get; private set; } = Weight.FromKilograms(1500);

    /// <summary>How far bags times bag weight may lie from the stated net weight.</summary>
    public Percent WeightTolerance { get; private set; } = Percent.Of(0.5m);

    public void Change(Weight heaviestBag, Weight heaviestBigBag, Percent weightTolerance)
    {
        Rule.Require(heaviestBag > Weight.Zero, "The heaviest bag holds more than 0 kg.", nameof(HeaviestBag));
        Rule.Require(heaviestBigBag >= heaviestBag, "A big bag holds at least as much as a bag.", nameof(HeaviestBigBag));
        Rule.Require(weightTolerance is { Points: >= 0m and <= 10m }, "The tolerance lies between 0 and 10 %.", nameof(WeightTolerance));
        HeaviestBag = heaviestBag;
        HeaviestBigBag = heaviestBigBag;
        WeightTolerance = weightTolerance;
    }
}
