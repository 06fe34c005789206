using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Pricing;
using GreenLedger.Examples;

namespace GreenLedger.Domain.Tests.Pricing;

/// <summary>Example D at the rates and quotations of a day, which tests vary.</summary>
internal static class PricingDemo
{
    public static readonly DateOnly Today = new(2026, 11, 25);
    public static readonly DateTimeOffset Now = new(2026, 11, 25, 9, 0, 0, TimeSpan.Zero);

    public static ExchangeRates Rates => new([ExampleD.Rate(new(2026, 11, 24)), Rate(Currency.Gbp, 0.87m), Rate(Currency.Of("BRL"), 6.25m)]);

    public static FuturesQuotes Quotes => new([ExampleD.Quote(Today.AddDays(-1))]);

    public static IReadOnlySet<Currency> LongYears { get; } = new HashSet<Currency> { Currency.Gbp };

    public static LandedCosts Costs(params Route[] routes) => new(Currency.Eur, Today, routes, Rates, Quotes, LongYears);

    public static LandedCost Cost(Parcel parcel, params RouteLeg[] instead) => Costs(ExampleD.Route(instead)).Of(parcel);

    public static ExchangeRate Rate(Currency currency, decimal unitsPerEuro, DateOnly? on = null) =>
        new(currency, on ?? new DateOnly(2026, 11, 24), unitsPerEuro, "European Central Bank", null, Now);

    public static FuturesQuote Quote(FuturesMonth month, decimal quoted, DateOnly on) =>
        new(month, on, quoted, "the exchange's settlement", null, Now);
}
