using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Arrivals;

/// <summary>What a person decides when a claim is opened; everything else is gathered by the system.</summary>
/// <param name="On">The day on which it is made.</param>
/// <param name="Allowance">On quality, for each unit of the landed weight; or <paramref name="Share"/> instead.</param>
/// <param name="Share">On quality, of the price of the landed weight.</param>
/// <param name="ProvisionalPrice">What weight is counted by while the contract's price is not fixed.</param>
/// <param name="OtherWords">What else is claimed, with <paramref name="Other"/>: a surveyor's fee.</param>
/// <param name="Words">What else the seller is to read.</param>
/// <param name="LateReason">Why it is made although a deadline is past.</param>
public sealed record ClaimOrder(
    DateOnly On,
    IReadOnlyList<ClaimGround> Grounds,
    PricePerWeight? Allowance = null,
    Percent? Share = null,
    PricePerWeight? ProvisionalPrice = null,
    string? OtherWords = null,
    Money? Other = null,
    string? Words = null,
    string? LateReason = null);
