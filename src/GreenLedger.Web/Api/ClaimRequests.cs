using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Web.Api;

/// <summary>An amount of a currency of ISO 4217.</summary>
internal sealed record MoneyRequest(decimal Amount, string Currency)
{
    public Money Money(string field)
    {
        Rule.Require(Math.Abs(Amount) < 1_000_000_000_000m, "This amount is too large: please check it.", field);
        return Domain.Measures.Money.Of(Amount, Domain.Measures.Currency.Of(Currency));
    }
}

/// <summary>A claim on an arrival. Evidence, deadlines and the weight part of the amount are gathered by the system.</summary>
/// <param name="Allowance">On quality, for each unit of the landed weight; or <paramref name="SharePercent"/> of its price.</param>
/// <param name="ProvisionalPrice">What weight is counted by while the contract's price is not fixed.</param>
/// <param name="OtherWords">What else is claimed, with <paramref name="Other"/>.</param>
/// <param name="Words">What else the seller is to read.</param>
/// <param name="LateReason">Needed where a deadline is past.</param>
internal sealed record OpenClaimRequest(
    DateOnly On,
    IReadOnlyList<ClaimGround> Grounds,
    PriceRequest? Allowance = null,
    decimal? SharePercent = null,
    PriceRequest? ProvisionalPrice = null,
    string? OtherWords = null,
    MoneyRequest? Other = null,
    string? Words = null,
    string? LateReason = null)
{
    public ClaimOrder Order()
    {
        Rule.Require(Grounds is not null, "Name at least one ground.", nameof(Grounds));
        return new ClaimOrder(
            On, Grounds, Allowance?.Price(), SharePercent is { } share ? Percent.Of(share) : null, ProvisionalPrice?.Price(), OtherWords, Other?.Money(nameof(Other)), Words, LateReason);
    }
}

/// <summary>Something said or written about a claim.</summary>
internal sealed record ClaimNoteRequest(ClaimSide Side, DateOnly On, string Text);

/// <summary>How a claim ended; the amount is what the seller pays or credits.</summary>
internal sealed record SettleRequest(ClaimOutcome Outcome, DateOnly On, MoneyRequest? Amount = null, string? Words = null);
