using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Offers;

/// <summary>What an offer asked from one day on, with the list that said so: one line of its price history.</summary>
public sealed class OfferPrice
{
    private OfferPrice()
    {
    }

    internal OfferPrice(Offer offer, Id<OfferList>? listId, DateOnly on)
    {
        Id = Id<OfferPrice>.New();
        OfferId = offer.Id;
        ListId = listId;
        On = on;
        Price = offer.Price;
        Differential = offer.Differential;
        Quantity = offer.Quantity;
        State = offer.State;
    }

    public Id<OfferPrice> Id { get; private set; }

    public Id<Offer> OfferId { get; private set; }

    /// <summary>Null when the price was typed on the offer's page.</summary>
    public Id<OfferList>? ListId { get; private set; }

    public DateOnly On { get; private set; }

    public PricePerWeight? Price { get; private set; }

    public Differential? Differential { get; private set; }

    public Weight Quantity { get; private set; }

    public OfferState State { get; private set; }
}
