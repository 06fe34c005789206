using GreenLedger.Domain;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;

namespace GreenLedger.Web.Api;

/// <summary>Bags of a lot on a contract.</summary>
internal sealed record ContractLotRequest(Guid LotId, int Bags, decimal BagWeightKg);

/// <summary>Figures that the coffee is to keep; what is left out is not agreed, and all given replace all before.</summary>
/// <param name="CupTolerance">How far below the approved sample the arrival may cup, in points.</param>
/// <param name="Category1">Full defects at most.</param>
/// <param name="Category2">Full defects at most.</param>
/// <param name="CountedBy">The code of the defect table, published or of the house, that full defects are counted by.</param>
internal sealed record AgreedLimitsRequest(
    decimal? CupTolerance = null,
    decimal? LowestMoisturePercent = null,
    decimal? HighestMoisturePercent = null,
    decimal? WaterActivityBelow = null,
    decimal? Category1 = null,
    decimal? Category2 = null,
    int? Screen = null,
    decimal? LeastOnScreenPercent = null,
    string? CountedBy = null)
{
    public LimitTerms Terms() => new(
        CupTolerance is { } points ? Score.Of(points) : null,
        LowestMoisturePercent is { } low ? Percent.Of(low) : null,
        HighestMoisturePercent is { } high ? Percent.Of(high) : null,
        WaterActivityBelow is { } activity ? WaterActivity.Of(activity) : null,
        Category1,
        Category2,
        Screen,
        LeastOnScreenPercent is { } share ? Percent.Of(share) : null,
        CountedBy);
}

/// <summary>
/// Terms of a contract; what is left out stays as the decision, the offer and the standard form (for a draft) or the newest
/// version (for an amendment) have it. A price given here replaces the way of pricing: <c>outright</c> with currency and unit, or
/// <c>month</c> with its differential.
/// </summary>
internal sealed record TermsRequest(
    IReadOnlyList<ContractLotRequest>? Lots = null,
    string? Quality = null,
    decimal? LeastScore = null,
    AgreedLimitsRequest? Limits = null,
    decimal? Outright = null,
    string? Currency = null,
    PriceUnit? Unit = null,
    string? Month = null,
    decimal? Differential = null,
    int? MarketLots = null,
    Caller? Call = null,
    DateOnly? FixBy = null,
    decimal? ProvisionalSharePercent = null,
    Incoterm? Incoterm = null,
    string? Place = null,
    DateOnly? ShipFrom = null,
    DateOnly? ShipUntil = null,
    string? Payment = null,
    WeightBasis? Weights = null,
    decimal? FranchisePercent = null,
    decimal? TolerancePercent = null,
    ApprovalRule? Approval = null,
    int? MostSamples = null,
    DateOnly? ApproveBy = null,
    IReadOnlyList<string>? Certificates = null,
    string? StandardForm = null,
    string? Arbitration = null,
    string? Note = null,
    int? WeighWithinDays = null,
    WeighingStart? WeighFrom = null,
    int? QualityClaimDays = null,
    bool? QualityFromClearance = null,
    int? OtherClaimDays = null)
{
    public ContractTerms Over(ContractTerms terms, IReadOnlyList<ContractedLot> known, GradingStandards standards, DateOnly today) => terms with
    {
        Lots = Lots is null ? terms.Lots : [.. Lots.Select(lot => Line(lot, known))],
        Quality = new QualityTerms(Quality ?? terms.Quality.Description, LeastScore is { } points ? Score.Of(points) : terms.Quality.LeastScore, Limits?.Terms().Naming(standards) ?? terms.Quality.Limits),
        Price = Price(terms.Price, today),
        Delivery = new DeliveryTerms(Incoterm ?? terms.Delivery.Incoterm, Place ?? terms.Delivery.Place, ShipFrom ?? terms.Delivery.ShipFrom, ShipUntil ?? terms.Delivery.ShipUntil),
        Weights = new WeightTerms(
            Weights ?? terms.Weights.Basis,
            FranchisePercent is { } franchise ? Percent.Of(franchise) : terms.Weights.Franchise,
            TolerancePercent is { } tolerance ? Percent.Of(tolerance) : terms.Weights.Tolerance),
        Approval = new ApprovalTerms(Approval ?? terms.Approval.Rule, MostSamples ?? terms.Approval.MostSamples, ApproveBy ?? terms.Approval.By),
        Payment = Payment ?? terms.Payment,
        Certificates = Certificates ?? terms.Certificates,
        Form = Form(terms.Form),
        Note = Note ?? terms.Note,
    };

    private FormTerms Form(FormTerms before) => new(
        StandardForm ?? before.Name,
        Arbitration ?? before.Arbitration,
        WeighWithinDays ?? before.WeighWithinDays,
        QualityClaimDays ?? before.QualityClaimDays,
        OtherClaimDays ?? before.OtherClaimDays,
        QualityFromClearance ?? before.QualityFromClearance,
        WeighFrom ?? before.WeighFrom);

    private static ContractedLot Line(ContractLotRequest lot, IReadOnlyList<ContractedLot> known)
    {
        var line = known.FirstOrDefault(one => one.LotId.Value == lot.LotId);
        Rule.Require(line is not null, $"Lot {lot.LotId} was not bought of this supplier, or stands on another contract.", nameof(Lots));
        return line with { Bags = lot.Bags, BagWeight = Weight.FromKilograms(lot.BagWeightKg) };
    }

    private PriceTerms Price(PriceTerms before, DateOnly today)
    {
        if (Outright is { } amount)
        {
            return PriceTerms.AtPrice(PricePerWeight.Of(amount, Domain.Measures.Currency.Of(Currency), Unit ?? PriceUnit.Kilogram));
        }

        if (Month is null && (Differential ?? MarketLots) is null && Call is null && FixBy is null && ProvisionalSharePercent is null)
        {
            return before;
        }

        return new PriceTerms(
            null,
            Month is null ? before.Month : PricingRequests.Month(Month, today),
            Differential ?? before.Differential,
            MarketLots ?? before.MarketLots,
            Call ?? before.Call ?? Caller.Buyer,
            FixBy ?? before.FixBy,
            ProvisionalSharePercent is { } share ? Percent.Of(share) : before.ProvisionalShare);
    }
}

