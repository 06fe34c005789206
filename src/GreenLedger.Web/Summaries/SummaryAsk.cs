using System.Globalization;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Summaries;

namespace GreenLedger.Web.Summaries;

/// <summary>
/// What an address asks of a summary: first and last day, by what purchases are parted, and one group of that. Without days it is
/// the twelve months that end with this one.
/// </summary>
public sealed class SummaryAsk
{
    public DateOnly? From { get; set; }

    public DateOnly? Until { get; set; }

    public Cut By { get; set; }

    /// <summary>A group of the cut; empty for all.</summary>
    public string? Of { get; set; }

    /// <exception cref="Domain.RuleBrokenException">The days are no period.</exception>
    public SummaryWish Wish(DateOnly today)
    {
        Domain.Rule.Day(From, nameof(From));
        Domain.Rule.Day(Until, nameof(Until));
        var last = new DateOnly(today.Year, today.Month, 1).AddMonths(1).AddDays(-1);
        var until = Until ?? (From is { } first && first > last ? first : last);
        return new SummaryWish(Period.Of(From ?? until.AddDays(1).AddYears(-1), until), Enum.IsDefined(By) ? By : Cut.Origin, string.IsNullOrEmpty(Of) ? null : Of);
    }

    /// <summary>The route values of an address that asks the same.</summary>
    public static Dictionary<string, string?> RouteOf(SummaryWish wish)
    {
        ArgumentNullException.ThrowIfNull(wish);
        return new Dictionary<string, string?>
        {
            [nameof(From)] = Day(wish.Period.From),
            [nameof(Until)] = Day(wish.Period.Until),
            [nameof(By)] = wish.Cut.ToString(),
            [nameof(Of)] = wish.Group,
        };
    }

    /// <summary>The same with what narrows the rows behind a figure.</summary>
    public static Dictionary<string, string?> RouteOf(SummaryWish wish, RowFilter filter)
    {
        ArgumentNullException.ThrowIfNull(filter);
        var route = RouteOf(wish);
        route["Figure"] = filter.Figure.ToString();
        route["Band"] = filter.Band;
        route["Score"] = filter.Score?.ToString(CultureInfo.InvariantCulture);
        route["Month"] = filter.Month is { } month ? Day(month) : null;
        route["Futures"] = filter.Futures?.ToString();
        route["Before"] = filter.IsBefore ? "true" : null;
        return route;
    }

    /// <summary>For an input of the kind date.</summary>
    public static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}

/// <summary>What an address asks of the rows behind a figure.</summary>
public sealed class RowsAsk
{
    public SummaryFigure Figure { get; set; }

    public string? Band { get; set; }

    public int? Score { get; set; }

    public DateOnly? Month { get; set; }

    public string? Futures { get; set; }

    public bool Before { get; set; }

    public RowFilter Filter() => new(
        Enum.IsDefined(Figure) ? Figure : SummaryFigure.Contracted, string.IsNullOrEmpty(Band) ? null : Band, Score, Month,
        FuturesMonth.TryParse(Futures, null, out var month) ? month : null, Before);
}
