using System.Globalization;
using GreenLedger.Domain;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.SeedDemo.Arrivals;
using GreenLedger.SeedDemo.Offers;
using GreenLedger.SeedDemo.People;
using GreenLedger.SeedDemo.Pricing;

namespace GreenLedger.SeedDemo.Contracts;

/// <summary>
/// Writes a contract for each purchase that stands: the older ones have long arrived, the later ones are on the water, to be
/// fixed or to be signed. One was amended, one amendment waits for its signatures, one contract was cancelled and one shipped
/// before anybody had approved its sample.
/// </summary>
internal sealed class PurchaseDesk(Cast cast, Market market, IReadOnlyCollection<Shelved> coffees, IReadOnlyCollection<Supplier> suppliers, Quayside quay, DateTimeOffset now, Draw draw)
{
    private readonly StandardForm _form = StandardForms.All()[0];
    private readonly Dictionary<Id<Offer>, Shelved> _byOffer = coffees.ToDictionary(coffee => coffee.Offer.Id);
    private readonly Dictionary<Id<Supplier>, Supplier> _suppliers = suppliers.ToDictionary(supplier => supplier.Id);
    private readonly Dictionary<int, int> _numbers = [];

    private DateOnly Today => DateOnly.FromDateTime(now.UtcDateTime);

    public IReadOnlyList<Contract> Write(IEnumerable<Decision> decisions)
    {
        var bought = decisions.Where(decision => decision is { Outcome: Outcome.Buy, IsWithdrawn: false }).OrderBy(decision => decision.At).ToList();
        var purchases = new List<Purchase>();
        for (var i = 0; i < bought.Count; i++)
        {
            _byOffer[bought[i].OfferId].Lot.CountTo(ProgrammeOf(i));
            purchases.Add(Write(bought[i], FateOf(i, bought.Count)));
        }

        Send([.. purchases.Where(purchase => purchase.Travels)]);
        return purchases.ConvertAll(purchase => purchase.Contract);
    }

    /// <summary>What one seller has ready at about the same time travels together.</summary>
    private void Send(IReadOnlyList<Purchase> purchases)
    {
        var sent = new HashSet<Purchase>();
        foreach (var purchase in purchases)
        {
            if (!sent.Add(purchase))
            {
                continue;
            }

            var along = purchases.FirstOrDefault(other => !sent.Contains(other) && GoTogether(purchase, other));
            sent.UnionWith(along is null ? [] : [along]);
            Travel(along is null ? [purchase.Contract] : [purchase.Contract, along.Contract], purchase.Origin, purchase.Fate);
        }
    }

    private static bool GoTogether(Purchase one, Purchase other) =>
        (one.Fate, other.Fate) == (Fate.Usual, Fate.Usual) && one.Origin == other.Origin && one.Contract.SupplierId == other.Contract.SupplierId
        && other.Contract.ShipFrom.AddDays(20) <= one.Contract.ShipUntil && one.Contract.ShipFrom.AddDays(20) <= other.Contract.ShipUntil;

    private static string? ProgrammeOf(int index) => (index % 4, index % 6) switch
    {
        (1, _) => "Three harvests with the same growers",
        (_, 0) => "First lots of new growers",
        _ => null,
    };

    private static Fate FateOf(int index, int count) => (count - index) switch
    {
        1 or 2 => Fate.Draft,
        3 => Fate.AwaitingApproval,
        4 => Fate.AmendmentToSign,
        5 => Fate.Rolled,
        6 => Fate.Amended,
        7 => Fate.Afloat,
        8 => Fate.Landed,
        _ when index == count / 3 => Fate.Cancelled,
        _ when index == count / 2 => Fate.Breach,
        _ when index == (count / 2) + 3 => Fate.Short,
        _ => Fate.Usual,
    };

