using System.Globalization;
using GreenLedger.Domain.Arrivals;

namespace GreenLedger.Web.Arrivals;

/// <summary>How verdicts and claims are written for a person.</summary>
internal static class ArrivalFigures
{
    public static string Word(ArrivalOutcome outcome) => outcome switch
    {
        ArrivalOutcome.Matches => "matches",
        ArrivalOutcome.Short => "short",
        _ => "undecided",
    };

    public static string Tag(ArrivalOutcome outcome) => outcome switch
    {
        ArrivalOutcome.Matches => "tag tag-good",
        ArrivalOutcome.Short => "tag tag-stop",
        _ => "tag",
    };

    /// <summary>Null where nobody read it: <c>21.5 °C</c>.</summary>
    public static string? Celsius(int? tenths) => tenths is { } read ? (read / 10m).ToString("0.0", CultureInfo.InvariantCulture) + " °C" : null;

    public static string Word(Claim claim) => claim.Outcome?.Word() ?? "open";

    public static string Tag(Claim claim) => claim.Outcome switch
    {
        null => "tag tag-caution",
        ClaimOutcome.Withdrawn => "tag",
        _ => "tag tag-good",
    };
}