/// <summary>Drafts a contract from a decision to buy.</summary>
/// <param name="Ref">The house's number; the next free one when left out.</param>
internal sealed record DraftRequest(Guid DecisionId, string? Ref = null, TermsRequest? Terms = null);

internal sealed record AmendRequest(string Reason, TermsRequest? Terms = null);

internal sealed record SignRequest(DateOnly SignedOn, string? SignedForSeller = null);

/// <param name="Level">US cents/lb or USD/t.</param>
internal sealed record FixRequest(DateOnly On, decimal Level, int? Lots = null, decimal? WeightKg = null, string? Method = null);

/// <param name="Spread">The later month less the earlier one, US cents/lb or USD/t.</param>
internal sealed record RollRequest(DateOnly On, string To, decimal Spread, decimal Fee = 0m);

internal sealed record ReasonRequest(string Reason);

/// <summary>Approves or refuses a pre-shipment sample.</summary>
/// <param name="Remarks">Asked for when it is refused, or approved with remarks.</param>
internal sealed record ApprovalRequest(Guid SampleId, ApprovalVerdict Verdict, DateOnly On, string? Remarks = null);

/// <summary>The goods went on board or arrived, or the contract was closed or cancelled.</summary>
internal sealed record GoodsRequest(GoodsMove Move, DateOnly On, string? Reason = null);

/// <summary>A fixing of a calculation: lots, or a weight.</summary>
/// <param name="Month">The month of the contract when left out.</param>
/// <param name="Differential">The differential of the contract when left out.</param>
internal sealed record CalculatedFixing(decimal Level, int? Lots = null, decimal? WeightKg = null, string? Month = null, decimal? Differential = null);

/// <summary>What is to be reckoned: everything comes with the request, nothing is stored.</summary>
/// <param name="Month">What is open stands against it: KCK27.</param>
/// <param name="Differential">Of what is open, US cents/lb or USD/t.</param>
/// <param name="NetWeightKg">The weight that is invoiced.</param>
/// <param name="MarketLots">Lots to be fixed; the nearest whole number when left out, or the weight itself below one lot.</param>
/// <param name="Settlement">What the open part is taken at.</param>
/// <param name="ProvisionalSharePercent">What is paid of a provisional value.</param>
internal sealed record FixingRequest(
    string Month,
    decimal Differential,
    decimal NetWeightKg,
    int? MarketLots = null,
    IReadOnlyList<CalculatedFixing>? Fixings = null,
    decimal? Settlement = null,
    decimal? ProvisionalSharePercent = null,
    DateOnly? On = null);