    private Purchase Write(Decision decision, Fate fate)
    {
        var (coffee, draftedOn) = (_byOffer[decision.OfferId], DateOnly.FromDateTime(decision.At.UtcDateTime).AddDays(1));
        var terms = Terms(decision, coffee, draftedOn, fate);
        var contract = Contract.Draft(
            NumberOf(draftedOn), coffee.Offer.SupplierId, terms, new Dictionary<Id<Lot>, Id<Decision>> { [coffee.Lot.Id] = decision.Id }, cast.Buyer.Id, At(draftedOn));
        var origin = coffee.Coffee.Origin.Code;
        if (fate == Fate.Draft || Signed(contract, draftedOn) is not { } signedOn)
        {
            return new Purchase(contract, origin, fate, Travels: false);
        }

        if (fate == Fate.Cancelled)
        {
            Do(signedOn.AddDays(16), (on, at) => contract.Cancel(on, "The mill lost its drying beds to rain; both sides let the contract go.", cast.Buyer.Id, at));
            return new Purchase(contract, origin, fate, Travels: false);
        }

        if (fate is Fate.Amended or Fate.AmendmentToSign)
        {
            Amend(contract, signedOn.AddDays(6), fate);
        }

        if (fate != Fate.AwaitingApproval)
        {
            Fix(contract, signedOn, fate);
        }

        return new Purchase(contract, origin, fate, Travels: fate != Fate.AwaitingApproval);
    }

    private ContractTerms Terms(Decision decision, Shelved coffee, DateOnly on, Fate fate)
    {
        var terms = DraftTerms.Of(Cast.HouseName, _suppliers[coffee.Offer.SupplierId], [new BoughtLot(decision, coffee.Lot, coffee.Offer)], _form, on);
        var asked = AskedOn(coffee.Offer, on, terms.Delivery.ShipUntil, fate);
        var price = DraftTerms.PriceOf(asked, terms.Lots[0].Net());
        return terms with
        {
            Price = asked.Differential is null ? price : price with { ProvisionalShare = Percent.Of(80m) },
            Approval = fate is Fate.AwaitingApproval or Fate.Breach ? terms.Approval : new ApprovalTerms(ApprovalRule.None, null, null),
        };
    }

    /// <summary>As the list of the day asked; for some of the newest purchases a differential was agreed instead.</summary>
    private Asking AskedOn(Offer offer, DateOnly on, DateOnly shipUntil, Fate fate)
    {
        var asked = offer.Prices.Last(price => price.On <= on);
        if (fate is not (Fate.AwaitingApproval or Fate.AmendmentToSign or Fate.Rolled) || asked.Price is not { } price)
        {
            return new Asking(asked.Price, asked.Differential);
        }

        var month = fate == Fate.Rolled ? FuturesMonth.After(FuturesMarket.Arabica, on.AddDays(20), 1)[0] : PriceTerms.UsualMonth(FuturesMarket.Arabica, shipUntil);
        var above = price.Currency == Currency.Usd ? Math.Round((price.PerPound * 100m - market.Quote(month, on)) * 2m) / 2m : 30m;
        return Asking.Against(Differential.Of(month, above));
    }

    /// <summary>Three to six days after the draft; null where that day has not come.</summary>
    private DateOnly? Signed(Contract contract, DateOnly draftedOn)
    {
        var on = draftedOn.AddDays(draw.Between(3, 6));
        return Do(on, (day, at) => contract.Sign(day, null, cast.Buyer.Id, at)) ? on : null;
    }

    private void Amend(Contract contract, DateOnly on, Fate fate)
    {
        var terms = contract.Terms;
        var later = terms with { Delivery = terms.Delivery with { ShipUntil = terms.Delivery.ShipUntil.AddMonths(1) } };
        Do(on, (_, at) => contract.Amend(later, "The seller asked for a month more: the mill waits for a part of its huller.", cast.Buyer.Id, at));
        if (fate == Fate.Amended)
        {
            Do(on.AddDays(3), (day, at) => contract.Sign(day, null, cast.Buyer.Id, at));
        }
    }

    /// <summary>Two parts, some weeks apart; what would come after today stays open.</summary>
    private void Fix(Contract contract, DateOnly signedOn, Fate fate)
    {
        if (contract.Position is not { } position)
        {
            return;
        }

        var lots = contract.Terms.Price.MarketLots;
        var first = Weekday(signedOn.AddDays(draw.Between(9, 16)));
        if (lots is 1)
        {
            Do(first, (on, at) => contract.Fix(new FixingOrder(on, 1, null, market.Quote(position.Month, on), "order"), cast.Buyer.Id, at));
            return;
        }

        var part = lots is null ? Weight.FromKilograms(Math.Round(position.ToFix.Kilograms * 0.6m)) : (Weight?)null;
        Do(first, (on, at) => contract.Fix(new FixingOrder(on, lots - 1, part, market.Quote(position.Month, on), "order"), cast.Buyer.Id, at));
        if (fate is Fate.Rolled or Fate.AmendmentToSign)
        {
            Roll(contract, first.AddDays(5), fate);
            return;
        }

        var rest = lots is null ? contract.Position!.Open : (Weight?)null;
        Do(Weekday(first.AddDays(draw.Between(16, 24))), (on, at) => contract.Fix(new FixingOrder(on, lots is null ? null : 1, rest, market.Quote(position.Month, on), "order"), cast.Buyer.Id, at));
    }

