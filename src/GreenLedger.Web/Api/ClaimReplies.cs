using GreenLedger.Domain.Arrivals;

namespace GreenLedger.Web.Api;

internal sealed record ClaimGroundReply(ClaimGround Ground, string Finding);

internal sealed record ClaimLineReply(string What, string Arithmetic, MoneyReply Amount);

internal sealed record ClaimTimeReply(string What, int Days, DateOnly? Start, DateOnly? LastDay, DateOnly On, bool IsLate);

internal sealed record ClaimNoteReply(int Number, ClaimSide Side, DateOnly On, string Text, DateTimeOffset At);

internal sealed record SettlementReply(int Number, ClaimOutcome Outcome, MoneyReply? Amount, DateOnly On, string? Words, DateTimeOffset At, string? TakenBackBecause);

/// <summary>Of a landed kilogram at the contract's price, unrounded, in the currency of the contract.</summary>
internal sealed record CostEffectReply(decimal BeforePerKg, decimal AfterPerKg, IReadOnlyList<string> Sentences);

/// <summary>Scores in points; bounds are one-sided at 95 %.</summary>
internal sealed record ClaimCupReply(
    ArrivalOutcome Outcome, string ApprovedCode, double Approved, int ApprovedCuppers, string ArrivalCode, double Arrival, int ArrivalCuppers,
    double Difference, double? Lower, double? Upper, decimal Tolerance, IReadOnlyList<string> Sentences, IReadOnlyList<string> Sessions);

/// <summary>As it stood when the claim was opened.</summary>
internal sealed record ClaimEvidenceReply(
    int ContractVersion,
    string StandardForm,
    string Arbitration,
    string? BillOfLading,
    string? Vessel,
    DateOnly ShipUntil,
    DateOnly? ShippedOn,
    DateOnly? DischargedOn,
    IReadOnlyList<string> Containers,
    DateOnly? ReceivedOn,
    int? ShippedBags,
    int? ReceivedBags,
    decimal? ShippedKg,
    decimal? LandedKg,
    IReadOnlyList<string> Faults,
    IReadOnlyList<string> Weight,
    ClaimCupReply? Cup,
    IReadOnlyList<LimitVerdict> Limits,
    IReadOnlyList<ClaimPaper> Papers,
    ClaimMissingReply? Missing)
{
    public static ClaimEvidenceReply Of(ClaimCase found) => new(
        found.Parties.ContractVersion,
        found.Parties.Form,
        found.Parties.Arbitration,
        found.Goods.BillOfLading,
        found.Goods.Vessel,
        found.Goods.ShipUntil,
        found.Goods.ShippedOn,
        found.Goods.DischargedOn,
        found.Goods.Containers,
        found.Receipt?.On,
        found.Receipt?.ShippedBags,
        found.Receipt?.Bags,
        found.Receipt?.Shipped.Kilograms,
        found.Receipt?.Landed.Kilograms,
        found.Receipt?.Faults ?? [],
        found.Weight,
        found.Cup is { } cup
            ? new ClaimCupReply(cup.Outcome, cup.ApprovedCode, cup.Approved, cup.ApprovedCuppers, cup.ArrivalCode, cup.Arrival, cup.ArrivalCuppers, cup.Difference, cup.Lower, cup.Upper, cup.Tolerance.Points, cup.Sentences, cup.Sessions)
            : null,
        found.Limits,
        found.Papers,
        found.Missing is { } missing ? new ClaimMissingReply(missing.AgreedBags, missing.Agreed.Kilograms, missing.Bags, missing.Missing.Kilograms, missing.Delivery, missing.Versions, missing.Notes) : null);
}

/// <summary>What was agreed of goods that did not come; versions and notes in sentences.</summary>
internal sealed record ClaimMissingReply(int AgreedBags, decimal AgreedKg, int Bags, decimal WeightKg, string Delivery, IReadOnlyList<string> Versions, IReadOnlyList<string> Notes);

/// <summary>One claim; the outcome is null while it is open, the amount where none was stated, the arrival for goods that did not come.</summary>
internal sealed record ClaimReply(
    Guid Id,
    string Ref,
    Guid? ArrivalId,
    Guid? ShipmentId,
    Guid ContractId,
    Guid LotId,
    string Seller,
    string ContractRef,
    string LotRef,
    string LotName,
    string? ShipmentRef,
    DateOnly On,
    DateOnly? LastDay,
    bool IsLate,
    bool IsAcceptedLate,
    string? LateReason,
    IReadOnlyList<ClaimGroundReply> Grounds,
    IReadOnlyList<ClaimLineReply> Lines,
    MoneyReply? Amount,
    string? Words,
    ClaimOutcome? Outcome,
    DateOnly? SettledOn,
    MoneyReply? Settled,
    CostEffectReply? CostEffect,
    IReadOnlyList<ClaimTimeReply> Deadlines,
    IReadOnlyList<ClaimNoteReply> Notes,
    IReadOnlyList<SettlementReply> Settlements,
    ClaimEvidenceReply Evidence)
{
    /// <summary>How the fixing of its contract stands today; null in lists and where nothing is to be said.</summary>
    public FixingStateReply? Fixing { get; init; }

    public static ClaimReply Of(Claim claim) => new(
        claim.Id.Value,
        claim.Ref,
        claim.ArrivalId?.Value,
        claim.ShipmentId?.Value,
        claim.ContractId.Value,
        claim.LotId.Value,
        claim.Case.Parties.Seller,
        claim.Case.Parties.ContractRef,
        claim.Case.Goods.LotRef,
        claim.Case.Goods.LotName,
        claim.Case.Goods.ShipmentRef,
        claim.On,
        claim.LastDay,
        claim.IsLate,
        claim.IsAcceptedLate,
        claim.LateReason,
        [.. claim.Case.Findings.Select(finding => new ClaimGroundReply(finding.Ground, finding.Sentence))],
        [.. claim.Case.Lines.Select(line => new ClaimLineReply(line.What, line.Arithmetic, MoneyReply.Of(line.Amount)))],
        claim.Amount is { } amount ? MoneyReply.Of(amount) : null,
        claim.Case.Words,
        claim.Outcome,
        claim.SettledOn,
        claim.Settled is { } settled ? MoneyReply.Of(settled) : null,
        claim.Effect is { } effect ? new CostEffectReply(effect.BeforePerKilogram, effect.AfterPerKilogram, effect.Sentences) : null,
        [.. claim.Case.Times.Select(time => new ClaimTimeReply(time.What, time.Days, time.Start, time.LastDay, time.On, time.IsLate()))],
        [.. claim.Notes.Select(note => new ClaimNoteReply(note.Number, note.Side, note.On, note.Text, note.At))],
        [.. claim.Settlements.Select(one => new SettlementReply(one.Number, one.Outcome, one.Amount is { } paid ? MoneyReply.Of(paid) : null, one.On, one.Words, one.At, one.TakenBackBecause))],
        ClaimEvidenceReply.Of(claim.Case));
}
