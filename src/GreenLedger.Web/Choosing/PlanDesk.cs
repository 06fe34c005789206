using GreenLedger.Data;
using GreenLedger.Data.Choosing;
using GreenLedger.Data.Stock;
using GreenLedger.Domain;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Stock;
using GreenLedger.Web.Display;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Choosing;

/// <summary>What lies on the desk before a plan is made.</summary>
/// <param name="Request">Null where no rules rank, or nothing is needed or offered.</param>
/// <param name="Months">The first day of each month.</param>
/// <param name="TooSoon">Kilograms that run out before anything bought today can come, by purpose: no plan can mend them.</param>
/// <param name="Decided">Decided to buy and on no contract yet: counted as coming for the purposes that it fits, and not planned again.</param>
/// <param name="DecidedOver">What of that fits none of the needs that are left.</param>
/// <param name="WithoutBags">Ranked offers that were left out: the weight of a bag is not stated, or less than a bag is on offer.</param>
public sealed record PlanBasis(
    BuyingRules? Rules, Shortlist? Shortlist, string? Trouble, PlanRequest? Request, IReadOnlyList<DateOnly> Months, IReadOnlyList<(string Name, Weight Missing)> TooSoon, Weight Decided, Weight DecidedOver, int WithoutBags);

/// <summary>Lays out needs from purposes and offers from the shortlist.</summary>
public sealed class PlanDesk(LedgerContext db, PurposeQuery purposes, ShortlistQuery shortlists, FlavourQuery flavours, HouseZone house, TimeProvider clock)
{
    public async Task<PlanBasis> LayOutAsync(PlanWish wish, DateOnly today, CancellationToken cancellationToken)
    {
        wish.Check();
        var habits = await db.StockHabits.AsNoTracking().OfHouseAsync(cancellationToken);
        var ranking = await Ranking.OfAsync(new RankingWish { Rules = wish.Rules }, db, shortlists, today, cancellationToken);
        var months = Enumerable.Range(0, wish.Months).Select(ahead => new DateOnly(today.Year, today.Month, 1).AddMonths(ahead)).ToList();
        var rows = await purposes.ListAsync(today, cancellationToken);
        var decided = await DecidedAsync(cancellationToken);
        var (offers, bought, without) = ranking.Shortlist is { } list ? await OffersAsync(list, decided, wish, habits, today, cancellationToken) : ([], [], 0);
        var families = await flavours.FamiliesAsync(cancellationToken);
        var asked = rows.Select(row => new PlanNeed(row.Purpose.Name, row.Purpose.Process, row.Purpose.LeastScore, Net(row.Cover, months, today), row.Purpose.Flavour is { } flavour && families.Contains(flavour) ? flavour : null)).ToList();
        var soonest = asked.ConvertAll(need => offers.Where(need.Fits).Select(offer => offer.FirstMonth).DefaultIfEmpty(0).Min());
        var (needs, over) = PlanNeed.Less([.. asked.Select((need, at) => need with { ByMonth = [.. need.ByMonth.Select((kg, month) => month < soonest[at] ? Weight.Zero : kg)] })], bought);
        return new PlanBasis(
            ranking.Rules,
            ranking.Shortlist,
            ranking.Trouble,
            needs.Any(need => need.Total > Weight.Zero) && offers.Count > 0 ? new PlanRequest(wish.Months, needs, offers, wish.Limits(), wish.Quality / 100m) { First = months[0] } : null,
            months,
            [.. asked.Select((need, at) => (need.Name, Sum(need.ByMonth.Take(soonest[at])))).Where(one => one.Item2 > Weight.Zero)],
            Sum(decided.Values),
            over + Sum(decided.Values) - Sum(bought.Select(one => one.Weight)),
            without);
    }

    /// <summary>Decides to buy so many bags of each offer, all or none; false where no rules rank. Whoever calls saves.</summary>
    /// <exception cref="RuleBrokenException">An offer stands open no more, or has fewer bags.</exception>
    public async Task<bool> DecideAsync(PlanWish wish, IReadOnlyList<(Id<Offer> OfferId, int Bags)> lines, string? reason, Id<Person> by, CancellationToken cancellationToken)
    {
        var basis = await LayOutAsync(wish, house.Today, cancellationToken);
        if (basis is not { Rules: { } rules, Shortlist: { } list })
        {
            return false;
        }

        var open = basis.Request?.Offers.ToDictionary(offer => offer.OfferId) ?? [];
        foreach (var (id, bags) in lines)
        {
            var (entry, offer) = (list.Find(id), open.GetValueOrDefault(id));
            Rule.Require(entry is not null && offer is not null, "One of these offers no longer stands open, or somebody has decided on it: make the plan again.");
            Rule.Require(bags >= 1 && bags <= offer.MostBags, $"{offer.Ref}: between 1 and {offer.MostBags:#,0} bags are on offer.");
            var choice = new Choice(Outcome.Buy, offer.Bag * bags, reason, null);
            db.Add(Decision.Take(BuyingRules.Advise(entry, list), choice, RulesSnapshot.Of(rules, list.Terms), FiguresSnapshot.Of(entry, list), entry.Candidate, by, clock.GetUtcNow()));
        }

        return true;
    }

