namespace GreenLedger.SeedDemo.Offers;

internal enum SlipKind
{
    /// <summary>The row stands twice.</summary>
    Twice,
    NoPrice,

    /// <summary>A digit too many: 186.5 for 86.5.</summary>
    Score,

    /// <summary>A count below zero.</summary>
    Bags,

    /// <summary>A digit too many.</summary>
    BagWeight,
}

/// <summary>What a seller got wrong in one row of a list, counted from 0.</summary>
internal sealed record Slip(int Row, SlipKind Kind)
{
    /// <summary>About every sixth list has one, seldom two.</summary>
    public static IReadOnlyList<Slip> In(SellersList list, Draw draw)
    {
        var slips = new List<Slip>();
        while (list.Rows.Count > 2 && slips.Count < 2 && draw.Chance(0.17))
        {
            slips.Add(new Slip(draw.Between(0, list.Rows.Count - 1), draw.Of(Enum.GetValues<SlipKind>())));
        }

        return [.. slips.DistinctBy(slip => slip.Row)];
    }
}
