using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;

namespace GreenLedger.SeedDemo.Offers;

/// <summary>One row of a seller's list: what it says of a lot on that day.</summary>
internal sealed record Listed(Coffee Coffee, Asking Asking, int Bags, OfferState State, Score? StatedScore)
{
    public Packing Packing => new(Bags, Coffee.BagWeight, null);
}

/// <summary>A seller's list of one day, and the lots that it left out without a word.</summary>
internal sealed record SellersList(Seller Seller, DateOnly On, int Number, IReadOnlyList<Listed> Rows, IReadOnlyList<Coffee> LeftOut)
{
    /// <summary>A list holds until the next one has come, and a little longer.</summary>
    public DateOnly ValidUntil => On.AddDays(Seller.Every + 14);

    public Terms Terms => new(Seller.Delivery, Seller.Place, ValidUntil);
}
