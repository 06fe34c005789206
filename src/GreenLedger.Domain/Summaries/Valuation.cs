using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Pricing;

namespace GreenLedger.Domain.Summaries;

/// <summary>
/// Values contracts in the house currency: what is fixed at its price, what is open at the last quote of its month, and
/// another currency at the rate of the day the contract was signed, which never changes later (handbook, trade 9.4).
/// </summary>
/// <param name="Currency">The house's.</param>
/// <param name="AsOf">The day up to which quotes of open months are taken.</param>
public sealed record Valuation(Currency Currency, DateOnly AsOf, ExchangeRates Rates, FuturesQuotes Quotes)
{
    /// <summary>
    /// What a weight is worth: rounded once in the contract's currency and once in the house's. Null where something is
    /// open and has no quote, or a rate is missing: a gap is never a zero.
    /// </summary>
    public Money? Of(Contract contract, Weight net)
    {
        ArgumentNullException.ThrowIfNull(contract);
        var settlement = contract.Position is { IsFixed: false, Month: var month } ? Quotes.Find(month, AsOf)?.Quoted : null;
        return contract.Value(net, settlement) is { Value: var value } && Rates.Find(value.Currency, Currency, SignedOn(contract)) is { } conversion
            ? conversion.Of(value)
            : null;
    }

    /// <summary>Money in the house currency at the rate of a day; null where there is none, or no rate.</summary>
    public Money? At(Money? money, DateOnly on) => money is { } known ? Rates.Find(known.Currency, Currency, on)?.Of(known) : null;

    /// <summary>The day on which its first version was signed, which is the day of its rate.</summary>
    public static DateOnly SignedOn(Contract contract)
    {
        ArgumentNullException.ThrowIfNull(contract);
        return contract.Versions.Where(version => version.IsSigned).MinBy(version => version.Number)?.SignedOn ?? DateOnly.MaxValue;
    }
}
