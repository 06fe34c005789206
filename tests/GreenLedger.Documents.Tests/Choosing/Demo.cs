using GreenLedger.Documents.Choosing;
using GreenLedger.Domain;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.Pricing;
using GreenLedger.Examples;

namespace GreenLedger.Documents.Tests.Choosing;

/// <summary>Shortlists that every document test knows: the handbook's running example and its Example D.</summary>
internal static class Demo
{
    public static readonly DateOnly Today = new(2026, 11, 25);
    public static readonly DateTimeOffset Now = new(2026, 11, 25, 9, 30, 0, TimeSpan.Zero);
    public static readonly Id<ProcessMethod> Washed = Id<ProcessMethod>.New();
    public static readonly Id<ProcessMethod> Natural = Id<ProcessMethod>.New();

    /// <summary>Weights 0.6 and 0.4, anchors at the least and the best: handbook quality.md section 9, value 27.</summary>
    public static RuleTerms Rules { get; } = new()
    {
        FormId = CuppingForm.HundredPointId,
        Currency = Currency.Usd,
        Anchors = new Anchors { LowScore = Score.Of(84m), HighScore = Score.Of(87.5m), LowCost = 6.90m, HighCost = 11.50m, LowCostPerPoint = 0m, HighCostPerPoint = 2m },
        Processes = [new ProcessChoice(Washed, "washed", true, 0.5m), new ProcessChoice(Natural, "natural", true, 1m)],
    };

    /// <summary>Score and cost in USD/kg by handbook quality.md section 5; spot coffee, so that the price is the landed cost.</summary>
    public static IReadOnlyList<Offered> RunningExample { get; } =
    [
        Spot("A", 86.50m, 8.80m), Spot("B", 85.25m, 7.60m), Spot("C", 84.00m, 6.90m), Spot("D", 84.00m, 7.20m), Spot("E", 87.50m, 11.50m),
    ];

    /// <summary>One lot with everything that a document prints about it.</summary>
    public sealed record Offered(Candidate Candidate, LandedCost Cost);

    public static Offered Spot(string @ref, decimal score, decimal perKilogram, string name = "", bool isNatural = false, Currency? currency = null) =>
        Lot(@ref, score, new Parcel(PricePerWeight.Of(perKilogram, currency ?? Currency.Usd, PriceUnit.Kilogram), null, Incoterm.ExWarehouse, null, "CO", Weight.FromKilograms(2100m), 30), SpotCosts(currency ?? Currency.Usd), name, isNatural);

    /// <summary>Example D as a differential of +35 on 286.65 ¢/lb: the same 321.65 ¢/lb.</summary>
    public static Offered Container(string @ref, decimal score) =>
        Lot(@ref, score, ExampleD.Parcel with { Price = null, Differential = Differential.Of(ExampleD.March, 35m) }, RouteCosts());

    public static ShortlistReport Report(IReadOnlyList<Offered> lots, RuleTerms? rules = null)
    {
        var terms = rules ?? Rules;
        var shortlist = Shortlist.Rank([.. lots.Select(lot => lot.Candidate)], terms, terms.Currency);
        var none = new Dictionary<Id<SampleResult>, SharedErrors>();
        shortlist.DrawChances(shortlist.Contenders(none), none);
        shortlist.ComparePrices(PriceModel.Of(Past(), 3));
        return new ShortlistReport(
            "Harbour & Hill Roasters", "House rules", 2, false, "100-point form", null, "Ana Ruiz", Now, ClockZone.Utc, Today, shortlist, lots.ToDictionary(lot => lot.Candidate.OfferId, lot => lot.Cost));
    }

    private static Offered Lot(string @ref, decimal score, Parcel parcel, LandedCosts costs, string name = "", bool isNatural = false)
    {
        var cost = costs.Of(parcel);
        var candidate = new Candidate
        {
            OfferId = Id<Offer>.New(),
            LotId = Id<Lot>.New(),
            Ref = @ref,
            Name = name.Length > 0 ? name : "Lot " + @ref,
            Supplier = "Andes & Sons Exports",
            Origin = parcel.OriginCountry,
            ProcessMethodId = isNatural ? Natural : Washed,
            Process = isNatural ? "natural" : "washed",
            Quantity = parcel.Quantity,
            Results = [Result(score)],
            CostPerKilogram = cost.PerKilogram,
            CostProblem = cost.Problems.Count > 0 ? cost.Problems[0].Message : null,
        };
        return new Offered(candidate, cost);
    }

    private static CupScore Result(decimal score) => new(
        Id<SampleResult>.New(), Id<CuppingSession>.New(), 1, CuppingForm.HundredPointId, new DateOnly(2026, 11, 20), Score.Of(score), 0.4, 0.4, null, Score.Of(score - 0.784m), Score.Of(score + 0.784m), HoldsFor.AnyCupper);

    /// <summary>Offers of the past on the line cost = 0.5 × (score − 70), by two processes from one origin.</summary>
    private static IEnumerable<PastOffer> Past() =>
        Enumerable.Range(0, 12).Select(i => new PastOffer(82 + i * 0.5, i % 2 == 0 ? "washed" : "natural", "CO", 0.5 * (12 + i * 0.5)));

    private static LandedCosts SpotCosts(Currency currency)
    {
        var route = new Route("Spot", "any", "any", "Harbour warehouse", null);
        route.Share(SharedOver.Quantity, Weight.FromKilograms(19_200m), 1, Percent.Of(0m), Percent.Of(110m));
        route.Answer(CostStages.All.Select(stage => RouteLeg.None(stage)));
        return new LandedCosts(currency, Today, [route], new ExchangeRates([]), new FuturesQuotes([]), new HashSet<Currency>());
    }

    private static LandedCosts RouteCosts()
    {
        var yesterday = Today.AddDays(-1);
        return new LandedCosts(Currency.Eur, Today, [ExampleD.Route()], new ExchangeRates([ExampleD.Rate(yesterday)]), new FuturesQuotes([ExampleD.Quote(yesterday)]), new HashSet<Currency>());
    }
}
