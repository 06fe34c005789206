using GreenLedger.Data;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.Pricing;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Examples;

/// <summary>
/// The running example of handbook quality.md section 5 as it stands in a ledger: five spot offers whose price is their
/// landed cost (A 86.50 8.80; B 85.25 7.60; C 84.00 6.90; D 84.00 7.20; E 87.50 11.50), each cupped by one person, and a
/// sixth, F, that only its seller scored.
/// </summary>
internal sealed class OpenMarket
{
    private static readonly (string Ref, decimal Score, decimal Cost)[] Example =
        [("A", 86.50m, 8.80m), ("B", 85.25m, 7.60m), ("C", 84.00m, 6.90m), ("D", 84.00m, 7.20m), ("E", 87.50m, 11.50m)];

    private readonly DateTimeOffset _now;
    private readonly Currency _currency;
    private readonly Supplier _supplier = new("Ribeirão Trading", SupplierKind.Importer);
    private readonly Dictionary<string, (Lot Lot, Offer Offer)> _offers = [];

    private OpenMarket(Currency currency, DateTimeOffset now)
    {
        (_currency, _now) = (currency, now);
        Rules = new BuyingRules("House", Terms(), null, now);
    }

    public BuyingRules Rules { get; }

    public DateOnly Today => DateOnly.FromDateTime(_now.UtcDateTime);

    public Lot LotOf(string @ref) => _offers[@ref].Lot;

    public Offer OfferOf(string @ref) => _offers[@ref].Offer;

    /// <summary>Stores the example in a ledger that has a house.</summary>
    public static async Task<OpenMarket> StoreAsync(LedgerContext db, Currency currency, DateTimeOffset now, CancellationToken cancellationToken)
    {
        var market = new OpenMarket(currency, now);
        db.AddRange(market._supplier, market.Rules, Straight());
        var method = await db.ProcessMethods.FirstAsync(method => method.Name == "washed", cancellationToken);
        foreach (var (name, score, cost) in Example)
        {
            await market.CupAsync(db, market.Offer(db, name, cost, method, null), score, cancellationToken);
        }

        market.Offer(db, "F", 5.00m, method, 86m);
        await db.SaveChangesAsync(cancellationToken);
        return market;
    }

    /// <summary>Weights and anchors of the handbook's check value 27.</summary>
    private RuleTerms Terms() => new()
    {
        FormId = CuppingForm.HundredPointId,
        Currency = _currency,
        Anchors = new Anchors { LowScore = Score.Of(84m), HighScore = Score.Of(87.5m), LowCost = 6.90m, HighCost = 11.50m },
    };

    /// <summary>From the seller's door to ours without any cost.</summary>
    private static Route Straight()
    {
        var route = new Route("Round the corner", "Antwerp", "Antwerp", "Quay warehouse", null);
        route.Answer(CostStages.All.Select(stage => RouteLeg.None(stage)));
        return route;
    }

    private Lot Offer(LedgerContext db, string name, decimal cost, ProcessMethod method, decimal? stated)
    {
        var lot = new Lot(name, "Lot " + name, _supplier.Id);
        lot.Grow("BR", null, null, null, null, null);
        lot.Process(method.Id, method.Name);
        var packing = new Packing(35, Weight.FromKilograms(60m), null);
        var asking = Asking.Outright(PricePerWeight.Of(cost, _currency, PriceUnit.Kilogram));
        var offer = new Offer(_supplier.Id, lot, packing, asking, new Terms(Incoterm.ExWarehouse, "Antwerp", null), OfferState.OnOffer, Today);
        offer.StateScore(stated is { } points ? Score.Of(points) : null);
        _offers[name] = (lot, offer);
        db.AddRange(lot, offer);
        return lot;
    }

    /// <summary>Six attributes at 8.00 and the three of cups in full make 78; the seventh mark makes up the score.</summary>
    private async Task CupAsync(LedgerContext db, Lot lot, decimal score, CancellationToken cancellationToken)
    {
        var form = await db.CuppingForms.FirstAsync(form => form.Id == CuppingForm.HundredPointId, cancellationToken);
        var person = await db.People.FirstAsync(cancellationToken);
        var sample = new Sample(lot.Id, SampleKind.Offer, "QXM" + lot.Ref, Today, Weight.FromGrams(300m));
        var session = CuppingSession.OfPast("Table of " + lot.Ref, Today, form);
        session.Pour(sample, new Random(1));
        session.TakeIn(sample, new PastResult("Ines Duarte", [8m, 8m, 8m, 8m, 8m, 8m, 10m, 10m, 10m, score - 78m], [0m, 0m], null, [], null), _now);
        session.Close(person.Id, _now, new ExpectedErrors(1, 0.5));
        db.AddRange(sample, session);
    }
}
