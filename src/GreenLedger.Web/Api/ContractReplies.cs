using GreenLedger.Data.Contracts;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;

namespace GreenLedger.Web.Api;

internal sealed record ContractLotReply(Guid LotId, string Ref, string Name, string? CropYear, int Bags, decimal BagWeightKg, decimal NetWeightKg)
{
    public static ContractLotReply Of(ContractedLot lot) =>
        new(lot.LotId.Value, lot.Ref, lot.Name, lot.CropYear, lot.Bags, lot.BagWeight.Kilograms, lot.Net().Kilograms);
}

internal sealed record TermsReply(
    string Buyer,
    string Seller,
    IReadOnlyList<ContractLotReply> Lots,
    string Quality,
    decimal? LeastScore,
    IReadOnlyList<string> AgreedLimits,
    string? OutrightPrice,
    string? Month,
    decimal? Differential,
    int? MarketLots,
    Caller? Call,
    DateOnly? FixBy,
    decimal? ProvisionalSharePercent,
    Incoterm Incoterm,
    string Place,
    DateOnly ShipFrom,
    DateOnly ShipUntil,
    string Payment,
    WeightBasis Weights,
    decimal FranchisePercent,
    decimal TolerancePercent,
    ApprovalRule Approval,
    int? MostSamples,
    DateOnly? ApproveBy,
    IReadOnlyList<string> Certificates,
    string StandardForm,
    string Arbitration,
    int? WeighWithinDays,
    int? QualityClaimDays,
    int? OtherClaimDays,
    bool QualityFromClearance,
    WeighingStart WeighFrom,
    string? Note)
{
    public static TermsReply Of(ContractTerms terms) => new(
        terms.Buyer,
        terms.Seller,
        [.. terms.Lots.Select(ContractLotReply.Of)],
        terms.Quality.Description,
        terms.Quality.LeastScore?.Points,
        [.. terms.Quality.Limits?.Words() ?? []],
        terms.Price.Outright?.ToString(),
        terms.Price.Month?.ToString(),
        terms.Price.Differential,
        terms.Price.MarketLots,
        terms.Price.Call,
        terms.Price.FixBy,
        terms.Price.ProvisionalShare?.Points,
        terms.Delivery.Incoterm,
        terms.Delivery.Place,
        terms.Delivery.ShipFrom,
        terms.Delivery.ShipUntil,
        terms.Payment,
        terms.Weights.Basis,
        terms.Weights.Franchise.Points,
        terms.Weights.Tolerance.Points,
        terms.Approval.Rule,
        terms.Approval.MostSamples,
        terms.Approval.By,
        terms.Certificates,
        terms.Form.Name,
        terms.Form.Arbitration,
        terms.Form.WeighWithinDays,
        terms.Form.QualityClaimDays,
        terms.Form.OtherClaimDays,
        terms.Form.QualityFromClearance,
        terms.Form.WeighFrom,
        terms.Note);
}

internal sealed record VersionReply(int Number, bool IsInForce, DateOnly? SignedOn, string? SignedForSeller, string? Reason, DateTimeOffset WrittenAt, TermsReply Terms);

internal sealed record FixingReply(
    int Number, DateOnly On, string Month, int? Lots, decimal WeightKg, decimal Level, decimal Differential, string? Method, bool Counts, string? TakenBackBecause)
{
    public static FixingReply Of(PriceFixing fixing) => new(
        fixing.Number, fixing.On, fixing.Month.ToString(), fixing.Lots, fixing.Weight.Kilograms, fixing.Level, fixing.Differential, fixing.Method, fixing.Counts, fixing.TakenBackBecause);
}

internal sealed record RollReply(int Number, DateOnly On, string From, string To, decimal WeightKg, decimal Spread, decimal Fee, decimal Differential)
{
    public static RollReply Of(MonthRoll roll) => new(
        roll.Number, roll.On, roll.From.ToString(), roll.To.ToString(), roll.Weight.Kilograms, roll.Spread, roll.Fee, roll.Differential);
}

/// <summary>What was said of a pre-shipment sample, and which refused one it replaces; null in the first round.</summary>
internal sealed record ApprovalReply(Guid LotId, Guid SampleId, int Round, Guid? ReplacesSampleId, ApprovalVerdict Verdict, string? Remarks, DateOnly On)
{
    public static ApprovalReply Of(Contract contract, SampleApproval approval) =>
        new(approval.LotId.Value, approval.SampleId.Value, approval.Round, contract.Replaced(approval)?.SampleId.Value, approval.Verdict, approval.Remarks, approval.On);
}

internal sealed record MoveReply(int Number, MoveAxis Axis, string Move, string From, string To, DateOnly On, string? Reason, bool IsBreach, DateTimeOffset At)
{
    public static MoveReply Of(ContractMove move) => new(move.Number, move.Axis, move.Move, move.From, move.To, move.On, move.Reason, move.IsBreach, move.At);
}

/// <summary>What is fixed and what is open; figures as the market quotes, US cents/lb or USD/t.</summary>
/// <param name="AverageLevel">Averaged by weight, unrounded; null while nothing is fixed.</param>
/// <param name="FinalPrice">With differentials, unrounded; null while anything is open.</param>
/// <param name="Exposure">What the open part costs more when the market rises by 1.</param>
internal sealed record PositionReply(
    string Month, decimal Differential, string Unit, decimal ToFixKg, decimal FixedKg, decimal OpenKg, decimal OpenLots, decimal? AverageLevel, decimal? FinalPrice, MoneyReply Exposure)
{
    public static PositionReply Of(FixingPosition position) => new(
        position.Month.ToString(),
        position.Differential,
        position.Market.QuoteUnit(),
        position.ToFix.Kilograms,
        position.Fixed.Kilograms,
        position.Open.Kilograms,
        position.OpenLots,
        position.AverageLevel,
        position.Final,
        MoneyReply.Of(position.Exposure(1m)));
}

