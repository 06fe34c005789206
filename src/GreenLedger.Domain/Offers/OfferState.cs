namespace GreenLedger.Domain.Offers;

/// <summary>Whether an offer can still be taken.</summary>
public enum OfferState
{
    OnOffer = 0,
    Sold = 1,
    Withdrawn = 2,
}

public static class OfferStates
{
    public static string Word(this OfferState state) => state switch
    {
        OfferState.OnOffer => "on offer",
        OfferState.Sold => "sold",
        OfferState.Withdrawn => "withdrawn",
        _ => throw new ArgumentOutOfRangeException(nameof(state)),
    };
}
