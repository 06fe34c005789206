using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Offers;

/// <summary>One lot at one price from one supplier. A newer list revises it and leaves the older price in its history.</summary>
public sealed class Offer
{
    private readonly List<OfferPrice> _prices = [];

    private Offer()
    {
        Ref = "";
        SearchText = "";
    }

    public Offer(Id<Supplier> supplierId, Lot lot, Packing packing, Asking asking, Terms terms, OfferState state, DateOnly on, Id<OfferList>? listId = null)
    {
        Id = Id<Offer>.New();
        SupplierId = supplierId;
        LotId = lot.Id;
        Ref = lot.Ref;
        SearchText = "";
        FirstOfferedOn = on;
        ListId = listId;
        Take(packing, asking, terms, state, on);
        _prices.Add(new OfferPrice(this, listId, on));
        FindBy(lot);
    }

    public Id<Offer> Id { get; private set; }

    public int Version { get; private set; }

    public Id<Supplier> SupplierId { get; private set; }

    public Id<Lot> LotId { get; private set; }

    /// <summary>The supplier's reference; with the supplier and the crop year it says which offer a newer list revises.</summary>
    public string Ref { get; private set; }

    /// <summary>Net weight on offer; zero only while it is not stated.</summary>
    public Weight Quantity { get; private set; }

    public int? Bags { get; private set; }

    public Weight? BagWeight { get; private set; }

    /// <summary>The outright price; null when a differential or nothing is asked.</summary>
    public PricePerWeight? Price { get; private set; }

    /// <summary>The differential against a futures month; null when an outright price or nothing is asked.</summary>
    public Differential? Differential { get; private set; }

    public Incoterm? Incoterm { get; private set; }

    public string? Place { get; private set; }

    public DateOnly? ValidUntil { get; private set; }

    public string? Availability { get; private set; }

    public DateOnly? AvailableFrom { get; private set; }

    /// <summary>The fewest bags that the seller parts with; null where that is not said.</summary>
    public int? LeastBags { get; private set; }

    public OfferState State { get; private set; }

    /// <summary>What the seller says the coffee scores: never ours, always shown as stated.</summary>
    public Score? StatedScore { get; private set; }

    /// <summary>The list that the present terms come from; null when they were typed.</summary>
    public Id<OfferList>? ListId { get; private set; }

    public DateOnly FirstOfferedOn { get; private set; }

    /// <summary>The day of the newest list that named this offer with something new.</summary>
    public DateOnly RevisedOn { get; private set; }

    /// <summary>Oldest first.</summary>
    public IReadOnlyList<OfferPrice> Prices => _prices;

    public string SearchText { get; private set; }

    /// <summary>
    /// Takes newer terms. What is asked, how much and the state go into the price history when one of them changed.
    /// </summary>
    public void Revise(Packing packing, Asking asking, Terms terms, OfferState state, Score? statedScore, DateOnly on, Id<OfferList>? listId = null)
    {
        Rule.Require(on >= RevisedOn, $"This offer was revised on {RevisedOn:d MMM yyyy}: an older list cannot change it.", nameof(RevisedOn));
        var before = (Price, Differential, Quantity, State);
        Take(packing, asking, terms, state, on);
        StatedScore = statedScore ?? StatedScore;
        ListId = listId;
        if (before != (Price, Differential, Quantity, State))
        {
            _prices.Add(new OfferPrice(this, listId, on));
        }
    }

    /// <summary>A price that the seller named apart from a list: it goes into the price history as a list's would.</summary>
    public void Ask(Asking asking, DateOnly on)
    {
        ArgumentNullException.ThrowIfNull(asking);
        Rule.Require((asking.Price, asking.Differential) != (Price, Differential), "This is what the offer asks already: type the new price.", nameof(Price));
        Rule.Require(on >= RevisedOn, $"This offer was revised on {RevisedOn:d MMM yyyy}: an older price cannot change it.", nameof(RevisedOn));
        TakeAsking(asking);
        RevisedOn = on;
        _prices.Add(new OfferPrice(this, null, on));
    }

    /// <summary>Whether these terms say anything that the offer does not say already.</summary>
    public bool Differs(Packing packing, Asking asking, Terms terms, OfferState state, Score? statedScore) =>
        (packing.Net ?? Weight.Zero, packing.Bags, packing.BagWeight) != (Quantity, Bags, BagWeight)
        || (asking.Price, asking.Differential) != (Price, Differential)
        || (terms with { LeastBags = terms.LeastBags ?? LeastBags }) != new Terms(Incoterm, Place, ValidUntil, Availability, AvailableFrom, LeastBags)
        || state != State
        || (statedScore is not null && statedScore != StatedScore);

    /// <summary>Found by its own words and those of its lot; said again when either changes.</summary>
    public void FindBy(Lot lot)
    {
        ArgumentNullException.ThrowIfNull(lot);
        Rule.Require(lot.Id == LotId, "Another lot stands on this offer.", nameof(LotId));
        SearchText = Measures.SearchText.Of(Ref, lot.Name, Place);
    }

    public void StateScore(Score? statedScore)
    {
        Rule.Require(statedScore is null or { Points: >= 0m and <= 100m }, "A stated score lies between 0 and 100.", nameof(StatedScore));
        StatedScore = statedScore;
    }

    /// <summary>The least lot: the seller parts with so many bags or more. A list that does not say it leaves it as it was.</summary>
    /// <exception cref="RuleBrokenException">It is less than a bag, or more than any plan buys of a lot.</exception>
    public void SellFrom(int? leastBags)
    {
        Rule.Require(leastBags is null or (>= 1 and <= 10_000), "The least lot lies between 1 and 10,000 bags: leave it empty where the seller names none.", nameof(LeastBags));
        LeastBags = leastBags;
    }

    public void Withdraw(DateOnly on) => ChangeState(OfferState.Withdrawn, on);

    public void Sell(DateOnly on) => ChangeState(OfferState.Sold, on);

    public void Reopen(DateOnly on) => ChangeState(OfferState.OnOffer, on);

    private void ChangeState(OfferState state, DateOnly on)
    {
        Rule.Require(State != state, $"This offer is already {state.Word()}.", nameof(State));
        State = state;
        RevisedOn = on > RevisedOn ? on : RevisedOn;
        _prices.Add(new OfferPrice(this, null, on));
    }

    private void Take(Packing packing, Asking asking, Terms terms, OfferState state, DateOnly on)
    {
        TakeAsking(asking);
        Rule.Require(packing.Bags is null or >= 0, "The number of bags cannot be negative.", nameof(Bags));
        Rule.Require(packing.Net is null || packing.Net >= Weight.Zero, "The quantity cannot be negative.", nameof(Quantity));
        Quantity = packing.Net ?? Weight.Zero;
        Bags = packing.Bags;
        BagWeight = packing.BagWeight;
        Incoterm = terms.Incoterm;
        Place = Rule.OptionalText(terms.Place, "The place", field: nameof(Place));
        ValidUntil = terms.ValidUntil;
        Availability = Rule.OptionalText(terms.Availability, "The availability", field: nameof(Availability));
        AvailableFrom = terms.AvailableFrom;
        SellFrom(terms.LeastBags ?? LeastBags);
        State = state;
        RevisedOn = on;
    }

    private void TakeAsking(Asking asking)
    {
        Rule.Require(asking.Price is null || asking.Differential is null, "An offer has a price or a differential, not both.", nameof(Price));
        Rule.Require(asking.Price is null or { Millionths: > 0 }, "The price must be more than 0.", nameof(Price));
        Price = asking.Price;
        Differential = asking.Differential;
    }
}
