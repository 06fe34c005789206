using System.Globalization;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Summaries;
using GreenLedger.Web.Display;

namespace GreenLedger.Web.Summaries;

/// <summary>How the figures of a record are written for a person.</summary>
internal static class RecordFigures
{
    /// <summary><c>75 % (9 of 12)</c>; below the house's least number the counts alone: <c>2 of 3</c>.</summary>
    public static string Share(ShareOf share, int least) => share switch
    {
        { Of: 0 } => "–",
        { Percent: { } percent } when share.Of >= least => $"{percent.Points.ToString("0.0", CultureInfo.InvariantCulture)} % ({Figures.Count(share.Count)} of {Figures.Count(share.Of)})",
        _ => $"{Figures.Count(share.Count)} of {Figures.Count(share.Of)}",
    };

    /// <summary>With its sign: <c>−0.42</c>.</summary>
    public static string Signed(double? points) => points?.ToString("+0.00;−0.00;0.00", CultureInfo.InvariantCulture) ?? "–";

    /// <summary>How the two samples met, and what was taken off the difference of their scores.</summary>
    public static string Met(CupDifference cup)
    {
        ArgumentNullException.ThrowIfNull(cup);
        return cup.Meeting switch
        {
            Meeting.OneSession => "in one session",
            Meeting.HeldByReference => $"in two sessions, which stood {Signed(cup.Shift)} points apart by the house reference: taken off",
            Meeting.PastResults => "by past results that were taken in",
            _ => "in two sessions without a common reference",
        };
    }

    /// <summary><c>−0.42 (12 arrivals)</c>.</summary>
    public static string Differences(ArrivalDifferences differences) => differences.Number == 0 ? "–" : $"{Signed(differences.Mean)} ({Figures.Count(differences.Number, "arrival", "arrivals")})";

    /// <summary><c>−0.38 % (9 lots received)</c>.</summary>
    public static string Weight(WeightRecord weight) => weight.Difference is { } difference
        ? $"{difference.Points.ToString("+0.00;−0.00;0.00", CultureInfo.InvariantCulture)} % ({Figures.Count(weight.Number, "lot received", "lots received")})"
        : "–";

    /// <summary><c>2 on 12 lots received; 1 open, 1 allowance; paid or credited 639.09 USD</c>.</summary>
    public static string Claims(ClaimRecord claims)
    {
        var ended = (claims.Open > 0 ? [$"{Figures.Count(claims.Open)} open"] : Array.Empty<string>())
            .Concat(claims.Outcomes.Select(one => $"{Figures.Count(one.Count)} {one.Outcome.Word()}"));
        var money = claims.Settled.Count == 0 ? "" : $"; paid or credited {string.Join(" and ", claims.Settled.Select(Figures.Money))}";
        var missing = claims.OnMissing > 0 ? $", {Figures.Count(claims.OnMissing)} on goods that did not come" : "";
        return claims.OfReceived.Count + claims.OnMissing == 0 && claims.Outcomes.Count == 0
            ? "none"
            : $"{Figures.Count(claims.OfReceived.Count)} on {Figures.Count(claims.OfReceived.Of, "lot received", "lots received")}{missing}; {string.Join(", ", ended)}{money}";
    }
}
