using GreenLedger.Domain.Measures;

namespace GreenLedger.SeedDemo.Pricing;

/// <summary>
/// Two years of an invented market: the two futures levels and two exchange rates on business days. The levels wander
/// around a drawn path, so that buying early or late makes a difference.
/// </summary>
internal sealed class Market
{
    public const int Years = 2;

    // Levels at eight evenly spaced days of the two years, invented.
    private static readonly double[] ArabicaPath = [285, 330, 392, 352, 301, 334, 312, 298];
    private static readonly double[] RobustaPath = [4650, 5150, 5400, 4700, 3950, 4350, 4150, 3980];
    private static readonly double[] UsdPath = [1.062, 1.045, 1.088, 1.136, 1.171, 1.158, 1.149, 1.161];
    private static readonly double[] GbpPath = [0.832, 0.838, 0.849, 0.858, 0.866, 0.871, 0.868, 0.870];

    private readonly Dictionary<DateOnly, Level> _levels = [];
    private readonly DateOnly _first;

    public Market(DateOnly today, Draw draw)
    {
        Today = today;
        _first = today.AddYears(-Years).AddDays(-14);
        Days = [.. Enumerable.Range(0, today.DayNumber - _first.DayNumber).Select(_first.AddDays).Where(IsBusinessDay)];
        double arabica = 0, robusta = 0, usd = 0, gbp = 0;
        foreach (var day in Days)
        {
            arabica = Wander(arabica, 0.012, draw);
            robusta = Wander(robusta, 0.012, draw);
            usd = Wander(usd, 0.003, draw);
            gbp = Wander(gbp, 0.002, draw);
            _levels[day] = new Level(
                At(ArabicaPath, day) * Math.Exp(arabica), At(RobustaPath, day) * Math.Exp(robusta),
                At(UsdPath, day) * Math.Exp(usd), At(GbpPath, day) * Math.Exp(gbp));
        }
    }

    public DateOnly Today { get; }

    /// <summary>Business days up to yesterday: the day's own figures come out when it is over.</summary>
    public IReadOnlyList<DateOnly> Days { get; }

    /// <summary>The level of the day, or of the last business day before it.</summary>
    public Level On(DateOnly day)
    {
        while (day > _first && !_levels.ContainsKey(day))
        {
            day = day.AddDays(-1);
        }

        return _levels.TryGetValue(day, out var level) ? level : _levels[Days[0]];
    }

    /// <summary>The months that trade on a day, nearest first.</summary>
    public static IReadOnlyList<FuturesMonth> Months(FuturesMarket market, DateOnly day, int count) =>
    [
        .. Enumerable.Range(0, 36).Select(day.AddMonths)
            .Where(month => market.Months().Contains(month.Month))
            .Select(month => FuturesMonth.Of(market, month.Year, month.Month))
            .Where(month => month.FirstDay > day)
            .Take(count),
    ];

    /// <summary>What a month is worth on a day, in the market's steps: later months a little below the nearest.</summary>
    public decimal Quote(FuturesMonth month, DateOnly day)
    {
        var level = On(day);
        var ahead = Math.Max(0, (month.FirstDay.DayNumber - day.DayNumber) / 30.0);
        var (front, tick) = month.Market == FuturesMarket.Arabica ? (level.Arabica, 0.05m) : (level.Robusta, 1m);
        return Math.Round((decimal)(front * (1 - (0.004 * ahead))) / tick) * tick;
    }

    private static double Wander(double from, double step, Draw draw) => (from * 0.97) + draw.Normal(0, step);

    private double At(double[] path, DateOnly day)
    {
        var at = (day.DayNumber - _first.DayNumber) / (double)(Today.DayNumber - _first.DayNumber) * (path.Length - 1);
        var before = Math.Min((int)at, path.Length - 2);
        return path[before] + ((path[before + 1] - path[before]) * (at - before));
    }

    /// <summary>Neither a weekend nor one of the closing days that both banks and exchanges keep.</summary>
    private static bool IsBusinessDay(DateOnly day) =>
        day.DayOfWeek is not (DayOfWeek.Saturday or DayOfWeek.Sunday)
        && (day.Month, day.Day) is not ((1, 1) or (5, 1) or (12, 25) or (12, 26))
        && day != Easter(day.Year).AddDays(-2)
        && day != Easter(day.Year).AddDays(1);

    /// <summary>Easter Sunday of the Gregorian calendar (the anonymous algorithm of 1876).</summary>
    private static DateOnly Easter(int year)
    {
        int a = year % 19, b = year / 100, c = year % 100;
        var h = ((19 * a) + b - (b / 4) - ((b - ((b + 8) / 25) + 1) / 3) + 15) % 30;
        var l = (32 + (2 * (b % 4)) + (2 * (c / 4)) - h - (c % 4)) % 7;
        var m = (a + (11 * h) + (22 * l)) / 451;
        var n = h + l - (7 * m) + 114;
        return new DateOnly(year, n / 31, (n % 31) + 1);
    }

    /// <summary>Arabica in US cents/lb, robusta in USD/t, the currencies in units for one euro.</summary>
    internal readonly record struct Level(double Arabica, double Robusta, double Usd, double Gbp);
}
