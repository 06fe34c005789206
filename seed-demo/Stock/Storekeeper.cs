using System.Globalization;
using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Costs;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.Pricing;
using GreenLedger.Domain.Stock;
using GreenLedger.SeedDemo.Arrivals;
using GreenLedger.SeedDemo.Offers;
using GreenLedger.SeedDemo.People;

namespace GreenLedger.SeedDemo.Stock;

/// <summary>
/// Keeps the stores of the house: what landed is taken in, released week by week, now and then sampled or moved to the second store;
/// a part is reserved, and the invoices of coffee, freight and haulage are posted.
/// </summary>
internal sealed class Storekeeper(Cast cast, IReadOnlyList<ExchangeRate> rates, IReadOnlyCollection<Shelved> coffees, DateTimeOffset now, Draw draw)
{
    private readonly Purpose[] _purposes =
    [
        new(new PurposeTerms("Elder espresso, base", null, Score.Of(81m), "nuts and cocoa", Weight.FromKilograms(1_400m), "Elder espresso", Percent.Of(60m))),
        new(new PurposeTerms("Elder espresso, lift", ProcessFamily.Natural, Score.Of(84m), "orchard", Weight.FromKilograms(210m), "Elder espresso", Percent.Of(40m))),
        new(new PurposeTerms("Filter of the season", ProcessFamily.Washed, Score.Of(85m), "flowers and leaves", Weight.FromKilograms(140m))),
        new(new PurposeTerms("New canteens", null, Score.Of(81m), null, Weight.FromKilograms(700m))),
    ];

    private readonly Dictionary<Id<Lot>, Coffee> _coffees = coffees.ToDictionary(coffee => coffee.Lot.Id, coffee => coffee.Coffee);
    private readonly HashSet<Id<Lot>> _serving = [];
    private readonly ExchangeRates _rates = new(rates);
    private readonly Warehouse _quay = new("Quay store");
    private readonly Warehouse _mill = new("Mill Lane roastery");
    private readonly List<object> _first = [];
    private readonly List<object> _then = [];

    /// <summary>Warehouses and holdings before what points to them.</summary>
    public IReadOnlyList<object> Keep(IReadOnlyList<Landing> landings, IEnumerable<Contract> contracts, IEnumerable<Claim> claims)
    {
        _first.AddRange([_quay, _mill, .. _purposes]);
        foreach (var (at, landing) in landings.Index())
        {
            Keep(landing, isLast: at >= landings.Count - 6);
            Bill(landing);
            BillLate(landing, at);
        }

        foreach (var lot in contracts.Where(contract => contract is { IsSigned: true, IsOpen: true }).SelectMany(contract => contract.Lots))
        {
            Serve(lot.LotId, lot.Net);
        }

        _then.AddRange(claims.Select(Credit).OfType<CostPosting>());
        return [.. _first, .. _then];
    }

    private void Keep(Landing landing, bool isLast)
    {
        var arrival = landing.Arrival;
        var (holding, ledger) = (new Holding(arrival.LotId, _quay.Id), new List<Movement>());
        _first.Add(holding);
        ledger.Add(holding.Receive(arrival, Note(arrival.ReceivedOn, $"WR-{landing.Shipment.Ref}", null), cast.Lead.Id, At(arrival.ReceivedOn)));
        ledger.Add(holding.Take(MovementKind.SampleDrawn, 0, Weight.FromKilograms(1m), Days(ledger), Note(arrival.ReceivedOn, null, "Arrival sample"), cast.Lead.Id, At(arrival.ReceivedOn)));
        var purpose = Serve(arrival.LotId, holding.Weighed);
        var weeks = draw.Between(9.0, 16.0) / (purpose == _purposes[0] ? 3 : 1);
        var week = Math.Max(1, (int)(holding.Bags / weeks));

        for (var day = arrival.ReceivedOn.AddDays(10); day < DateOnly.FromDateTime(now.UtcDateTime) && holding.Bags > week; day = day.AddDays(7))
        {
            var weighed = Weight.FromKilograms(Math.Round(holding.Weighed.Kilograms * week / holding.Bags, 1));
            ledger.Add(holding.Take(MovementKind.Release, week, weighed, Days(ledger), Note(day, string.Create(CultureInfo.InvariantCulture, $"R-{day:yyMMdd}"), null, purpose.Id), cast.Lead.Id, At(day)));
        }

        if (isLast && holding.Bags > 6)
        {
            Move(holding, ledger);
            _then.Add(holding.Reserve(Weight.FromKilograms(Math.Floor(holding.Available.Kilograms / 4)), purpose.Name, cast.Buyer.Id, now.AddHours(-3), purpose.Id));
        }

        _then.AddRange(ledger);
    }

