using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Stock;

/// <summary>
/// What of the kilograms as packed goes with bags and kilograms as weighed. The two are kept apart and not worked out from each
/// other (handbook, trade 1.1): a whole bag leaves with what the papers say is in it, whatever the scales say, and an opened one
/// with what is left of that. Only for part of an opened bag, of which no paper tells, and for bags whose papers differ, the
/// kilograms as packed are the same share as those weighed, in whole grams. With the last of the coffee all of them leave.
/// </summary>
public static class PackedShare
{
    /// <summary>Bags that weigh a twentieth more than they can, by the papers, took part of an opened one along. Our own line, no source.</summary>
    private const int Twentieth = 20;

    private const long MicrogramsPerGram = Weight.MicrogramsPerKilogram / 1_000;

    /// <summary>What a bag holds by the papers with which a lot came; null where they differ, or say no whole weight of a bag.</summary>
    public static Weight? BagOf(IEnumerable<StockAmount> came)
    {
        ArgumentNullException.ThrowIfNull(came);
        var bags = came.Where(amount => amount.Bags > 0)
            .Select(amount => amount.Packed.Micrograms > 0 && amount.Packed.Micrograms % amount.Bags == 0 ? amount.Packed.Micrograms / amount.Bags : (long?)null)
            .Distinct().Take(2).ToList();
        return bags is [{ } bag] ? new Weight(bag) : null;
    }

    /// <param name="there">What lies there before.</param>
    /// <param name="bag">What a bag holds by the papers; null where that is not known.</param>
    /// <param name="bags">The whole bags that leave.</param>
    /// <param name="weighed">All that leaves, above zero and at most what is there.</param>
    public static Weight Leaving(StockAmount there, Weight? bag, int bags, Weight weighed)
    {
        if (weighed >= there.Weighed)
        {
            return there.Packed;
        }

        var share = ShareOf(there, weighed).Micrograms;
        if (bag is not { } known || bags == 0 || bags == there.Bags)
        {
            return new Weight(share);
        }

        var whole = (Int128)known.Micrograms * bags;
        var opened = there.Packed.Micrograms - ((Int128)known.Micrograms * (there.Bags - 1));
        var withOpened = whole - known.Micrograms + opened;
        if (opened > 0 && opened < known.Micrograms && Int128.Abs(withOpened - share) < Int128.Abs(whole - share))
        {
            whole = withOpened;
        }

        return new Weight((long)Int128.Min(there.Packed.Micrograms, share - whole > whole / Twentieth ? share : whole));
    }

    /// <summary>What a count finds more: whole bags with what the papers say, loose coffee as it was weighed.</summary>
    public static Weight Found(StockAmount there, Weight? bag, int bags, Weight weighed) => bag is { } known && bags > 0 && weighed > Weight.Zero
        ? known * bags
        : there.Weighed == Weight.Zero ? weighed : ShareOf(there, weighed);

    private static Weight ShareOf(StockAmount there, Weight weighed)
    {
        var share = (long)((Int128)there.Packed.Micrograms * weighed.Micrograms / there.Weighed.Micrograms);
        return new Weight(share - (share % MicrogramsPerGram));
    }
}
