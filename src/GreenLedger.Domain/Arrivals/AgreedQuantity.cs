using System.Globalization;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Arrivals;

/// <summary>
/// The quantity of a contract and by how much the shipped weight may differ from it, more or less (handbook, trade 4.1). It is
/// held against what was shipped, not against what landed.
/// </summary>
public sealed record AgreedQuantity(Weight Net, Percent Tolerance)
{
    /// <summary>What was shipped in all parts of the contract; null where the weight held against it is all of it.</summary>
    public Weight? InAll { get; init; }

    public Weight Least => Weight.FromKilograms(Net.Kilograms * (1m - Tolerance.Fraction));

    public Weight Most => Weight.FromKilograms(Net.Kilograms * (1m + Tolerance.Fraction));

    /// <exception cref="RuleBrokenException">The quantity is not above zero or the tolerance out of range.</exception>
    public static AgreedQuantity Of(Weight net, Percent tolerance)
    {
        Rule.Require(net > Weight.Zero, "The agreed quantity lies above 0 kg.", nameof(Net));
        Rule.Require(tolerance.Points is >= 0m and <= 20m, "The tolerance of quantity lies between 0 and 20 %.", nameof(Tolerance));
        return new AgreedQuantity(net, tolerance);
    }

    /// <param name="shipped">In all, or in the part at hand where <see cref="InAll"/> says nothing.</param>
    public bool Allows(Weight shipped) => (InAll ?? shipped) >= Least && (InAll ?? shipped) <= Most;

    /// <summary>What lies beyond the tolerance: above zero where too much was shipped, below zero where too little, 0 kg within it.</summary>
    /// <param name="shipped">As for <see cref="Allows"/>.</param>
    public Weight Beyond(Weight shipped)
    {
        var held = InAll ?? shipped;
        return held < Least ? held - Least : held > Most ? held - Most : Weight.Zero;
    }

    internal string Sentence(Weight shipped, PricePerWeight? price)
    {
        var range = $"{Kg(Least)} to {Kg(Most)} ({Kg(Net)} with {Tolerance} more or less)";
        var what = InAll is { } all ? $"Under the whole contract {Kg(all)} were shipped, which" : "The shipped weight";
        return $"{what} lies {(Allows(shipped) ? "within" : "outside")} the agreed quantity, {range}.{Money(shipped, price)}";
    }

    /// <summary>What lies beyond the tolerance, else what it allowed, with its worth.</summary>
    private string Money(Weight shipped, PricePerWeight? price)
    {
        var beyond = Beyond(shipped);
        var apart = beyond == Weight.Zero ? (InAll ?? shipped) - Net : beyond;
        if (apart == Weight.Zero)
        {
            return "";
        }

        var size = apart < Weight.Zero ? Weight.Zero - apart : apart;
        var worth = price is { } known ? $"at {known.AsQuoted()} worth {known * size}" : "of which the price is not fixed yet";
        return $" That is {Kg(size)} {(apart < Weight.Zero ? "less" : "more")} than {(beyond == Weight.Zero ? "agreed" : "the tolerance allows")}, {worth}{(beyond == Weight.Zero ? ", which the tolerance allows" : "")}.";
    }

    private static string Kg(Weight weight) => weight.Kilograms.ToString("#,0.#########", CultureInfo.InvariantCulture) + " kg";
}
