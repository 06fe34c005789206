using GreenLedger.Domain;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using GreenLedger.SeedDemo.Offers;
using GreenLedger.SeedDemo.People;

namespace GreenLedger.SeedDemo.Choosing;

/// <summary>
/// Decides every seven weeks or so on the shortlist of the day: mostly as the rules advise, now and then otherwise with a
/// reason, never to buy what only its seller has scored, and twice the buyer had to take a purchase back.
/// </summary>
internal sealed class BuyersHand(Cast cast, BuyersRules rules, AsItStood asItStood, IReadOnlyCollection<Shelved> coffees, Draw draw)
{
    private const int DaysBetween = 52;

    /// <summary>A container, in kilograms; common practice, no source.</summary>
    private const decimal Container = 19_200m;

    /// <summary>What was cupped so many days before the table of the day is decided on, and nothing is left lying for years.</summary>
    private const int DaysToDecide = 18;

    private static readonly string[] WhyBuy =
    [
        "The panel liked it better than its figures say, and the roaster wants it on the counter.",
        "We have bought from this producer before and want to keep its volumes.",
        "The cheaper lot ahead of it comes from the same valley; one of each spreads the risk.",
    ];

    private static readonly string[] WhyLeave =
    [
        "We hold enough coffee of this profile until spring.",
        "Shipment falls into our closing weeks; the next container is too late for us.",
        "The last lot of this seller arrived with torn bags; first we want that settled.",
    ];

    private static readonly string[] WhyHold =
    [
        "Waiting for a second sample.", "Asked the seller for a smaller quantity.", "Back on the table in two weeks.", "Price under talk.",
    ];

    private static readonly string[] WhyWithdraw =
    [
        "The seller had sold the lot before our answer came.",
        "The pre-shipment sample was promised for the week and never left; we let it go.",
    ];

    private readonly Dictionary<Id<Offer>, Shelved> _byOffer = coffees.ToDictionary(coffee => coffee.Offer.Id);
    private readonly Dictionary<Id<Offer>, DateOnly> _lastDecided = [];
    private readonly HashSet<Id<Offer>> _settled = [];

    /// <summary>From then on the house buys containers of large washed lots, whatever way they are priced.</summary>
    private DateOnly _containersFrom;
    private readonly List<Decision> _decisions = [];

    public IReadOnlyList<Decision> Decide(DateOnly from, DateOnly today)
    {
        _containersFrom = today.AddDays(-200);
        var tightened = from.AddMonths(11);
        var days = Days(from, today);
        var before = days.Count(day => day < tightened);
        Decide([.. days.Take(before)], 0);
        rules.Tighten(cast.Buyer.Id, At(tightened, 16));
        Decide([.. days.Skip(before)], before);
        Withdraw();
        return _decisions;
    }

    /// <summary>The shortlists do not depend on what was decided before, so they are ranked side by side.</summary>
    private void Decide(IReadOnlyList<DateOnly> days, int number)
    {
        var shortlists = days.AsParallel().AsOrdered()
            .Select((day, at) => (Set: SetOf(number + at), Day: day))
            .Select(one => (one.Set, one.Day, Shortlist: asItStood.On(one.Day, one.Set.Terms))).ToList();
        foreach (var (set, day, shortlist) in shortlists)
        {
            DecideOn(set, shortlist, At(day, 15));
        }
    }

    private BuyingRules SetOf(int number) => number % 5 == 3 ? rules.Robusta : number % 2 == 0 ? rules.Filter : rules.Espresso;

    /// <summary>Working days; the last one lies in the week before today.</summary>
    private List<DateOnly> Days(DateOnly from, DateOnly today)
    {
        var days = new List<DateOnly>();
        for (var day = today.AddDays(-4); day > from.AddDays(100); day = day.AddDays(-DaysBetween + draw.Between(-3, 3)))
        {
            days.Insert(0, day.DayOfWeek is DayOfWeek.Saturday or DayOfWeek.Sunday ? day.AddDays(2) : day);
        }

        return days;
    }

