using GreenLedger.Data;
using GreenLedger.Data.Summaries;
using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.Summaries;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Api;

/// <summary>What suppliers, producers and origins kept of what was agreed, for scripts.</summary>
internal static class SupplierRecordsApi
{
    public static void MapSupplierRecords(this RouteGroupBuilder offers)
    {
        const string Numbers = "Each share is `count` of `of`; `percent` is null of nothing. Ranking is for those with at least the house's least number behind the figure.";
        offers.MapGet("/suppliers/record", RankedAsync).WithName("RankSuppliers").WithSummary("Every supplier's record, ranked by one figure").WithDescription(Numbers);
        offers.MapGet("/suppliers/{id}/record", SupplierAsync).WithName("ReadSupplierRecord").WithSummary("What one supplier kept of what was agreed").WithDescription(Numbers);
        offers.MapGet("/producers/{id}/record", ProducerAsync).WithName("ReadProducerRecord").WithSummary("What was kept of what was agreed about one producer's coffee").WithDescription(Numbers);
        offers.MapGet("/origins/{country}/record", OriginAsync).WithName("ReadOriginRecord").WithSummary("What was kept of what was agreed about coffee of one origin").WithDescription(Numbers);
    }

    /// <param name="by">cup, firstTime, inTime, weight or bought.</param>
    private static async Task<Ok<List<RankedReply>>> RankedAsync(LedgerContext db, SupplierRecordQuery query, CancellationToken cancellationToken, RankedBy by = RankedBy.Cup)
    {
        var facts = await query.FactsAsync(cancellationToken);
        var ids = facts.Sources().Select(source => source.Supplier).ToHashSet();
        var names = await db.Suppliers.AsNoTracking().Where(supplier => ids.Contains(supplier.Id)).Select(supplier => new { supplier.Id, supplier.Name }).ToListAsync(cancellationToken);
        var least = (await query.HabitsAsync(cancellationToken)).LeastNumber;
        var ranked = RecordRanking.Of(names.Select(one => (one, SupplierRecord.Of(facts.Where(source => source.Supplier == one.Id)))), by, least);
        return TypedResults.Ok(ranked.Select(row => new RankedReply(row.Key.Id.Value, row.Key.Name, row.Place, row.Number, RecordReply.Of(row.Record))).ToList());
    }

    private static async Task<Results<Ok<RecordReply>, NotFound>> SupplierAsync(Id<Supplier> id, LedgerContext db, SupplierRecordQuery query, CancellationToken cancellationToken) =>
        await db.Suppliers.AnyAsync(supplier => supplier.Id == id, cancellationToken) ? await OfAsync(query, source => source.Supplier == id, cancellationToken) : TypedResults.NotFound();

    private static async Task<Results<Ok<RecordReply>, NotFound>> ProducerAsync(Id<Producer> id, LedgerContext db, SupplierRecordQuery query, CancellationToken cancellationToken) =>
        await db.Producers.AnyAsync(producer => producer.Id == id, cancellationToken) ? await OfAsync(query, source => source.Producer == id, cancellationToken) : TypedResults.NotFound();

    private static async Task<Results<Ok<RecordReply>, NotFound>> OriginAsync(string country, LedgerContext db, SupplierRecordQuery query, CancellationToken cancellationToken)
    {
        var code = country.ToUpperInvariant();
        return await db.Countries.AnyAsync(one => one.Code == code, cancellationToken) ? await OfAsync(query, source => source.Origin == code, cancellationToken) : TypedResults.NotFound();
    }

    private static async Task<Ok<RecordReply>> OfAsync(SupplierRecordQuery query, Func<Source, bool> belongs, CancellationToken cancellationToken) =>
        TypedResults.Ok(RecordReply.Of(SupplierRecord.Of((await query.FactsAsync(cancellationToken)).Where(belongs))));

    /// <param name="Place">Null with less behind the figure than the house asks.</param>
    /// <param name="Number">How many the figure rests on.</param>
    internal sealed record RankedReply(Guid SupplierId, string Name, int? Place, int Number, RecordReply Record);

    internal sealed record ShareReply(int Count, int Of, decimal? Percent)
    {
        public static ShareReply From(ShareOf share) => new(share.Count, share.Of, share.Percent?.Points);
    }

    /// <summary>An arrival and its approved sample, in points, with the difference that the arrival's verdict stands on.</summary>
    /// <param name="Shift">How far the second session stood above the first; null in one session.</param>
    internal sealed record CuppedReply(Guid ArrivalId, string Lot, DateOnly ReceivedOn, decimal Approved, decimal Arrived, decimal Difference, Meeting Meeting, double? Shift)
    {
        public bool InOneSession => Meeting == Meeting.OneSession;
    }

    /// <param name="Mean">Arrival less approved, in points.</param>
    /// <param name="LowerLimit">2.66 mean moving ranges below the mean; null with fewer than ten arrivals.</param>
    internal sealed record DifferencesReply(int Number, double? Mean, double? StandardDeviation, double? LowerLimit, double? UpperLimit, ShareReply MoreThanAPointBelow, IReadOnlyList<CuppedReply> Arrivals);

    internal sealed record OutcomeReply(ClaimOutcome Outcome, int Count);

    internal sealed record SettledReply(decimal Amount, string Currency);

    internal sealed record ClaimsReply(int Claims, int PartsReceived, int OnMissing, int Open, IReadOnlyList<OutcomeReply> Outcomes, IReadOnlyList<SettledReply> Settled);

    /// <param name="WeightDifferencePercent">All landed over all shipped weight, less one.</param>
    internal sealed record RecordReply(
        ShareReply Bought,
        ShareReply SamplesApproved,
        ShareReply LotsApprovedAtOnce,
        ShareReply LotsApprovedInTheEnd,
        ShareReply ShippedInTime,
        ShareReply ShippedWithoutApproval,
        DifferencesReply Differences,
        int PartsWeighed,
        decimal ShippedKg,
        decimal LandedKg,
        decimal? WeightDifferencePercent,
        ClaimsReply Claims)
    {
        public static RecordReply Of(SupplierRecord record) => new(
            ShareReply.From(record.Bought),
            ShareReply.From(record.ApprovedSamples),
            ShareReply.From(record.FirstTime),
            ShareReply.From(record.InTheEnd),
            ShareReply.From(record.InTime),
            ShareReply.From(record.Unapproved),
            new DifferencesReply(
                record.Differences.Number, record.Differences.Mean, record.Differences.Deviation, record.Differences.Chart?.Lower, record.Differences.Chart?.Upper, ShareReply.From(record.Differences.FarBelow),
                [.. record.Differences.Arrivals.Select(fact => new CuppedReply(fact.ArrivalId.Value, fact.Lot, fact.On, fact.Approved.Points, fact.Arrived.Points, fact.Difference, fact.Cup.Meeting, fact.Cup.Shift))]),
            record.Weight.Number,
            record.Weight.Shipped.Kilograms,
            record.Weight.Landed.Kilograms,
            record.Weight.Difference?.Points,
            new ClaimsReply(
                record.Claims.OfReceived.Count,
                record.Claims.OfReceived.Of,
                record.Claims.OnMissing,
                record.Claims.Open,
                [.. record.Claims.Outcomes.Select(one => new OutcomeReply(one.Outcome, one.Count))],
                [.. record.Claims.Settled.Select(money => new SettledReply(money.Amount, money.Currency.Code))]));
    }
}