    /// <summary>What is open goes to the next month at the spread of the day.</summary>
    private void Roll(Contract contract, DateOnly day, Fate fate)
    {
        if (fate == Fate.Rolled && contract.Position is { IsFixed: false } position)
        {
            var later = position.Month.Following(1)[0];
            Do(Weekday(day), (on, at) => contract.Roll(new RollOrder(on, later, market.Quote(later, on) - market.Quote(position.Month, on)), cast.Buyer.Id, at));
        }
    }

    private void Travel(IReadOnlyList<Contract> contracts, string origin, Fate fate)
    {
        var shipped = fate switch
        {
            Fate.Afloat => Today.AddDays(-12),
            Fate.Landed => Today.AddDays(-45),
            Fate.Breach => contracts[0].ShipUntil.AddDays(5),
            _ => contracts.Max(contract => contract.ShipFrom).AddDays(draw.Between(18, contracts.Count > 1 ? 24 : 66)),
        };
        var reason = fate == Fate.Breach ? "The seller shipped with the sample still on its way to us; we take the coffee in and judge it on arrival." : null;
        if (!DoAll(contracts, shipped, (contract, on, at) => contract.Ship(on, reason, cast.Buyer.Id, at)))
        {
            return;
        }

        quay.Ship(contracts, shipped, origin);
        var arrived = shipped.AddDays(fate == Fate.Landed ? 36 : draw.Between(27, 41));
        if (!DoAll(contracts, arrived, (contract, on, at) => contract.Arrive(on, null, cast.Lead.Id, at)))
        {
            return;
        }

        quay.Receive(contracts, arrived, origin, isShort: fate is Fate.Landed or Fate.Short);
        if (fate != Fate.Landed)
        {
            DoAll([.. contracts.Where(contract => contract.Price.IsKnown())], arrived.AddDays(draw.Between(24, 40)), (contract, on, at) => contract.Close(on, null, cast.Buyer.Id, at));
        }
    }

    private bool DoAll(IReadOnlyList<Contract> contracts, DateOnly on, Action<Contract, DateOnly, DateTimeOffset> act) =>
        contracts.Count(contract => Do(on, (day, at) => act(contract, day, at))) == contracts.Count;

    /// <summary>Does what has its day before today.</summary>
    private bool Do(DateOnly on, Action<DateOnly, DateTimeOffset> act)
    {
        if (on >= Today)
        {
            return false;
        }

        act(on, At(on));
        return true;
    }

    private string NumberOf(DateOnly on)
    {
        var number = _numbers[on.Year] = _numbers.GetValueOrDefault(on.Year) + 1;
        return string.Create(CultureInfo.InvariantCulture, $"P{on.Year % 100:00}-{number:000}");
    }

    private DateTimeOffset At(DateOnly day)
    {
        var at = new DateTimeOffset(day.ToDateTime(new TimeOnly(draw.Between(9, 16), draw.Between(0, 59))), TimeSpan.Zero);
        return at < now ? at : now.AddHours(-1);
    }

    private static DateOnly Weekday(DateOnly day) => day.DayOfWeek switch
    {
        DayOfWeek.Saturday => day.AddDays(2),
        DayOfWeek.Sunday => day.AddDays(1),
        _ => day,
    };

    /// <param name="Travels">Signed and let go by both sides.</param>
    private sealed record Purchase(Contract Contract, string Origin, Fate Fate, bool Travels);

    /// <summary>What becomes of a purchase.</summary>
    private enum Fate
    {
        Usual,
        Draft,
        AwaitingApproval,
        Amended,
        AmendmentToSign,
        Cancelled,
        Breach,
        Rolled,
        Afloat,
        Landed,
        Short,
    }
}