    /// <summary>Use of each month, of this one what is left of it, less what is there and what comes.</summary>
    private static IReadOnlyList<Weight> Net(PurposeCover cover, List<DateOnly> months, DateOnly today)
    {
        var use = months.Select((first, at) => (at == 0 ? first.AddMonths(1).DayNumber - today.DayNumber : DateTime.DaysInMonth(first.Year, first.Month)) / 7m).Select(weeks => Weight.FromKilograms(cover.WeeklyUse.Kilograms * weeks));
        var supply = months.Select((first, at) => Sum(cover.Stock.Coming.Where(one => (at == 0 || one.On >= first) && one.On < first.AddMonths(1)).Select(one => one.Weight)) + (at == 0 ? cover.Stock.Available : Weight.Zero));
        return PlanNeed.NetOf([.. use], [.. supply]);
    }

    /// <summary>Every ranked offer on which nobody has decided to buy or to decline.</summary>
    private async Task<(IReadOnlyList<PlanOffer> Offers, IReadOnlyList<(PlanOffer Offer, Weight Weight)> Bought, int Without)> OffersAsync(
        Shortlist list, Dictionary<Id<Offer>, Weight> decided, PlanWish wish, StockHabits habits, DateOnly today, CancellationToken cancellationToken)
    {
        var settled = (await db.Decisions.Standing().Where(decision => decision.Outcome != Outcome.Hold).Select(decision => decision.OfferId).ToListAsync(cancellationToken)).ToHashSet();
        var ranked = list.Ranked.Where(entry => !settled.Contains(entry.Candidate.OfferId)).ToList();
        var ids = ranked.ConvertAll(entry => entry.Candidate.OfferId).Concat(decided.Keys).ToList();
        var stored = await db.Offers.AsNoTracking().Where(offer => ids.Contains(offer.Id)).ToDictionaryAsync(offer => offer.Id, cancellationToken);
        var tasted = await flavours.OfLotsAsync([.. stored.Values.Select(offer => offer.LotId)], cancellationToken);
        var families = await db.ProcessMethods.AsNoTracking().ToDictionaryAsync(method => method.Id, method => method.Family, cancellationToken);
        var offers = ranked.Select(entry => OfferOf(entry, stored[entry.Candidate.OfferId], families, tasted, wish, habits, today)).OfType<PlanOffer>().Take(PlanRequest.MostOffers).ToList();
        var bought = list.Ranked.Where(entry => decided.ContainsKey(entry.Candidate.OfferId))
            .Select(entry => OfferOf(entry, stored[entry.Candidate.OfferId], families, tasted, wish, habits, today)).OfType<PlanOffer>().Select(offer => (offer, decided[offer.OfferId])).ToList();
        return (offers, bought, ranked.Count - offers.Count);
    }

    private static PlanOffer? OfferOf(ShortlistEntry entry, Offer offer, Dictionary<Id<ProcessMethod>, ProcessFamily> families, ILookup<Id<Lot>, string> tasted, PlanWish wish, StockHabits habits, DateOnly today)
    {
        var (lot, score) = (entry.Candidate, entry.Score!.Value);
        if (offer.BagWeight is not { Kilograms: >= 0.1m and <= 2_000m } bag || offer.Quantity < bag)
        {
            return null;
        }

        return new PlanOffer(
            lot.OfferId, lot.Ref, lot.Supplier, lot.Origin, lot.ProcessMethodId is { } method ? families.GetValueOrDefault(method) : null,
            Math.Max(-100m, score.Score.Points - (wish.Doubt * (decimal)score.AnyCupperError)),
            lot.CostPerKilogram!.Value, bag, (int)Math.Min(1_000_000, offer.Quantity.Micrograms / bag.Micrograms), offer.LeastBags ?? wish.LeastBags, FirstMonth(offer, habits, today), [.. tasted[offer.LotId]]);
    }

    /// <summary>Coffee in a warehouse can be called at once, other coffee after the lead time, or the way from the day that it can be shipped.</summary>
    private static int FirstMonth(Offer offer, StockHabits habits, DateOnly today)
    {
        var here = offer.Incoterm == Incoterm.ExWarehouse ? today : today.AddDays(habits.LeadDays);
        var ready = offer.AvailableFrom?.AddDays(offer.Incoterm == Incoterm.ExWarehouse ? 0 : habits.WayDays) ?? here;
        var day = ready > here ? ready : here;
        return ((day.Year - today.Year) * 12) + day.Month - today.Month;
    }

    private async Task<Dictionary<Id<Offer>, Weight>> DecidedAsync(CancellationToken cancellationToken) => (await db.Decisions.AsNoTracking().Standing()
        .Where(decision => decision.Outcome == Outcome.Buy && !db.ContractLots.Any(line => line.DecisionId == decision.Id))
        .Where(decision => decision.Quantity != null).Select(decision => new { decision.OfferId, Weight = decision.Quantity!.Value }).ToListAsync(cancellationToken))
        .GroupBy(decision => decision.OfferId).ToDictionary(offer => offer.Key, offer => Sum(offer.Select(one => one.Weight)));

    private static Weight Sum(IEnumerable<Weight> weights) => weights.Aggregate(Weight.Zero, (sum, one) => sum + one);
}
