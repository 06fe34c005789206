using System.ComponentModel.DataAnnotations;
using GreenLedger.Domain;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;

namespace GreenLedger.Web.Contracts;

/// <summary>How a contract is priced, as the form asks.</summary>
public enum Pricing
{
    Outright = 0,
    ToBeFixed = 1,
}

/// <summary>The terms of a contract as they are typed.</summary>
public sealed class TermsForm
{
    public int Version { get; set; }

    [Display(Name = "Number of the contract")]
    public string? Ref { get; set; }

    [Display(Name = "Reason for the amendment")]
    public string? Reason { get; set; }

    public IList<LotForm> Lots { get; set; } = [];

    [Display(Name = "Quality")]
    public string? Description { get; set; }

    [Display(Name = "Least score, points")]
    public decimal? LeastScore { get; set; }

    public LimitsForm Limits { get; set; } = new();

    [Display(Name = "The price is")]
    public Pricing Pricing { get; set; }

    [Display(Name = "Price")]
    public decimal? Outright { get; set; }

    public string? Currency { get; set; } = "USD";

    [Display(Name = "For one")]
    public PriceUnit Unit { get; set; } = PriceUnit.Pound;

    [Display(Name = "Futures month")]
    public string? Month { get; set; }

    public decimal? Differential { get; set; }

    [Display(Name = "Market lots to fix")]
    public int? MarketLots { get; set; }

    [Display(Name = "Fixed at the call of")]
    public Caller? Call { get; set; }

    [Display(Name = "To be fixed by")]
    public DateOnly? FixBy { get; set; }

    [Display(Name = "Paid provisionally, %")]
    public decimal? ProvisionalSharePercent { get; set; }

    [Display(Name = "Delivery rule")]
    public Incoterm Incoterm { get; set; }

    public string? Place { get; set; }

    [Display(Name = "Shipment from")]
    [Required(ErrorMessage = "State the first day of the shipment period.")]
    public DateOnly? ShipFrom { get; set; }

    [Display(Name = "Shipment until")]
    [Required(ErrorMessage = "State the last day of the shipment period.")]
    public DateOnly? ShipUntil { get; set; }

    public string? Payment { get; set; }

    [Display(Name = "Weights that count")]
    public WeightBasis Basis { get; set; }

    [Display(Name = "Franchise, %")]
    public decimal FranchisePercent { get; set; }

    [Display(Name = "Tolerance of the quantity, %")]
    public decimal TolerancePercent { get; set; }

    [Display(Name = "Pre-shipment sample")]
    public ApprovalRule ApprovalRule { get; set; }

    [Display(Name = "Samples of a lot at most")]
    public int? MostSamples { get; set; }

    [Display(Name = "Approve or refuse by")]
    public DateOnly? ApproveBy { get; set; }

    [Display(Name = "Certificates")]
    public string? Certificates { get; set; }

    [Display(Name = "Standard form and edition")]
    public string? FormName { get; set; }

    [Display(Name = "Arbitration in")]
    public string? Arbitration { get; set; }

    [Display(Name = "Weighed within, days")]
    public int? WeighWithinDays { get; set; }

    [Display(Name = "Days for weighing run from")]
    public WeighingStart WeighFrom { get; set; }

    [Display(Name = "Quality claim within, days")]
    public int? QualityClaimDays { get; set; }

    [Display(Name = "Other claim within, days")]
    public int? OtherClaimDays { get; set; }

    [Display(Name = "Days of a quality claim run from")]
    public bool QualityFromClearance { get; set; }

    public string? Note { get; set; }