    private void DecideOn(BuyingRules set, Shortlist shortlist, DateTimeOffset at)
    {
        var open = shortlist.Ranked.Where(entry => !_settled.Contains(entry.Candidate.OfferId)).ToList();
        var cupped = open.Where(entry => entry.Score!.Value.Origin == ScoreOrigin.Cupped).ToList();
        foreach (var entry in cupped.Where(entry => entry.IsOnFront).Take(2))
        {
            var leaves = draw.Chance(0.12);
            Take(set, shortlist, entry, leaves ? Outcome.Decline : Outcome.Buy, leaves ? draw.Of(WhyLeave) : null, null, at);
        }

        foreach (var entry in cupped.Where(entry => !entry.IsOnFront).Take(2))
        {
            var buys = draw.Chance(0.3);
            Take(set, shortlist, entry, buys ? Outcome.Buy : Outcome.Hold, buys ? draw.Of(WhyBuy) : null, buys ? null : draw.Of(WhyHold), at.AddMinutes(6));
        }

        foreach (var entry in open.Except(cupped).Take(1))
        {
            Take(set, shortlist, entry, Outcome.Hold, "Only the seller has scored it: a sample is asked for.", null, at.AddMinutes(9));
        }

        foreach (var entry in shortlist.Failed.Where(entry => !_settled.Contains(entry.Candidate.OfferId)).Take(1))
        {
            var advice = BuyingRules.Advise(entry, shortlist);
            Take(set, shortlist, entry, advice.Outcome, null, advice.Outcome == Outcome.Decline ? "Told the seller why." : draw.Of(WhyHold), at.AddMinutes(11));
        }

        HoldTheRest(set, shortlist, at.AddMinutes(20));
    }

    /// <summary>What was cupped, is not bought and stays on offer to this day waits with a word, so that no sample lies undecided for years.</summary>
    private void HoldTheRest(BuyingRules set, Shortlist shortlist, DateTimeOffset at)
    {
        var until = DateOnly.FromDateTime(at.UtcDateTime).AddDays(-DaysToDecide);
        foreach (var entry in shortlist.Entries.Where(entry => !_settled.Contains(entry.Candidate.OfferId) && _byOffer[entry.Candidate.OfferId].Until is null && entry.Candidate.Results.Any(result => result.HeldOn <= until)).ToList())
        {
            var newest = entry.Candidate.Results.Where(result => result.HeldOn <= until).Max(result => result.HeldOn);
            if (_lastDecided.TryGetValue(entry.Candidate.OfferId, out var decided) && decided >= newest)
            {
                continue;
            }

            var isAdvised = BuyingRules.Advise(entry, shortlist).Outcome == Outcome.Hold;
            var choice = new Choice(Outcome.Hold, null, isAdvised ? null : "Others come first at this table; it stays on the list.", isAdvised ? "Others come first at this table." : null);
            TakeAt(set, shortlist, entry, choice, at);
        }
    }

    private void Take(BuyingRules set, Shortlist shortlist, ShortlistEntry entry, Outcome outcome, string? reason, string? note, DateTimeOffset at) =>
        TakeAt(set, shortlist, entry, new Choice(outcome, outcome == Outcome.Buy ? Quantity(entry.Candidate, DateOnly.FromDateTime(at.UtcDateTime)) : null, reason, note), at.AddMinutes(draw.Between(0, 5)));

    private void TakeAt(BuyingRules set, Shortlist shortlist, ShortlistEntry entry, Choice choice, DateTimeOffset at)
    {
        _lastDecided[entry.Candidate.OfferId] = DateOnly.FromDateTime(at.UtcDateTime);
        _decisions.Add(Decision.Take(BuyingRules.Advise(entry, shortlist), choice, RulesSnapshot.Of(set), FiguresSnapshot.Of(entry, shortlist), entry.Candidate, cast.Buyer.Id, at));
        if (choice.Outcome != Outcome.Hold)
        {
            _settled.Add(entry.Candidate.OfferId);
        }
    }

    /// <summary>Whole bags: small lots whole, of large ones a pallet or two, and a container of what is sold against the market.</summary>
    private Weight Quantity(Candidate candidate, DateOnly day)
    {
        var (coffee, offer) = (_byOffer[candidate.OfferId].Coffee, _byOffer[candidate.OfferId].Offer);
        var bag = coffee.BagWeight;
        var bags = (int)(candidate.Quantity.Micrograms / bag.Micrograms);
        var few = bags <= 24 ? bags : Math.Min(bags, 20 * draw.Between(1, 4));
        var isByContainer = candidate.Quantity.Kilograms > 17_100m && (offer.Prices.Last(price => price.On <= day).Differential is not null || (coffee.Family == ProcessFamily.Washed && day > _containersFrom));
        return bag * (isByContainer ? Math.Min(bags, (int)(Container / bag.Kilograms)) : few);
    }

    private void Withdraw()
    {
        var bought = _decisions.Where(decision => decision.Outcome == Outcome.Buy).ToList();
        for (var i = 0; i < WhyWithdraw.Length; i++)
        {
            var decision = bought[bought.Count * (i + 1) / 3];
            decision.Withdraw(WhyWithdraw[i], cast.Buyer.Id, decision.At.AddDays(5 + i).AddHours(-4));
        }
    }

    private static DateTimeOffset At(DateOnly day, int hour) => new(day.ToDateTime(new TimeOnly(hour, 0)), TimeSpan.Zero);
}
