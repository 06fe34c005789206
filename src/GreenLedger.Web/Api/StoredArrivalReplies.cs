using GreenLedger.Data.Arrivals;
using GreenLedger.Domain.Arrivals;

namespace GreenLedger.Web.Api;

/// <summary>One arrival of a list; the difference is landed less shipped, of the shipped weight.</summary>
internal sealed record ArrivalRowReply(
    Guid Id, DateOnly ReceivedOn, string LotRef, string LotName, Guid ShipmentId, string ShipmentRef, int ShippedBags, int Bags, decimal ShippedKg, decimal LandedKg, decimal DifferencePercent)
{
    public static ArrivalRowReply Of(ArrivalRow row) => new(
        row.Id.Value, row.ReceivedOn, row.LotRef, row.LotName, row.ShipmentId.Value, row.ShipmentRef, row.ShippedBags, row.Bags, row.Shipped.Kilograms, row.Landed.Kilograms, row.Difference.Points);
}

/// <summary>How the goods came; faults are the condition in words.</summary>
internal sealed record LotReceiptReply(
    DateOnly ReceivedOn, int Bags, decimal LandedKg, IReadOnlyList<string> Faults, decimal? TemperatureCelsius, decimal? HumidityPercent, string? Note)
{
    public static LotReceiptReply Of(Receipt receipt) => new(
        receipt.On, receipt.Bags, receipt.Landed.Kilograms, [.. receipt.Condition.Faults()], receipt.TenthsOfCelsius / 10m, receipt.Humidity?.Points, receipt.Note);
}

internal sealed record EarlierReceiptReply(int Number, LotReceiptReply Was, string Reason, DateTimeOffset At);

/// <summary>The weight verdict; a worth is null while the contract's price is not fixed, and what was shipped beyond the tolerance is below zero where too little was.</summary>
internal sealed record WeightVerdictReply(bool IsShort, decimal LossKg, decimal FranchiseKg, decimal RefundedKg, MoneyReply? Worth, decimal? BeyondAgreedKg, MoneyReply? BeyondAgreedWorth, IReadOnlyList<string> Sentences)
{
    public static WeightVerdictReply Of(WeightVerdict weight) => new(
        weight.IsShort, weight.Loss.Kilograms, weight.FranchiseWeight.Kilograms, weight.Refunded.Kilograms, weight.Worth is { } worth ? MoneyReply.Of(worth) : null,
        weight.BeyondAgreed?.Kilograms, weight.BeyondWorth is { } beyond ? MoneyReply.Of(beyond) : null, weight.Sentences);
}

/// <summary>One arrival with both verdicts as they stand now; the cup is null where the two samples were not cupped.</summary>
internal sealed record StoredArrivalReply(
    Guid Id,
    Guid ShipmentId,
    Guid ShipmentLotId,
    Guid ContractId,
    Guid LotId,
    int ShippedBags,
    decimal ShippedKg,
    LotReceiptReply Receipt,
    IReadOnlyList<EarlierReceiptReply> Earlier,
    Guid? ApprovedSampleId,
    Guid? ArrivalSampleId,
    WeightVerdictReply Weight,
    ArrivalOutcome Quality,
    string QualitySentence,
    CupReply? Cup,
    IReadOnlyList<LimitVerdict> Limits,
    IReadOnlyList<DeadlineReply> Deadlines,
    IReadOnlyList<ClaimGround> GroundsShown)
{
    /// <summary>How the fixing of its contract stands today; null where nothing is to be said.</summary>
    public FixingStateReply? Fixing { get; init; }

    public static StoredArrivalReply Of(ArrivalCase found)
    {
        var (arrival, weight, quality) = (found.Arrival, found.Weight(), found.Quality());
        return new StoredArrivalReply(
            arrival.Id.Value,
            arrival.ShipmentId.Value,
            arrival.ShipmentLotId.Value,
            found.Contract.Id.Value,
            arrival.LotId.Value,
            arrival.ShippedBags,
            arrival.Shipped.Kilograms,
            LotReceiptReply.Of(arrival.Receipt),
            [.. arrival.Earlier.Select(earlier => new EarlierReceiptReply(earlier.Number, LotReceiptReply.Of(earlier.Was), earlier.Reason, earlier.At))],
            arrival.ApprovedSampleId?.Value,
            arrival.ArrivalSampleId?.Value,
            WeightVerdictReply.Of(weight),
            quality.Outcome,
            quality.Sentence,
            quality.Cup is { } cup ? CupReply.Of(cup) : null,
            quality.Limits,
            [.. ClaimTimes.Deadlines(found.Contract.Terms.Form, found.Shipment).Select(deadline => new DeadlineReply(deadline.Rule.What, deadline.Start, deadline.LastDay, deadline.IsFirm))],
            [.. found.Basis().Findings.Where(finding => finding.IsShown).Select(finding => finding.Ground)]);
    }
}