    /// <summary>Robusta, Brazil, Honduras and whatever comes by the container go into the base, other naturals lift it, and the rest is filter coffee.</summary>
    private Purpose Serve(Id<Lot> lot, Weight net)
    {
        var coffee = _coffees[lot];
        var isBase = coffee.Origin.IsRobusta || coffee.Origin.Code is "BR" or "HN" || net.Kilograms > 10_000m;
        var purpose = isBase ? _purposes[0] : coffee.Family == ProcessFamily.Natural ? _purposes[1] : _purposes[2];
        if (_serving.Add(lot))
        {
            purpose.Serve(lot);
        }

        return purpose;
    }

    private void Move(Holding holding, List<Movement> ledger)
    {
        var other = new Holding(holding.LotId, _mill.Id);
        _first.Add(other);
        var weighed = Weight.FromKilograms(Math.Round(holding.Weighed.Kilograms * 2 / holding.Bags, 1));
        var today = DateOnly.FromDateTime(now.UtcDateTime);
        var (left, came) = holding.Transfer(other, 2, weighed, Days(ledger), Note(today, $"D-{draw.Between(100, 999)}", null), cast.Lead.Id, now.AddHours(-4));
        ledger.AddRange([left, came]);
    }

    private void Bill(Landing landing)
    {
        var (arrival, on) = (landing.Arrival, landing.Arrival.ReceivedOn);
        if (landing.Contract.Value(arrival.Shipped, null)?.Value is { } coffee)
        {
            Post(new PostedOn(null, null, arrival.LotId), null, coffee, landing.Shipment.ShippedOn!.Value, landing.Contract.Terms.Seller);
        }

        if (landing.Shipment.Lots[0].Id == arrival.ShipmentLotId)
        {
            var tonnes = landing.Shipment.Net.Kilograms / 1000m;
            Post(new PostedOn(null, landing.Shipment.Id, null), CostStage.Freight, Money.Of(Math.Round(tonnes * (decimal)draw.Between(165.0, 215.0), 2), Currency.Usd), on.AddDays(-5), "Sandpiper Lines");
            Post(new PostedOn(null, landing.Shipment.Id, null), CostStage.DestinationTerminal, Money.Of(Math.Round(120m + (tonnes * 9m), 2), Currency.Eur), on, "Scheldt Terminal Desk");
            Post(new PostedOn(null, landing.Shipment.Id, null), CostStage.Haulage, Money.Of(Math.Round(210m + (tonnes * (decimal)draw.Between(20.0, 32.0)), 2), Currency.Eur), on.AddDays(9), "Polder Haulage");
        }
    }

    /// <summary>Every sixth landing had waited in the port: its demurrage and its storage are billed when some of the coffee is gone.</summary>
    private void BillLate(Landing landing, int at)
    {
        if (at % 6 != 2 || landing.Shipment.Lots[0].Id != landing.Arrival.ShipmentLotId)
        {
            return;
        }

        var (on, came) = (new PostedOn(null, landing.Shipment.Id, null), landing.Arrival.ReceivedOn);
        var tonnes = landing.Shipment.Net.Kilograms / 1000m;
        Post(on, CostStage.DestinationTerminal, Money.Of(Math.Round(180m + (tonnes * 6m), 2), Currency.Eur), came.AddDays(45), "Scheldt Terminal Desk", $"DM-{landing.Shipment.Ref}");
        Post(on, CostStage.Storage, Money.Of(Math.Round(tonnes * 9.5m, 2), Currency.Eur), came.AddDays(31), "Scheldt Terminal Desk", $"ST-{landing.Shipment.Ref}", new CoveredDays(came.AddDays(-8), came.AddDays(21)));
    }

    private void Post(PostedOn on, CostStage? stage, Money amount, DateOnly day, string from, string? number = null, CoveredDays? covers = null)
    {
        var today = DateOnly.FromDateTime(now.UtcDateTime);
        day = day < today ? day : today;
        if (_rates.Find(amount.Currency, cast.House.Currency, day) is { } conversion)
        {
            var document = number ?? string.Create(CultureInfo.InvariantCulture, $"{from[0]}{day:yyMM}-{draw.Between(100, 999)}");
            _then.Add(new CostPosting(on, new Invoice(stage, amount, conversion, day, document, from, CostPosting.UsualBasis(stage), covers), cast.House.Currency, cast.Buyer.Id, At(day)));
        }
    }

    private CostPosting? Credit(Claim claim) =>
        claim is { Settled: { } settled, SettledOn: { } on } && _rates.Find(settled.Currency, cast.House.Currency, on) is { } conversion
            ? ClaimPosting.Of(claim, conversion, cast.House.Currency, cast.Buyer.Id, At(on))
            : null;

    private static RunningStock Days(IEnumerable<Movement> ledger) => RunningStock.Of([.. ledger.GroupBy(one => one.HoldingId).First()]);

    private static MovementNote Note(DateOnly on, string? document, string? reason, Id<Purpose>? purpose = null) => new(on, document, reason, purpose);

    private DateTimeOffset At(DateOnly day)
    {
        var at = new DateTimeOffset(day.ToDateTime(new TimeOnly(15, 0)), TimeSpan.Zero);
        return at < now ? at : now.AddHours(-1);
    }
}
