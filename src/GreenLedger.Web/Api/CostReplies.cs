using GreenLedger.Data.Costs;
using GreenLedger.Data.Stock;
using GreenLedger.Domain.Costs;
using GreenLedger.Domain.Pricing;
using GreenLedger.Domain.Stock;

namespace GreenLedger.Web.Api;

/// <summary>The days are those for which storage is billed; both, or none.</summary>
internal sealed record PostingRequest(
    decimal Amount, string Currency, DateOnly On, string Document, Guid? ContractId = null, Guid? ShipmentId = null, Guid? LotId = null, CostStage? Stage = null, string? From = null, ShareBasis? Basis = null,
    DateOnly? CoversFrom = null, DateOnly? CoversUntil = null);

/// <summary>The stage is null for the coffee itself.</summary>
internal sealed record PostingReply(
    Guid Id, CostStage? Stage, MoneyReply Amount, MoneyReply House, DateOnly? RateOn, DateOnly On, string Document, string? From, ShareBasis Basis, Guid? ContractId, Guid? ShipmentId, Guid? LotId, string? WithdrawnBecause,
    DateOnly? CoversFrom, DateOnly? CoversUntil)
{
    public static PostingReply Of(CostPosting posting) => new(
        posting.Id.Value, posting.Stage, MoneyReply.Of(posting.Amount), MoneyReply.Of(posting.House), posting.RateOn, posting.On, posting.Document, posting.From, posting.Basis,
        posting.ContractId?.Value, posting.ShipmentId?.Value, posting.LotId?.Value, posting.WithdrawnBecause, posting.CoversFrom, posting.CoversUntil);
}

/// <summary>A lot's part: what stays on coffee that was there or still to come, what came late for coffee already gone, and what is accounting cost.</summary>
internal sealed record PostingShareReply(Guid LotId, string LotRef, MoneyReply Part, MoneyReply Coming, MoneyReply Staying, MoneyReply Late, MoneyReply Accounting, MoneyReply LateAccounting)
{
    public static PostingShareReply Of(PostingShare share) => new(
        share.LotId.Value, share.LotRef, MoneyReply.Of(share.Part), MoneyReply.Of(share.Cost.Coming), MoneyReply.Of(share.Cost.Staying), MoneyReply.Of(share.Cost.Late), MoneyReply.Of(share.Cost.Accounting), MoneyReply.Of(share.Cost.LateAccounting));
}

internal sealed record SharedPostingReply(PostingReply Posting, IReadOnlyList<PostingShareReply> Shares);

/// <summary>What of a posting a lot bears; what is coming lies on kilograms that were shipped and have not arrived, and is in no cost of a kilogram yet.</summary>
internal sealed record CostPartReply(Guid PostingId, string Document, DateOnly On, CostStage? Stage, MoneyReply Part, MoneyReply Coming, MoneyReply Accounting, MoneyReply Late, MoneyReply LateAccounting);

/// <summary>Per kilogram landed, in the house currency; together the difference.</summary>
internal sealed record DifferenceReply(decimal Price, decimal Rate, decimal Weight, decimal Claims)
{
    public static DifferenceReply? Of(CostDifference? why) => why is null ? null : new DifferenceReply(why.Price, why.Rate, why.Weight, why.Claims);
}

/// <summary>The difference is null where there was no estimate, nothing landed or nothing is billed yet.</summary>
internal sealed record CostStageReply(CostStage? Stage, decimal? EstimatedPerKg, decimal ActualPerKg, MoneyReply Billed, DifferenceReply? DifferencePerKg);

/// <summary>What was issued is the accounting cost that left with the coffee, as it was known then; what came late for it stands apart. The difference is of the stages that are billed; less what was reckoned for the rest it is billed less estimated.</summary>
internal sealed record LotCostReply(
    MoneyReply Total, MoneyReply Coming, MoneyReply Accounting, decimal LandedKg, decimal? PerKg, decimal? AccountingPerKg, decimal? EstimatedPerKg, bool HasCoffee, MoneyReply Issued, MoneyReply Late, MoneyReply LateAccounting, DifferenceReply? DifferencePerKg, decimal NotBilledPerKg,
    IReadOnlyList<CostStageReply> Stages, IReadOnlyList<CostPartReply> Parts)
{
    public static LotCostReply Of(LotCost cost) => new(
        MoneyReply.Of(cost.Total), MoneyReply.Of(cost.Coming), MoneyReply.Of(cost.Accounting), cost.Landed.Kilograms, cost.PerKilogram, cost.AccountingPerKilogram, cost.EstimatedPerKilogram, cost.HasCoffee,
        MoneyReply.Of(cost.Issued), MoneyReply.Of(cost.Late), MoneyReply.Of(cost.LateAccounting), DifferenceReply.Of(cost.Why), cost.NotBilledPerKilogram,
        [.. cost.Stages.Select(stage => new CostStageReply(stage.Stage, stage.Estimated, stage.Actual, MoneyReply.Of(stage.Billed), DifferenceReply.Of(stage.Why)))],
        [.. cost.Parts.Select(part => new CostPartReply(
            part.Posting.Id.Value, part.Posting.Document, part.Posting.On, part.Posting.Stage, MoneyReply.Of(part.Part), MoneyReply.Of(part.Coming), MoneyReply.Of(part.Accounting), MoneyReply.Of(part.Late), MoneyReply.Of(part.LateAccounting)))]);
}

internal sealed record ValuedLotReply(Guid LotId, string Name, decimal LeftKg, MoneyReply? Value);

/// <summary>The lots of a pool share its value by kilograms; of a single lot it is the whole.</summary>
internal sealed record ValuedReply(string Name, Guid? LotId, decimal LeftKg, MoneyReply? Value, decimal? PerKg, IReadOnlyList<string> NotBilled, IReadOnlyList<ValuedLotReply> Lots)
{
    public static ValuedReply Of(ValuedRow row) => new(
        row.Name, row.LotId?.Value, row.Left.Kilograms, row.Cost is { } cost ? MoneyReply.Of(cost) : null, row.PerKilogram, row.Without,
        [.. row.Parts().Select(lot => new ValuedLotReply(lot.Id.Value, lot.Name, lot.Left.Kilograms, lot.Cost is { } part ? MoneyReply.Of(part) : null))]);
}

/// <summary>What of a bill fell on kilograms of a lot that were gone by the day of the bill.</summary>
internal sealed record LateReply(Guid LotId, string Lot, Guid PostingId, string Document, DateOnly On, MoneyReply Late);

internal sealed record ValueReply(DateOnly On, ValuationMethod Method, IReadOnlyList<ValuedReply> Rows, DateOnly? Since, IReadOnlyList<LateReply> Late)
{
    public static ValueReply Of(DateOnly on, DateOnly? since, ValuedStock stock) => new(
        on, stock.Method, [.. stock.Rows.Select(ValuedReply.Of)], since,
        [.. stock.LateSince(since).Select(late => new LateReply(late.LotId.Value, late.Lot, late.PostingId.Value, late.Document, late.On, MoneyReply.Of(late.Late)))]);
}
