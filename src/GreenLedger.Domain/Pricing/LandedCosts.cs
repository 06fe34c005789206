using System.Collections.Concurrent;
using System.Globalization;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;

namespace GreenLedger.Domain.Pricing;

/// <summary>
/// Everything that landed costs of one day are reckoned from: routes, exchange rates, futures quotes, the house
/// currency. Made once, then asked for as many parcels as there are; it may be asked from several threads.
/// </summary>
public sealed class LandedCosts
{
    private readonly ConcurrentDictionary<Wish, Way> _ways = new();
    private readonly ConcurrentDictionary<(Currency From, Currency To), Conversion?> _conversions = new();
    private readonly ConcurrentDictionary<FuturesMonth, FuturesQuote?> _quotes = new();
    private readonly List<Route> _routes;
    private readonly Dictionary<Id<Route>, RoutePlaces> _places;
    private readonly ExchangeRates _rates;
    private readonly FuturesQuotes _futures;
    private readonly IReadOnlySet<Currency> _longYears;

    /// <param name="house">The currency of the results.</param>
    /// <param name="on">The day for which rates and quotes are looked up.</param>
    /// <param name="routes">Routes to choose from; those put away are left out.</param>
    /// <param name="rates">Exchange rates of the market.</param>
    /// <param name="futures">Futures quotes.</param>
    /// <param name="longYears">Currencies whose interest year has 365 days; all others have 360.</param>
    public LandedCosts(
        Currency house, DateOnly on, IEnumerable<Route> routes, ExchangeRates rates, FuturesQuotes futures, IReadOnlySet<Currency> longYears)
    {
        House = house;
        On = on;
        _routes = [.. routes.Where(route => route.IsInUse).OrderBy(route => route.Name, StringComparer.Ordinal).ThenBy(route => route.Id)];
        _places = _routes.ToDictionary(route => route.Id, route => new RoutePlaces(route));
        _rates = rates;
        _futures = futures;
        _longYears = longYears;
    }

    public Currency House { get; }

    public DateOnly On { get; }

    /// <summary>The landed cost on the route that serves the parcel best.</summary>
    public LandedCost Of(Parcel parcel) => Of(parcel, WayOf(parcel));

    /// <summary>The landed cost on a route of one's choice.</summary>
    public LandedCost Of(Parcel parcel, Route route) =>
        Of(parcel, parcel.Delivery is { } delivery ? Along(route, new RoutePlaces(route), parcel, delivery) : Way.Nowhere);

    /// <summary>
    /// The route that serves the parcel best: of its country of origin before one for any origin, and the named place
    /// before another; of equals the first by name. Null when no route in use serves it.
    /// </summary>
    public Route? RouteFor(Parcel parcel) => WayOf(parcel).Route;

    /// <summary>Cached, since thousands of offers share a few pairs. Null when a rate is missing.</summary>
    internal Conversion? Convert(Currency from, Currency to) =>
        _conversions.GetOrAdd((from, to), static (pair, costs) => costs._rates.Find(pair.From, pair.To, costs.On), this);

    internal CostProblem MissingRate(Currency from, Currency to, string neededFor, CostStage? stage) => new(
        CostGap.ExchangeRate,
        $"There is no exchange rate for {_rates.Missing(from, to, On)} on or before {Day(On)}, needed for {neededFor}: type one or import the reference rates.",
        stage);

    internal int DaysOfYear(InterestYear year, Currency currency) => year switch
    {
        InterestYear.Act360 => 360,
        InterestYear.Act365 => 365,
        _ => _longYears.Contains(currency) ? 365 : 360,
    };

