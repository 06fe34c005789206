using GreenLedger.Domain;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.Pricing;

namespace GreenLedger.Data.Choosing;

/// <summary>What the rooms know of all lots, by lot, so that an offer is put together without asking again.</summary>
internal sealed record CandidateFacts(
    IReadOnlyDictionary<Id<Supplier>, string> Suppliers,
    IReadOnlyDictionary<Id<ProcessMethod>, string> Methods,
    IReadOnlyDictionary<Id<Lot>, CupScore[]> Results,
    IReadOnlyDictionary<Id<Lot>, GreenFacts> Grades)
{
    public Candidate CandidateOf(Offer offer, Lot lot, LandedCost cost)
    {
        var green = Grades.GetValueOrDefault(lot.Id);
        return new Candidate
        {
            OfferId = offer.Id,
            LotId = lot.Id,
            Ref = offer.Ref,
            Name = lot.Name,
            Supplier = Suppliers.GetValueOrDefault(offer.SupplierId),
            Origin = lot.CountryCode,
            ProcessMethodId = lot.ProcessMethodId,
            Process = lot.ProcessMethodId is { } method ? Methods.GetValueOrDefault(method) : lot.ProcessAsWritten,
            Quantity = offer.Quantity,
            CropYear = lot.CropYear,
            Certificates = lot.Certificates,
            Results = Results.TryGetValue(lot.Id, out var found) ? found : [],
            StatedScore = offer.StatedScore,
            Moisture = green?.Moisture,
            WaterActivity = green?.WaterActivity,
            Category1 = green?.Category1,
            Category2 = green?.Category2,
            Quakers = green?.Quakers,
            Retained = green?.Retained,
            CostPerKilogram = cost.PerKilogram,
            CostProblem = cost.Problems.Count > 0 ? cost.Problems[0].Message : null,
        };
    }
}

/// <summary>
/// What gradings found on a lot's green coffee: of each figure the newest that was measured, so that a later grading of
/// the moisture alone does not hide the defects counted before it.
/// </summary>
internal sealed record GreenFacts(
    Percent? Moisture, WaterActivity? WaterActivity, FullDefects? Category1, FullDefects? Category2, int? Quakers, Percent? Retained)
{
    public static GreenFacts None { get; } = new(null, null, null, null, null, null);

    /// <summary>With what a later grading found.</summary>
    public GreenFacts And(GreenGrade grade, int? screen) => new(
        grade.Moisture ?? Moisture,
        grade.WaterActivity ?? WaterActivity,
        grade.Category1 ?? Category1,
        grade.Category2 ?? Category2,
        grade.Quakers ?? Quakers,
        (screen is { } size ? grade.RetainedFrom(size) : null) ?? Retained);
}