    public static TermsForm Of(ContractTerms terms) => new()
    {
        Lots = [.. terms.Lots.Select(lot => LotForm.Of(lot, isTaken: true))],
        Description = terms.Quality.Description,
        LeastScore = terms.Quality.LeastScore?.Points,
        Limits = LimitsForm.Of(terms.Quality.Limits ?? new LimitTerms()),
        Pricing = terms.Price is { Outright: null, Month: not null } ? Pricing.ToBeFixed : Pricing.Outright,
        Outright = terms.Price.Outright?.Amount,
        Currency = terms.Price.Outright?.Currency.Code ?? "USD",
        Unit = terms.Price.Outright?.Unit ?? PriceUnit.Pound,
        Month = terms.Price.Month?.ToString(),
        Differential = terms.Price.Differential,
        MarketLots = terms.Price.MarketLots,
        Call = terms.Price.Call,
        FixBy = terms.Price.FixBy,
        ProvisionalSharePercent = terms.Price.ProvisionalShare?.Points,
        Incoterm = terms.Delivery.Incoterm,
        Place = terms.Delivery.Place,
        ShipFrom = terms.Delivery.ShipFrom,
        ShipUntil = terms.Delivery.ShipUntil,
        Payment = terms.Payment,
        Basis = terms.Weights.Basis,
        FranchisePercent = terms.Weights.Franchise.Points,
        TolerancePercent = terms.Weights.Tolerance.Points,
        ApprovalRule = terms.Approval.Rule,
        MostSamples = terms.Approval.MostSamples,
        ApproveBy = terms.Approval.By,
        Certificates = string.Join(", ", terms.Certificates),
        FormName = terms.Form.Name,
        Arbitration = terms.Form.Arbitration,
        WeighWithinDays = terms.Form.WeighWithinDays,
        QualityClaimDays = terms.Form.QualityClaimDays,
        OtherClaimDays = terms.Form.OtherClaimDays,
        QualityFromClearance = terms.Form.QualityFromClearance,
        WeighFrom = terms.Form.WeighFrom,
        Note = terms.Note,
    };

    /// <summary>The terms as typed, between buyer and seller as they are called.</summary>
    /// <param name="buyer">The house.</param>
    /// <param name="seller">The supplier.</param>
    /// <param name="known">The lots that may stand on this contract, with their names.</param>
    /// <param name="standards">The defect tables, those of the house among them.</param>
    /// <param name="today">The day that a one-digit year of a futures month is read on.</param>
    /// <exception cref="RuleBrokenException">A part of the price cannot be read.</exception>
    public ContractTerms Terms(string buyer, string seller, IReadOnlyList<ContractedLot> known, GradingStandards standards, DateOnly today) => new(
        buyer,
        seller,
        [.. Lots.Where(lot => lot.IsTaken).Select(lot => lot.Line(known)).OfType<ContractedLot>()],
        new QualityTerms(Description ?? "", LeastScore is { } points ? Score.Of(points) : null, Limits.Terms().Naming(standards)),
        Price(today),
        new DeliveryTerms(Incoterm, Place ?? "", ShipFrom!.Value, ShipUntil!.Value),
        new WeightTerms(Basis, Percent.Of(FranchisePercent), Percent.Of(TolerancePercent)),
        new ApprovalTerms(ApprovalRule, MostSamples, ApproveBy),
        Payment ?? "",
        (Certificates ?? "").Split([',', ';'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries),
        new FormTerms(FormName ?? "", Arbitration ?? "", WeighWithinDays, QualityClaimDays, OtherClaimDays, QualityFromClearance, WeighFrom),
        Note);

    private PriceTerms Price(DateOnly today)
    {
        if (Pricing == Pricing.Outright)
        {
            Rule.Require(Outright is not null, "Type the price.", nameof(Outright));
            return PriceTerms.AtPrice(PricePerWeight.Of(Outright.Value, Domain.Measures.Currency.Of(Currency), Unit));
        }

        Rule.Require(FuturesMonth.TryParse(Month, today, out var month), $"'{Month}' is not a futures month such as KCH27 or RCK27.", nameof(Month));
        Rule.Require(Differential is not null, "Type the differential to the futures month; 0 where there is none.", nameof(Differential));
        return new PriceTerms(null, month, Differential, MarketLots, Call, FixBy, ProvisionalSharePercent is { } share ? Percent.Of(share) : null);
    }

    /// <summary>A lot that is, or could be, on the contract.</summary>
    public sealed class LotForm
    {
        public Guid LotId { get; set; }

        public bool IsTaken { get; set; }

        [Display(Name = "Bags")]
        public int? Bags { get; set; }

        [Display(Name = "Net weight of a bag, kg")]
        public decimal? BagWeightKg { get; set; }

        public static LotForm Of(ContractedLot lot, bool isTaken) => new()
        {
            LotId = lot.LotId.Value,
            IsTaken = isTaken,
            Bags = lot.Bags == 0 ? null : lot.Bags,
            BagWeightKg = lot.BagWeight == Weight.Zero ? null : lot.BagWeight.Kilograms / 1.000000000m,
        };

        /// <summary>Null for a lot that may not stand on this contract.</summary>
        public ContractedLot? Line(IReadOnlyList<ContractedLot> known) => known.FirstOrDefault(lot => lot.LotId.Value == LotId) is { } lot
            ? lot with { Bags = Bags ?? 0, BagWeight = Weight.FromKilograms(BagWeightKg ?? 0m) }
            : null;
    }
}
