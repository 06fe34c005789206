using System.Globalization;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Documents.Layout;

/// <summary>How figures are printed: the same forms as on the screens.</summary>
internal static class Printed
{
    private static readonly CultureInfo Reader = CultureInfo.InvariantCulture;

    public static string Day(DateOnly day) => day.ToString("d MMM yyyy", Reader);

    /// <summary>By the clocks of the house, or of UTC where no zone is given: <c>26 Nov 2026, 14:05 UTC+1</c>.</summary>
    public static string Moment(DateTimeOffset moment, ClockZone? zone = null) =>
        (zone ?? ClockZone.Utc).Local(moment).ToString("d MMM yyyy, HH:mm", Reader) + " " + (zone ?? ClockZone.Utc).From(moment);

    public static string Points(Score score) => score.Points.ToString("0.00", Reader);

    public static string Count(long count) => count.ToString("#,0", Reader);

    /// <summary><c>1 lot</c>, <c>2 lots</c>.</summary>
    public static string Count(long count, string one, string many) => Count(count) + " " + (count == 1 ? one : many);

    public static string Amount(decimal amount, int decimals = 2) => amount.ToString("N" + decimals.ToString(Reader), Reader);

    /// <summary>A share as per cent with one decimal; a chance too small for it is not shown as none.</summary>
    public static string Share(double share) =>
        share is > 0 and < 0.001 ? "< 0.1 %" : (share * 100).ToString("0.0", Reader) + " %";

    /// <summary>With its sign: <c>+3.1 %</c>, <c>−4.0 %</c>.</summary>
    public static string Difference(double share) => (share * 100).ToString("+0.0;−0.0;±0.0", Reader) + " %";
}
