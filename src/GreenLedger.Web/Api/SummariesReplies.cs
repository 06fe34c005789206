using GreenLedger.Documents.Summaries;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Summaries;

namespace GreenLedger.Web.Api;

/// <summary>What rows add up to; the price per kg is weighted and unrounded.</summary>
internal sealed record TotalReply(int Rows, decimal Kg, MoneyReply Value, decimal ValuedKg, int WithoutValue, MoneyReply Provisional, decimal? PerKg)
{
    public static TotalReply Of(Total total) => new(
        total.Rows, total.Net.Kilograms, MoneyReply.Of(total.Value), total.Valued.Kilograms, total.WithoutValue, MoneyReply.Of(total.Provisional), total.PerKilogram);
}

internal sealed record CutGroupReply(string Name, TotalReply Contracted, TotalReply Shipped, TotalReply Arrived, TotalReply ToCome, TotalReply InStock, decimal? MeanScore)
{
    public static CutGroupReply Of(CutGroup group) => new(
        group.Name, TotalReply.Of(group.Contracted), TotalReply.Of(group.Shipped), TotalReply.Of(group.Arrived), TotalReply.Of(group.ToCome), TotalReply.Of(group.InStock), group.Score);
}

internal sealed record BandReply(string Band, TotalReply Now, TotalReply Before, decimal? PerKgAndPoint);

internal sealed record LandedBandReply(string Band, TotalReply Now, TotalReply Before);

internal sealed record FuturesAverageReply(decimal CentsPerLb, decimal PerKg, int Days)
{
    public static FuturesAverageReply? Of(FuturesAverage? average) => average is null ? null : new(average.Quoted, average.PerKilogram, average.Days);
}

internal sealed record ApprovalCountsReply(int FirstTime, int Later, int Refused);

internal sealed record ComparedReply(Guid ArrivalId, string ContractRef, string LotRef, DateOnly ReceivedOn, decimal ShippedKg, decimal LandedKg, decimal? ApprovedPoints, decimal? ArrivalPoints)
{
    public static ComparedReply Of((PurchasedLot Purchase, Compared Compared) one) => new(
        one.Compared.ArrivalId.Value, one.Purchase.ContractRef, one.Purchase.Lot.Ref, one.Compared.On, one.Compared.Shipped.Kilograms, one.Compared.Landed.Kilograms, one.Compared.Approved?.Points, one.Compared.Arrived?.Points);
}

internal sealed record ClaimedReply(Guid ClaimId, string Ref, string ContractRef, DateOnly Day, MoneyReply? Claimed, string State, MoneyReply? Settled)
{
    public static ClaimedReply Of((PurchasedLot Purchase, Claimed Claim) one) => new(
        one.Claim.ClaimId.Value, one.Claim.Ref, one.Purchase.ContractRef, one.Claim.On, one.Claim.Amount is { } amount ? MoneyReply.Of(amount) : null, one.Claim.State, one.Claim.Settled is { } settled ? MoneyReply.Of(settled) : null);
}

internal sealed record PricedMonthReply(DateOnly Month, int Lots, decimal PricedKg, decimal UnpricedKg);

internal sealed record UnpricedMonthReply(string FuturesMonth, int Lots, decimal UnpricedKg);

internal sealed record ScoreLineReply(int FromPoints, int OfferedLots, int ContractedLots, decimal ContractedKg);

internal sealed record ToDecideReply(Guid ContractId, string ContractRef, string What, DateOnly Day);

/// <summary>One row behind a figure: a quantity of a lot on a day; what is in stock has no contract.</summary>
internal sealed record PurchaseRowReply(
    Guid? ContractId, string? ContractRef, Guid LotId, string LotRef, string LotName, string Supplier, string? Origin, string? Process, IReadOnlyList<string> Certificates, string? Programme,
    decimal? Score, DateOnly Day, decimal Kg, decimal? UnpricedKg, MoneyReply? Value, bool IsProvisional, string? Goods)
{
    public static PurchaseRowReply Of(SummaryRow row)
    {
        var (purchase, lot) = (row.Purchase, row.Lot);
        return new PurchaseRowReply(
            purchase?.ContractId.Value, purchase?.ContractRef, lot.LotId.Value, lot.Ref, lot.Name, lot.Supplier, lot.Origin, lot.Process, lot.Certificates, lot.Programme, lot.Score?.Points,
            row.On, row.Net.Kilograms, purchase?.Unpriced.Kilograms, row.Value is { } value ? MoneyReply.Of(value) : null, row.IsProvisional, purchase?.Goods.Word());
    }
}

