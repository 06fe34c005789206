using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Offers;

/// <summary>
/// How a lot or an offer is packed: bags, the declared net weight of a bag, and the net weight, each as stated. None is
/// silently derived from the others (handbook, trade 1.1); <see cref="Net"/> says which of them counts.
/// </summary>
public sealed record Packing(int? Bags, Weight? BagWeight, Weight? StatedNet)
{
    /// <summary>The net weight: as stated, else bags times bag weight; null when neither is known.</summary>
    public Weight? Net => StatedNet ?? (Bags is { } bags && BagWeight is { } each ? each * bags : null);

    /// <summary>Bags times bag weight less the stated net weight; null where one of them is missing.</summary>
    public Weight? Difference => StatedNet is { } net && Bags is { } bags && BagWeight is { } each ? (each * bags) - net : null;
}
