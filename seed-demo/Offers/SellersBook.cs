using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;

namespace GreenLedger.SeedDemo.Offers;

/// <summary>
/// Two years of a seller's lists: new lots in season, prices that follow the market, lots sold and lots that go off the
/// list without a word.
/// </summary>
internal sealed class SellersBook(Seller seller, Harvests harvests, PriceDesk desk, Draw draw)
{
    /// <summary>A lot this old goes off the list: past crop.</summary>
    private const int OldestDays = 420;

    private readonly List<Entry> _open = [];

    public IReadOnlyList<SellersList> Lists(DateOnly from, DateOnly until)
    {
        var lists = new List<SellersList>();
        var on = from.AddDays(draw.Between(0, seller.Every - 1));
        while (on < until)
        {
            lists.Add(Write(Weekday(on), lists.Count + 1));
            on = on.AddDays(seller.Every + draw.Between(-4, 4));
        }

        return lists;
    }

    private SellersList Write(DateOnly on, int number)
    {
        var rows = _open.Select(entry => Again(entry, on)).OfType<Listed>().ToList();
        var gone = _open.Where(entry => entry.IsGone).Select(entry => entry.Coffee).ToList();
        _open.RemoveAll(entry => entry.IsGone);
        var fresh = number == 1 ? seller.NewLots + 1.5 : 0.84 * seller.NewLots * harvests.SeasonOf(seller, on);
        for (var left = fresh; left > 0 && (left >= 1 || draw.Chance(left)); left--)
        {
            var coffee = harvests.New(seller, on);
            var entry = new Entry(coffee, on, Stated(coffee), desk.Ask(coffee, on), coffee.Bags, desk.Level(coffee, on));
            _open.Add(entry);
            rows.Add(entry.Row(OfferState.OnOffer));
        }

        return new SellersList(seller, on, number, rows, [.. gone.Except(rows.Select(row => row.Coffee))]);
    }

    /// <summary>The row of a lot that was on an earlier list; null when it is left out.</summary>
    private Listed? Again(Entry entry, DateOnly on)
    {
        var age = on.DayNumber - entry.Since.DayNumber;
        if (age > OldestDays || draw.Chance(0.035))
        {
            entry.IsGone = true;
            return null;
        }

        if (draw.Chance(0.11))
        {
            entry.IsGone = true;
            return entry.Row(OfferState.Sold);
        }

        Reprice(entry, on, age);
        if (entry.Bags > 30 && draw.Chance(0.12))
        {
            entry.Bags -= draw.Between(5, entry.Bags / 2);
        }

        return entry.Row(OfferState.OnOffer);
    }

    private void Reprice(Entry entry, DateOnly on, int age)
    {
        if (entry.Asking.Differential is not null)
        {
            entry.Asking = PriceDesk.Roll(entry.Asking, on);
        }
        else if (Math.Abs(Math.Log(desk.Level(entry.Coffee, on) / entry.Level)) > 0.05 && draw.Chance(0.8))
        {
            entry.Level = desk.Level(entry.Coffee, on);
            entry.Asking = desk.Ask(entry.Coffee, on);
        }

        if (age > 200 && draw.Chance(0.3))
        {
            entry.Asking = PriceDesk.Discount(entry.Asking, 0.03m);
        }
    }

    /// <summary>Sellers are a little kinder to their coffee than a panel, and some state nothing.</summary>
    private Score? Stated(Coffee coffee)
    {
        var points = Math.Round((coffee.Quality + draw.Normal(0.45, 0.55)) * 4) / 4;
        return draw.Chance(0.12) || coffee.Origin.IsRobusta ? null : Score.Of((decimal)points);
    }

    private static DateOnly Weekday(DateOnly day) => day.DayOfWeek switch
    {
        DayOfWeek.Saturday => day.AddDays(-1),
        DayOfWeek.Sunday => day.AddDays(-2),
        _ => day,
    };

    private sealed class Entry(Coffee coffee, DateOnly since, Score? stated, Asking asking, int bags, double level)
    {
        public Coffee Coffee => coffee;

        public DateOnly Since => since;

        public Asking Asking { get; set; } = asking;

        public int Bags { get; set; } = bags;

        public double Level { get; set; } = level;

        public bool IsGone { get; set; }

        public Listed Row(OfferState state) => new(coffee, Asking, Bags, state, stated);
    }
}
