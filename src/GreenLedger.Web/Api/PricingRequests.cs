using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Pricing;
using Route = GreenLedger.Domain.Pricing.Route;

namespace GreenLedger.Web.Api;

/// <summary>A price: an amount of a currency for a unit: <c>kg</c>, <c>lb</c>, <c>50 kg</c>, <c>46 kg</c>, <c>100 lb</c>, <c>60 kg</c> or <c>t</c>.</summary>
internal sealed record PriceRequest(decimal Amount, string Currency, string Unit = "kg")
{
    public PricePerWeight Price()
    {
        var unit = Enum.GetValues<PriceUnit>().Where(unit => unit.Sign() == Unit.Trim()).ToList();
        Rule.Require(unit.Count == 1, $"'{Unit}' is not a unit of a price: use {string.Join(", ", Enum.GetValues<PriceUnit>().Select(one => one.Sign()))}.", "Unit");
        return PricePerWeight.Of(Amount, Domain.Measures.Currency.Of(Currency), unit[0]);
    }
}

/// <summary>A premium or discount, in the unit of the month's market (US cents/lb or USD/t): <c>{"month": "KCH27", "quoted": 35}</c>.</summary>
internal sealed record DifferentialRequest(string Month, decimal Quoted)
{
    public Differential Differential(DateOnly on) => Domain.Measures.Differential.Of(PricingRequests.Month(Month, on), Quoted);
}

/// <summary>
/// One leg. The figure is an amount, or a rate in per cent; the time is days of interest or started months of storage.
/// </summary>
internal sealed record LegRequest(CostStage Stage, LegWay Way, decimal? Figure = null, string? Currency = null, int? Time = null, string? Name = null)
{
    public RouteLeg Leg(int index) => RouteLeg.From(
        new LegLine(Stage, Way, Figure, Currency is null ? null : Domain.Measures.Currency.Of(Currency), Time, Name), $"Legs[{index}].");
}

/// <summary>A route with its legs; what is left out keeps the usual value.</summary>
internal sealed record RouteRequest(
    string Name,
    string PortOfLoading,
    string PortOfDestination,
    string Warehouse,
    IReadOnlyList<LegRequest> Legs,
    string? OriginCountry = null,
    SharedOver SharedOver = SharedOver.Fill,
    decimal FillKg = 19_200m,
    int ContainersPerShipment = 1,
    decimal WeightLossPercent = 0m,
    decimal InsuredPercent = 110m)
{
    public Route Route() => Onto(new Route(Name, PortOfLoading, PortOfDestination, Warehouse, OriginCountry));

    public Route Onto(Route route)
    {
        route.Rename(Name, PortOfLoading, PortOfDestination, Warehouse, OriginCountry);
        route.Share(SharedOver, Weight.FromKilograms(FillKg), ContainersPerShipment, Percent.Of(WeightLossPercent), Percent.Of(InsuredPercent));
        route.Answer([.. Legs.Select((leg, index) => leg.Leg(index))]);
        return route;
    }
}

/// <summary>How many units of the currency one euro buys on a day.</summary>
internal sealed record RateRequest(string Currency, DateOnly On, decimal UnitsPerEuro, string? Source = null, RateKind Kind = RateKind.Market);

/// <summary>What a futures month closed at on a day, in its market's unit.</summary>
internal sealed record QuoteRequest(string Month, DateOnly On, decimal Quoted, string? Source = null);

/// <summary>
/// What to reckon a landed cost from. The route is one of the ledger's by <c>routeName</c>, or <c>route</c> itself, or
/// the best of the ledger's; rates and quotes that are given stand before the ledger's.
/// </summary>
internal sealed record LandedCostRequest(
    decimal QuantityKg,
    string? Delivery = null,
    PriceRequest? Price = null,
    DifferentialRequest? Differential = null,
    string? Place = null,
    DeliveryPlace? PlaceKind = null,
    string? OriginCountry = null,
    int? Bags = null,
    DateOnly? On = null,
    string? HouseCurrency = null,
    string? RouteName = null,
    RouteRequest? Route = null,
    IReadOnlyList<RateRequest>? Rates = null,
    IReadOnlyList<QuoteRequest>? Quotes = null)
{
    public Parcel Parcel(DateOnly on) => new(
        Price?.Price(), Differential?.Differential(on), PricingRequests.Delivery(Delivery), Place, OriginCountry?.Trim().ToUpperInvariant(), Weight.FromKilograms(QuantityKg), Bags)
    {
        PlaceKind = PlaceKind,
    };
}

internal static class PricingRequests
{
    /// <exception cref="RuleBrokenException">The symbol is no futures month.</exception>
    public static FuturesMonth Month(string symbol, DateOnly today)
    {
        Rule.Require(FuturesMonth.TryParse(symbol, today, out var month), $"'{symbol}' is not a futures month such as KCH27 or RCK27.", "Month");
        return month;
    }

    /// <summary>FOB, fob, "ex warehouse"; null when nothing is stated.</summary>
    /// <exception cref="RuleBrokenException">The word is no delivery rule.</exception>
    public static Incoterm? Delivery(string? word)
    {
        if (string.IsNullOrWhiteSpace(word))
        {
            return null;
        }

        var terms = Enum.GetValues<Incoterm>().Where(term => term.Word().Replace(" ", "", StringComparison.Ordinal)
            .Equals(word.Replace(" ", "", StringComparison.Ordinal), StringComparison.OrdinalIgnoreCase)).ToList();
        Rule.Require(terms.Count == 1, $"'{word}' is not a delivery rule: use {string.Join(", ", Enum.GetValues<Incoterm>().Select(term => term.Word()))}.", "Delivery");
        return terms[0];
    }
}