internal sealed record PurchaseSummaryReply(
    DateOnly From, DateOnly Until, DateOnly BeforeFrom, DateOnly BeforeUntil, DateOnly AsOf, DateOnly? NewestRate, string Currency, Cut By, string? Group,
    TotalReply Contracted, TotalReply Shipped, TotalReply Arrived, TotalReply ToCome, TotalReply InStock,
    TotalReply ContractedBefore, TotalReply ShippedBefore, TotalReply ArrivedBefore,
    IReadOnlyList<CutGroupReply> Groups, IReadOnlyList<BandReply> Bands, IReadOnlyList<LandedBandReply> LandedBands, FuturesAverageReply? Futures, FuturesAverageReply? FuturesBefore,
    IReadOnlyList<ScoreLineReply> Scores, ApprovalCountsReply Approvals, IReadOnlyList<ComparedReply> Arrivals, IReadOnlyList<ClaimedReply> Claims,
    IReadOnlyList<PricedMonthReply> Priced, IReadOnlyList<UnpricedMonthReply> Unpriced, IReadOnlyList<PurchaseRowReply> Positions, IReadOnlyList<ToDecideReply> ToDecide)
{
    public static PurchaseSummaryReply Of(PurchaseSummary summary)
    {
        var (wish, approvals) = (summary.Wish, summary.Approvals());
        return new PurchaseSummaryReply(
            wish.Period.From, wish.Period.Until, wish.Period.Before.From, wish.Period.Before.Until, summary.AsOf, summary.NewestRate, summary.Currency.Code, wish.Cut, wish.Group,
            Total(SummaryFigure.Contracted), Total(SummaryFigure.Shipped), Total(SummaryFigure.Arrived), Total(SummaryFigure.ToCome), Total(SummaryFigure.InStock),
            Total(SummaryFigure.Contracted, true), Total(SummaryFigure.Shipped, true), Total(SummaryFigure.Arrived, true),
            [.. summary.Groups().Select(CutGroupReply.Of)],
            [.. summary.BandLines().Select(line => new BandReply(line.Band, TotalReply.Of(line.Now), TotalReply.Of(line.Before), line.PerPoint))],
            [.. summary.LandedLines().Select(line => new LandedBandReply(line.Band, TotalReply.Of(line.Now), TotalReply.Of(line.Before)))],
            FuturesAverageReply.Of(summary.Futures),
            FuturesAverageReply.Of(summary.FuturesBefore),
            [.. summary.ScoreLines().Select(line => new ScoreLineReply(line.From, line.Offered, line.Bought, line.BoughtNet.Kilograms))],
            new ApprovalCountsReply(approvals.FirstTime, approvals.Later, approvals.Refused),
            [.. summary.Comparisons().Select(ComparedReply.Of)],
            [.. summary.Claims().Select(ClaimedReply.Of)],
            [.. summary.PricedMonths().Select(month => new PricedMonthReply(month.Month, month.Rows, month.Priced.Kilograms, month.Unpriced.Kilograms))],
            [.. summary.UnpricedMonths().Select(month => new UnpricedMonthReply(month.Month.ToString(), month.Rows, month.Net.Kilograms))],
            [.. summary.Positions().Select(PurchaseRowReply.Of)],
            [.. summary.ToDecide.Select(one => new ToDecideReply(one.ContractId.Value, one.ContractRef, one.What, one.Since))]);

        TotalReply Total(SummaryFigure figure, bool isBefore = false) => TotalReply.Of(summary.Total(figure, isBefore));
    }
}

internal sealed record SupplierSummaryReply(Guid SupplierId, string Supplier, PurchaseSummaryReply Purchases, SupplierRecordsApi.RecordReply Record);

/// <summary>Whose samples, which, and in what language; with <c>pdf</c> the answer is the document.</summary>
internal sealed record FeedbackRequest(Guid SupplierId, IReadOnlyList<Guid> SampleIds, string? Language = null, string? Message = null, bool Pdf = false);

/// <summary>One part of a report: a sentence, or the rows of a table under its heads.</summary>
internal sealed record FeedbackPartReply(FeedbackPart Part, string Text, IReadOnlyList<string>? Heads, IReadOnlyList<IReadOnlyList<string>>? Rows);

internal sealed record FeedbackReply(string Title, string Supplier, string Language, IReadOnlyList<FeedbackPartReply> Parts)
{
    public static FeedbackReply Of(FeedbackReport report) => new(
        FeedbackText.Title(report), report.Supplier, FeedbackText.LanguageOf(report),
        [.. FeedbackText.Of(report).Where(block => block.Chart is null).Select(block => new FeedbackPartReply(block.Part, block.Text, block.Table?.Columns.Select(column => column.Head).ToList(), block.Table?.Rows))]);
}
