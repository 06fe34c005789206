using System.Globalization;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Arrivals;

/// <summary>
/// Landed against shipped net weight. Under a franchise the buyer bears that share of the shipped weight and only the excess is
/// refunded, at the contract's price (European Standard Contract for Coffee, Art. 3, by handbook, trade 4.1 and 8). Everything
/// is exact until the money is rounded, once.
/// </summary>
/// <param name="Shipped">Net, by the shipping weight note.</param>
/// <param name="Landed">Net, as weighed at arrival.</param>
/// <param name="Franchise">The share of the shipped weight that is not refunded; 0 % where every kilogram counts, as on landed weights.</param>
/// <param name="Price">The contract's; null while it is not fixed.</param>
/// <param name="Agreed">The quantity of the contract that was to be shipped, with what it may differ; null to leave it out.</param>
public sealed record WeightVerdict(Weight Shipped, Weight Landed, Percent Franchise, PricePerWeight? Price, AgreedQuantity? Agreed)
{
    /// <summary>Shipped less landed; below zero where more arrived.</summary>
    public Weight Loss => Shipped - Landed;

    /// <summary>The loss as a share of the shipped weight.</summary>
    public Percent LossShare => Percent.Of(Loss.Kilograms * 100m / Shipped.Kilograms);

    /// <summary>What the franchise leaves with the buyer.</summary>
    public Weight FranchiseWeight => Weight.FromKilograms(Shipped.Kilograms * Franchise.Fraction);

    /// <summary>The loss beyond the franchise, never below zero.</summary>
    public Weight Refunded => Loss > FranchiseWeight ? Loss - FranchiseWeight : Weight.Zero;

    public bool IsShort => Refunded > Weight.Zero;

    /// <summary>What the refunded weight is worth at the contract's price; null while that is not fixed.</summary>
    public Money? Worth => Price is { } price ? price * Refunded : null;

    /// <summary>What was shipped beyond the tolerance of the agreed quantity, below zero where too little was; null where no quantity was held against it.</summary>
    public Weight? BeyondAgreed => Agreed?.Beyond(Shipped);

    /// <summary>What that weight, more or less, is worth at the contract's price; null while that is not fixed.</summary>
    public Money? BeyondWorth => Price is { } price && BeyondAgreed is { } beyond ? price * (beyond < Weight.Zero ? Weight.Zero - beyond : beyond) : null;

    /// <summary>The arithmetic, line by line, to be checked by hand.</summary>
    public IReadOnlyList<string> Sentences => [.. Lines()];

    /// <exception cref="RuleBrokenException">A weight is not above zero, the landed one is beyond belief, or a share is out of range.</exception>
    public static WeightVerdict Of(Weight shipped, Weight landed, Percent franchise, PricePerWeight? price, AgreedQuantity? agreed = null)
    {
        Rule.Require(shipped > Weight.Zero, "The shipped net weight lies above 0 kg.", nameof(Shipped));
        Rule.Require(landed >= Weight.Zero, "The landed net weight lies at 0 kg or above.", nameof(Landed));
        Rule.Require(landed <= shipped * 2, "More than twice the shipped weight landed: please check both weights.", nameof(Landed));
        Rule.Require(franchise.Points is >= 0m and <= 10m, "The franchise lies between 0 and 10 %.", nameof(Franchise));
        Rule.Require(price is null or { Amount: > 0m }, "The price lies above 0.", nameof(Price));
        return new WeightVerdict(shipped, landed, franchise, price, agreed);
    }

    /// <summary>
    /// How much of the loss the change of moisture would explain, the dry matter staying the same; below zero where the coffee
    /// took up water.
    /// </summary>
    public Weight Drying(Percent atShipment, Percent atArrival) => Shipped - MoistureChange.Of(Shipped, atShipment, atArrival);

    private IEnumerable<string> Lines()
    {
        yield return Loss.Micrograms switch
        {
            > 0 => $"Shipped {Kg(Shipped)} less landed {Kg(Landed)}: {Kg(Loss)} lost, {Share(LossShare)} of the shipped weight.",
            0 => $"{Kg(Shipped)} were shipped and landed: nothing is lost.",
            _ => $"Landed {Kg(Landed)} against shipped {Kg(Shipped)}: {Kg(Landed - Shipped)} more than was shipped.",
        };
        var bears = Franchise.Points > 0m;
        if (Loss > Weight.Zero && bears)
        {
            yield return $"Franchise {Franchise} of {Kg(Shipped)}: {Kg(FranchiseWeight)} stay with the buyer.";
        }

        if (Loss > Weight.Zero)
        {
            yield return !IsShort ? "The loss does not exceed the franchise: there is nothing to claim."
                : $"To be refunded: {(bears ? $"{Kg(Loss)} less {Kg(FranchiseWeight)} is " : "")}{Kg(Refunded)}, {(Price is null ? "of which the price is not fixed yet" : $"at {Price.Value.AsQuoted()} worth {Worth}")}.";
        }

        if (Agreed is { } agreed)
        {
            yield return agreed.Sentence(Shipped, Price);
        }
    }

    private static string Kg(Weight weight) => weight.Kilograms.ToString("#,0.#########", CultureInfo.InvariantCulture) + " kg";

    private static string Share(Percent share) => share.Points.ToString("0.00##", CultureInfo.InvariantCulture) + " %";
}
