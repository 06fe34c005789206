using System.Globalization;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Pricing;

namespace GreenLedger.Web.Display;

/// <summary>How figures are written for a person: look.md's numbers. Stored values are never rounded by this.</summary>
public static class Figures
{
    private static readonly CultureInfo Reader = CultureInfo.InvariantCulture;

    public static string Day(DateOnly day) => day.ToString("d MMM yyyy", Reader);

    /// <summary>By the clocks of a zone, or of UTC where none is given: <c>26 Nov 2026, 14:05 UTC+1</c>. Pages use that of the house.</summary>
    public static string Moment(DateTimeOffset moment, ClockZone? zone = null) =>
        (zone ?? ClockZone.Utc).Local(moment).ToString("d MMM yyyy, HH:mm", Reader) + " " + (zone ?? ClockZone.Utc).From(moment);

    /// <summary>Whole kilograms or pounds where they are whole, else up to two decimals: <c>2,660 kg</c>.</summary>
    /// <summary>To the last decimal that was written down, where the figure itself matters; pounds, which are converted, to three decimals.</summary>
    public static string ExactWeight(Weight weight, bool inPounds) => inPounds
        ? weight.Pounds.ToString("#,0.###;−#,0.###", Reader) + " lb"
        : weight.Kilograms.ToString("#,0.#########;−#,0.#########", Reader) + " kg";

    public static string Weight(Weight weight, bool inPounds) =>
        (inPounds ? weight.Pounds : weight.Kilograms).ToString("#,0.##;−#,0.##", Reader) + (inPounds ? " lb" : " kg");

    /// <summary>With the currency's decimals and a true minus: <c>−1,234.50 USD</c>.</summary>
    public static string Money(Money money) =>
        money.Amount.ToString("N" + money.Currency.Decimals.ToString(Reader), Reader).Replace('-', '−') + " " + money.Currency.Code;

    /// <summary>As quoted: <c>412.50 ¢/lb</c> for dollars per pound, else <c>9.09 EUR/kg</c>.</summary>
    public static string Price(PricePerWeight price) =>
        price.Unit == PriceUnit.Pound && price.Currency == Currency.Usd
            ? (price.Amount * 100m).ToString("#,0.00", Reader) + " ¢/lb"
            : price.Amount.ToString("#,0.00", Reader) + " " + price.Currency.Code + "/" + price.Unit.Sign();

    /// <summary>Per kilogram to two decimals, however it was quoted: <c>9.09 USD/kg</c>.</summary>
    public static string PricePerKilogram(PricePerWeight price) =>
        price.PerKilogram.ToString("#,0.00", Reader) + " " + price.Currency.Code + "/kg";

    /// <summary>A landed cost that is known, in the house currency: <c>9.84 EUR/kg</c>.</summary>
    public static string LandedPerKilogram(LandedCost cost) =>
        cost.ShownPerKilogram!.Value.ToString("#,0.00", Reader) + " " + cost.Currency.Code + "/kg";

    public static string Score(decimal points) => points.ToString("0.00", Reader);

    /// <summary>A computed figure in points, with a true minus: <c>−0.25</c>.</summary>
    public static string Points(double points) => points.ToString("0.00;−0.00;0.00", Reader);

    /// <summary>The chance of a test, to three decimals.</summary>
    public static string Probability(double p) => p < 0.001 ? "< 0.001" : p.ToString("0.000", Reader);

    public static string Percent(Percent percent) => percent.Points.ToString("0.##", Reader) + " %";

    public static string Differential(Differential differential) =>
        differential.Month + " " + differential.Quoted.ToString("+#,0.##;−#,0.##;±0", Reader)
        + (differential.Month.Market == FuturesMarket.Robusta ? " USD/t" : " ¢/lb");

    public static string Count(long count) => count.ToString("#,0", Reader);

    /// <summary><c>1 lot</c>, <c>2 lots</c>, <c>1,200 lots</c>.</summary>
    public static string Count(long count, string one, string many) => Count(count) + " " + (count == 1 ? one : many);

    /// <summary>A file's size: <c>84 KB</c>, <c>2.1 MB</c>.</summary>
    public static string Bytes(long bytes) => bytes < 1024 * 1024
        ? Math.Max(1, bytes / 1024).ToString("#,0", Reader) + " KB"
        : (bytes / 1048576m).ToString("#,0.0", Reader) + " MB";
}
