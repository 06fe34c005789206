using GreenLedger.Domain;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Pricing;
using GreenLedger.SeedDemo.Offers;

namespace GreenLedger.SeedDemo.Choosing;

/// <summary>
/// The shortlist of an earlier day: the offers as the last list before it named them, the sessions closed and the
/// grades taken by then, at the rates and quotes of that day.
/// </summary>
internal sealed class AsItStood
{
    /// <summary>A rate or quote older than this has been followed by a newer one.</summary>
    private const int DaysOfFigures = 12;

    private readonly IReadOnlyCollection<Shelved> _coffees;
    private readonly ILookup<Id<Lot>, SampleResult> _results;
    private readonly ILookup<Id<Lot>, GreenGrade> _grades;
    private readonly House _house;
    private readonly IReadOnlyList<Route> _routes;
    private readonly IReadOnlyList<ExchangeRate> _rates;
    private readonly IReadOnlyList<FuturesQuote> _quotes;

    public AsItStood(
        House house, IReadOnlyCollection<Shelved> coffees, IEnumerable<CuppingSession> sessions, IEnumerable<GreenGrade> grades,
        IReadOnlyList<Route> routes, IReadOnlyList<ExchangeRate> rates, IReadOnlyList<FuturesQuote> quotes)
    {
        (_house, _coffees, _routes, _rates, _quotes) = (house, coffees, routes, rates, quotes);
        _results = sessions.Where(session => session.IsClosed).SelectMany(session => session.Result!.Samples).ToLookup(result => result.LotId);
        _grades = grades.ToLookup(grade => grade.LotId);
    }

    /// <summary>With chances drawn and prices compared, as the page would have shown it on the evening of the day.</summary>
    public Shortlist On(DateOnly day, RuleTerms terms)
    {
        var costs = new LandedCosts(
            _house.Currency, day, _routes,
            new ExchangeRates(_rates.Where(rate => IsOf(rate.On, day))),
            new FuturesQuotes(_quotes.Where(quote => IsOf(quote.On, day))),
            _house.LongYearCurrencies);
        var known = _coffees.Where(coffee => coffee.Since <= day).Select(coffee => (coffee, Last: Last(coffee, day))).ToList();
        var year = known.Where(pair => pair.Last.On >= day.AddYears(-1) || pair.Last.State == OfferState.OnOffer)
            .Select(pair => (Candidate: Candidate(pair.coffee, pair.Last, day, costs), IsOpen: pair.Last.State == OfferState.OnOffer)).ToList();
        var shortlist = Shortlist.Rank([.. year.Where(pair => pair.IsOpen).Select(pair => pair.Candidate)], terms, _house.Currency);
        var errors = _results.SelectMany(lot => lot).ToDictionary(result => result.Id, SharedErrors.Of);
        shortlist.DrawChances(shortlist.Contenders(errors), errors);
        shortlist.ComparePrices(PriceModel.Of(year.Select(pair => pair.Candidate).Select(candidate => Past(candidate, terms)).OfType<PastOffer>(), terms.LeastOffersPerGroup));
        return shortlist;
    }

    private static bool IsOf(DateOnly on, DateOnly day) => on <= day && on >= day.AddDays(-DaysOfFigures);

    private static OfferPrice Last(Shelved coffee, DateOnly day) => coffee.Offer.Prices.Last(price => price.On <= day);

    private static PastOffer? Past(Candidate candidate, RuleTerms terms) =>
        candidate.CostPerKilogram is { } cost && LotScore.Of(candidate, terms) is { Origin: ScoreOrigin.Cupped } score
            ? new PastOffer((double)score.Score.Points, candidate.Process, candidate.Origin, (double)cost)
            : null;

    private Candidate Candidate(Shelved coffee, OfferPrice asked, DateOnly day, LandedCosts costs)
    {
        var (lot, offer) = (coffee.Lot, coffee.Offer);
        var bags = offer.BagWeight is { } bag ? (int)(asked.Quantity.Micrograms / bag.Micrograms) : offer.Bags;
        var cost = costs.Of(new Parcel(asked.Price, asked.Differential, offer.Incoterm, offer.Place, lot.CountryCode, asked.Quantity, bags));
        var grade = _grades[lot.Id].Where(found => found.GradedOn <= day).MaxBy(found => found.GradedOn);
        return new Candidate
        {
            OfferId = offer.Id,
            LotId = lot.Id,
            Ref = offer.Ref,
            Name = lot.Name,
            Supplier = coffee.Coffee.Seller.Name,
            Origin = lot.CountryCode,
            ProcessMethodId = lot.ProcessMethodId,
            Process = coffee.Coffee.Process,
            Quantity = asked.Quantity,
            CropYear = lot.CropYear,
            Certificates = lot.Certificates,
            Results = [.. _results[lot.Id].Where(result => result.HeldOn <= day).Select(Score)],
            StatedScore = offer.StatedScore,
            Moisture = grade?.Moisture ?? lot.StatedMoisture,
            WaterActivity = grade?.WaterActivity,
            Category1 = grade?.Category1,
            Category2 = grade?.Category2,
            Quakers = grade?.Quakers,
            CostPerKilogram = cost.PerKilogram,
            CostProblem = cost.Problems.Count > 0 ? cost.Problems[0].Message : null,
        };
    }

    private static CupScore Score(SampleResult result) => new(
        result.Id, result.SessionId, result.Part, result.FormId, result.HeldOn, result.Fitted, (double)result.StandardError.Points,
        (double)result.AnyCupperError.Points, result.DegreesOfFreedom, result.Low, result.High, result.HoldsFor);
}