/// <summary>What a weight is invoiced at; null where something is open and no settlement is known.</summary>
internal sealed record InvoiceReply(bool IsProvisional, decimal NetWeightKg, decimal? Settlement, MoneyReply Value, MoneyReply Due)
{
    public static InvoiceReply? Of(InvoiceValue? invoice) => invoice is null
        ? null
        : new InvoiceReply(invoice.IsProvisional, invoice.Net.Kilograms, invoice.Settlement, MoneyReply.Of(invoice.Value), MoneyReply.Of(invoice.Due));
}

internal sealed record ContractReply(
    Guid Id,
    int Version,
    string Ref,
    Guid SupplierId,
    GoodsState Goods,
    PriceState Price,
    decimal NetWeightKg,
    DateOnly? ShippedOn,
    int? DaysLate,
    TermsReply Terms,
    PositionReply? Position,
    IReadOnlyList<VersionReply> Versions,
    IReadOnlyList<FixingReply> Fixings,
    IReadOnlyList<RollReply> Rolls,
    IReadOnlyList<ApprovalReply> Approvals,
    IReadOnlyList<MoveReply> Moves)
{
    /// <summary>How the fixing stands today; null in lists and where nothing is to be said.</summary>
    public FixingStateReply? Fixing { get; init; }

    public static ContractReply Of(Contract contract) => new(
        contract.Id.Value,
        contract.Version,
        contract.Ref,
        contract.SupplierId.Value,
        contract.Goods,
        contract.Price,
        contract.NetWeight.Kilograms,
        contract.ShippedOn,
        contract.DaysLate,
        TermsReply.Of(contract.Terms),
        contract.Position is { } position ? PositionReply.Of(position) : null,
        [.. contract.Versions.Select(version => new VersionReply(version.Number, version == contract.InForce, version.SignedOn, version.SignedForSeller, version.Reason, version.WrittenAt, TermsReply.Of(version.Terms)))],
        [.. contract.Fixings.Select(FixingReply.Of)],
        [.. contract.Rolls.Select(RollReply.Of)],
        [.. contract.Approvals.Select(approval => ApprovalReply.Of(contract, approval))],
        [.. contract.Moves.Select(MoveReply.Of)]);
}

/// <summary>How the fixing of a contract stands today.</summary>
/// <param name="OpenKg">Still to be fixed.</param>
/// <param name="LastSensibleDay">By which it is to be fixed or rolled; null where nothing is open.</param>
/// <param name="UnderKg">Too little is fixed for the weight that is to be paid for.</param>
/// <param name="OverKg">Too much is.</param>
/// <param name="GapLots">In lots of the market, unrounded.</param>
/// <param name="IsFlagged">Something can be done about it: whole lots come no closer than a lot.</param>
internal sealed record FixingStateReply(
    decimal OpenKg, Caller? Call, DateOnly? FirstNotice, DateOnly? LastSensibleDay, int? DaysLeft, decimal UnderKg, decimal OverKg, decimal GapLots, bool IsFlagged, string? GapSentence)
{
    public static FixingStateReply? Of(FixingState state) => state is { Task: null, Gap: null } ? null : new FixingStateReply(
        state.Task?.Open.Kilograms ?? 0m, state.Task?.Call, state.Task?.FirstNotice, state.Task?.Last, state.Task?.DaysLeft,
        state.Gap?.Under.Kilograms ?? 0m, state.Gap?.Over.Kilograms ?? 0m, state.Gap?.Lots ?? 0m, state.Gap?.IsFlagged == true, state.Gap?.Sentence);
}

internal sealed record OpenContractReply(Guid ContractId, string Ref, string Seller, decimal OpenKg, Caller Call, DateOnly LastSensibleDay, int DaysLeft);

/// <summary>What is open against one futures month.</summary>
internal sealed record OpenMonthReply(
    string Month, decimal OpenKg, decimal OpenLots, MoneyReply Exposure, DateOnly FirstNotice, DateOnly LastTrading, IReadOnlyList<OpenContractReply> Contracts)
{
    public static OpenMonthReply Of(OpenMonth month) => new(
        month.Month.ToString(),
        month.Open.Kilograms,
        month.Lots,
        MoneyReply.Of(month.PerStep),
        month.FirstNotice,
        month.LastTrading,
        [.. month.Tasks.Select(task => new OpenContractReply(task.ContractId.Value, task.Ref, task.Seller, task.Open.Kilograms, task.Call, task.Last, task.DaysLeft))]);
}

/// <summary>A calculated fixing.</summary>
/// <param name="ExactLots">The weight in lots of the market, unrounded.</param>
/// <param name="MarketLots">Lots to be fixed; null when fixed by weight.</param>
internal sealed record CalculationReply(
    decimal ExactLots, int? MarketLots, PositionReply Position, decimal? ProvisionalPrice, InvoiceReply? Invoice, DateOnly FirstNotice, DateOnly LastTrading, DateOnly LastSensibleDay);