    private LandedCost Of(Parcel parcel, Way way)
    {
        var problems = new List<CostProblem>();
        var (price, quote) = PriceOf(parcel, problems);
        if (parcel.Quantity <= Weight.Zero)
        {
            problems.Add(new(CostGap.Quantity, "The quantity is missing: state the net weight."));
        }

        if (parcel.Delivery is null)
        {
            problems.Add(new(CostGap.Delivery, "The delivery rule is missing: state FOB, CIF or another rule and its place."));
        }
        else if (way.Route is null)
        {
            problems.Add(new(CostGap.Route, NoRoute(parcel)));
        }

        if (problems.Count > 0)
        {
            return new LandedCost(parcel, way.Route, House, On, problems, null);
        }

        var sheet = new CostSheet(this, parcel, way, price!.Value, quote);
        sheet.Reckon(problems);
        return new LandedCost(parcel, way.Route, House, On, problems, sheet);
    }

    private (PricePerWeight?, FuturesQuote?) PriceOf(Parcel parcel, List<CostProblem> problems)
    {
        if (parcel is { Price: null, Differential: null })
        {
            problems.Add(new(CostGap.Price, "The price is missing: state a price or a differential."));
            return default;
        }

        FuturesQuote? quote = null;
        var price = parcel.Price;
        if (price is null && parcel.Differential is { } differential)
        {
            quote = _quotes.GetOrAdd(differential.Month, static (month, costs) => costs._futures.Find(month, costs.On), this);
            if (quote is null)
            {
                problems.Add(new(CostGap.FuturesQuote, $"There is no futures quote for {differential.Month} on or before {Day(On)}: type one or import a file of quotes."));
                return default;
            }

            price = differential.At(quote.Quoted);
        }

        if (price is { Millionths: <= 0 })
        {
            problems.Add(new(CostGap.Price, $"The price comes to {price}: a price is above zero. Please check it and its unit."));
        }

        return (price, quote);
    }

    private Way WayOf(Parcel parcel)
    {
        if (parcel.Delivery is not { } delivery)
        {
            return Way.Nowhere;
        }

        var wish = new Wish(delivery, parcel.Place, parcel.OriginCountry, parcel.PlaceKind);
        return _ways.TryGetValue(wish, out var way) ? way : _ways.GetOrAdd(wish, Best(parcel, delivery));
    }

    private Way Best(Parcel parcel, Incoterm delivery)
    {
        var best = _routes.Select(route => (Route: route, Fit: _places[route.Id].Fit(parcel, delivery)))
            .Where(candidate => candidate.Fit > 0)
            .OrderByDescending(candidate => candidate.Fit)
            .Select(candidate => candidate.Route)
            .FirstOrDefault();
        return best is null ? Way.Nowhere : Along(best, _places[best.Id], parcel, delivery);
    }

    private static Way Along(Route route, RoutePlaces places, Parcel parcel, Incoterm delivery)
    {
        var found = places.Find(delivery, parcel.Place);
        var wanted = parcel.PlaceKind ?? found ?? CostSplit.UsualPlace(delivery);
        var split = CostSplit.Of(delivery, wanted);
        var isKnown = parcel.PlaceKind is not null
            || found == split.Place
            || delivery is Incoterm.Exw or Incoterm.ExWarehouse
            || (IsAtPort(delivery) && (string.IsNullOrWhiteSpace(parcel.Place) || route.OriginCountry is null));
        return new Way(route, split, !isKnown, [.. route.Legs], [.. route.Unanswered]);
    }

    private static bool IsAtPort(Incoterm delivery) =>
        delivery is Incoterm.Fas or Incoterm.Fob or Incoterm.Cfr or Incoterm.Cif;

    private static string NoRoute(Parcel parcel) =>
        $"No route serves {(parcel.OriginCountry is { } country ? $"coffee from {country}" : "this coffee")}"
        + $" {parcel.DeliveryWord}{(parcel.Place is { Length: > 0 } place ? " " + place : "")}: add a route, or one for any origin.";

    private static string Day(DateOnly day) => day.ToString("d MMM yyyy", CultureInfo.InvariantCulture);

    private readonly record struct Wish(Incoterm Delivery, string? Place, string? Origin, DeliveryPlace? Kind);
}
