using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.SeedDemo.Pricing;

namespace GreenLedger.SeedDemo.Offers;

/// <summary>What a seller asks for a lot on a day, in the way in which it quotes.</summary>
internal sealed class PriceDesk(Market market)
{
    // What an importer adds to FOB before it sells out of its warehouse: the way there, its interest and its margin.
    private const double WayUsdPerKg = 0.42;
    private const double ImportersMargin = 1.075;

    /// <summary>The market's level in US dollars a kilogram.</summary>
    public double Level(Coffee coffee, DateOnly on) => coffee.Origin.IsRobusta
        ? market.On(on).Robusta / 1000
        : market.On(on).Arabica / 100 / 0.45359237;

    public Asking Ask(Coffee coffee, DateOnly on) => Ask(coffee, coffee.PriceAt(Level(coffee, on)), on);

    /// <summary>The same differential again, on the next month when the old one is about to be delivered.</summary>
    public static Asking Roll(Asking asking, DateOnly on)
    {
        var differential = asking.Differential!.Value;
        return differential.Month.FirstDay > on.AddDays(25)
            ? asking
            : Asking.Against(Differential.Of(MonthFor(differential.Month.Market, on), differential.Quoted));
    }

    public static Asking Discount(Asking asking, decimal share) => asking.Price is { } price
        ? Asking.Outright(PricePerWeight.Of(Step(price.Amount * (1 - share), price.Currency, price.Unit), price.Currency, price.Unit))
        : Asking.Against(Differential.Of(asking.Differential!.Value.Month, asking.Differential.Value.Quoted - 3m));

    private Asking Ask(Coffee coffee, double usdPerKg, DateOnly on)
    {
        var quoting = coffee.Seller.Quoting;
        if (quoting.Against is { } against)
        {
            var month = MonthFor(against, on);
            var (whole, step) = against == FuturesMarket.Arabica
                ? ((decimal)usdPerKg * 45.359237m, 0.5m)
                : ((decimal)usdPerKg * 1000m, 5m);
            return Asking.Against(Differential.Of(month, Math.Round((whole - market.Quote(month, on)) / step) * step));
        }

        var perKg = coffee.Seller.Kind == SupplierKind.Importer ? (usdPerKg + WayUsdPerKg) * ImportersMargin : usdPerKg;
        var perUnit = (decimal)(perKg * Rate(quoting.Currency, on)) * quoting.Unit.Weight().Kilograms;
        return Asking.Outright(PricePerWeight.Of(Step(perUnit, quoting.Currency, quoting.Unit), quoting.Currency, quoting.Unit));
    }

    private double Rate(Currency currency, DateOnly on)
    {
        var level = market.On(on);
        return currency == Currency.Usd ? 1 : currency == Currency.Gbp ? level.Gbp / level.Usd : 1 / level.Usd;
    }

    /// <summary>Close to when the coffee could ship, about three months on.</summary>
    private static FuturesMonth MonthFor(FuturesMarket against, DateOnly on) => Market.Months(against, on.AddDays(80), 1)[0];

    private static decimal Step(decimal amount, Currency currency, PriceUnit unit)
    {
        var step = unit switch
        {
            PriceUnit.Pound => 0.0025m,
            PriceUnit.Kilogram => currency == Currency.Usd ? 0.02m : 0.05m,
            _ => 1m,
        };
        return Math.Round(amount / step) * step;
    }
}
