using System.Globalization;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Stock;

/// <summary>Coffee that is contracted or afloat, and the day on which it is expected in the warehouse.</summary>
/// <param name="What">Contract or shipment, and lot.</param>
/// <param name="IsPlanned">A planned arrival is written down; otherwise the day is the last of shipment and the house's days at sea.</param>
public sealed record Expected(string What, DateOnly On, Weight Weight, bool IsPlanned);

/// <summary>What is known about the stock that serves a purpose.</summary>
/// <param name="OnHand">As weighed, of every lot that serves it.</param>
/// <param name="Reserved">Of that, what is reserved for anything but this purpose.</param>
/// <param name="Coming">Contracted and afloat.</param>
/// <param name="Used">From releases.</param>
/// <param name="Planned">As the buyer means to use it.</param>
public sealed record PurposeStock(Weight OnHand, Weight Reserved, IReadOnlyList<Expected> Coming, WeeklyUse Used, Weight Planned)
{
    /// <summary>At hand for it: what is reserved for this very purpose counts, unlike in what is available of a lot.</summary>
    public Weight Available => OnHand - Reserved;

    public Weight ToCome => Coming.Aggregate(Weight.Zero, (sum, one) => sum + one.Weight);
}

/// <summary>How long a purpose is covered, and whether it is time to buy for it (handbook, trade 9.3).</summary>
/// <param name="WeeklyUse">What cover is reckoned with.</param>
/// <param name="IsMeasured">From releases; otherwise as planned.</param>
/// <param name="Weeks">Null where nothing is used.</param>
/// <param name="Position">On hand, afloat and contracted, less what is reserved for something else.</param>
public sealed record PurposeCover(PurposeStock Stock, Weight WeeklyUse, bool IsMeasured, decimal? Weeks, Weight Position, ReorderPoint Reorder)
{
    private const int DaysOfWeek = 7;

    /// <summary>How far ahead the outlook looks.</summary>
    public const int WeeksAhead = 52;

    /// <summary>The position is at the point or below it. A purpose that uses nothing never is.</summary>
    public bool IsTimeToBuy => WeeklyUse > Weight.Zero && Position <= Reorder.Point;

    /// <summary>Which figures of the house act: weeks averaged, lead time, its spread and the safety factor.</summary>
    public static PurposeCover Of(PurposeStock stock, StockHabits habits)
    {
        ArgumentNullException.ThrowIfNull(stock);
        ArgumentNullException.ThrowIfNull(habits);
        var isMeasured = stock.Used.Mean > Weight.Zero;
        var use = isMeasured ? stock.Used.Mean : stock.Planned;
        var spread = isMeasured ? stock.Used.Spread ?? Weight.Zero : Weight.Zero;
        var reorder = StockCover.Reorder(use, spread, habits.LeadDays / (decimal)DaysOfWeek, habits.LeadSpreadDays / (decimal)DaysOfWeek, habits.SafetyFactor);
        return new PurposeCover(stock, use, isMeasured, StockCover.Weeks(stock.Available, use), stock.Available + stock.ToCome, reorder);
    }

    /// <summary>Week by week for a year: what arrives, what is left, what is missing.</summary>
    public IReadOnlyList<WeekAhead> Outlook(DateOnly today)
    {
        var (left, without, weeks) = (Stock.Available, Stock.Available, new List<WeekAhead>());
        for (var week = 0; week < WeeksAhead; week++)
        {
            var from = today.AddDays(week * DaysOfWeek);
            var came = Stock.Coming.Where(one => (week == 0 || one.On >= from) && one.On < from.AddDays(DaysOfWeek)).Aggregate(Weight.Zero, (sum, one) => sum + one.Weight);
            var wanted = left + came - WeeklyUse;
            var missing = wanted < Weight.Zero ? Weight.Zero - wanted : Weight.Zero;
            (left, without) = (Least(wanted), Least(without - WeeklyUse));
            weeks.Add(new WeekAhead(from, came, left, missing, StockCover.Weeks(left, WeeklyUse), StockCover.Weeks(without, WeeklyUse)));
        }

        return weeks;
    }

    /// <summary>The day about which nothing is left, with what is contracted; null where something is left all year.</summary>
    public DateOnly? RunsOutOn(DateOnly today)
    {
        var weeks = Outlook(today);
        var at = weeks.ToList().FindIndex(week => week.Missing > Weight.Zero);
        if (at < 0)
        {
            return null;
        }

        var had = (at == 0 ? Stock.Available : weeks[at - 1].Left) + weeks[at].Came;
        return today.AddDays((at * DaysOfWeek) + Math.Max(0, (int)(had.Kilograms / WeeklyUse.Kilograms * DaysOfWeek)));
    }

    /// <summary>The same from stock alone.</summary>
    public DateOnly? StockRunsOutOn(DateOnly today) => WeeklyUse > Weight.Zero && Weeks is { } weeks && weeks < WeeksAhead ? today.AddDays(Math.Max(0, (int)(weeks * DaysOfWeek))) : null;

    /// <summary>In a sentence that says how it was reckoned.</summary>
    public string Words() => IsMeasured
        ? string.Create(CultureInfo.InvariantCulture, $"{WeeklyUse.Kilograms:#,0.#} kg a week, from the releases of {Stock.Used.Weeks} {(Stock.Used.Weeks == 1 ? "week" : "weeks")}")
        : string.Create(CultureInfo.InvariantCulture, $"{WeeklyUse.Kilograms:#,0.#} kg a week as planned: nothing was released for it in the weeks that are averaged");

    private static Weight Least(Weight weight) => weight < Weight.Zero ? Weight.Zero : weight;
}

/// <summary>A week of the year ahead.</summary>
/// <param name="Came">Expected to arrive in it; what is overdue is expected in the first week.</param>
/// <param name="Left">At its end; never below zero.</param>
/// <param name="Missing">What the week lacks.</param>
/// <param name="Cover">Weeks that what is left lasts; null where nothing is used.</param>
/// <param name="CoverFromStock">The same if nothing of what is contracted came.</param>
public sealed record WeekAhead(DateOnly From, Weight Came, Weight Left, Weight Missing, decimal? Cover, decimal? CoverFromStock);

/// <summary>Weeks that follow each other and do not differ.</summary>
/// <param name="Week">Each of them.</param>
/// <param name="Count">How many.</param>
public sealed record AlikeWeeks(WeekAhead Week, int Count)
{
    /// <summary>The first day of the last of them.</summary>
    public DateOnly LastFrom => Week.From.AddDays(7 * (Count - 1));

    /// <summary>The weeks with those taken together in which nothing changes.</summary>
    public static IReadOnlyList<AlikeWeeks> Of(IEnumerable<WeekAhead> weeks)
    {
        ArgumentNullException.ThrowIfNull(weeks);
        var alike = new List<AlikeWeeks>();
        foreach (var week in weeks)
        {
            if (alike is [.., var last] && last.Week with { From = week.From } == week)
            {
                alike[^1] = last with { Count = last.Count + 1 };
            }
            else
            {
                alike.Add(new AlikeWeeks(week, 1));
            }
        }

        return alike;
    }
}
