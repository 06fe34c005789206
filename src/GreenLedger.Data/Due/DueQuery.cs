using System.Globalization;
using GreenLedger.Data.Certificates;
using GreenLedger.Data.Contracts;
using GreenLedger.Data.Cupping;
using GreenLedger.Data.People;
using GreenLedger.Data.Samples;
using GreenLedger.Data.Shipments;
using GreenLedger.Data.Stock;
using GreenLedger.Data.Trace;
using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Due;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Samples;
using GreenLedger.Domain.Shipments;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Due;

/// <summary>Reads what is due across the rooms, for one reader: only of areas the reader may open, and nothing that is sealed.</summary>
public sealed class DueQuery(LedgerContext db, SampleQuery samples, FixingsQuery fixings, ShipmentQuery shipments, EndingCertificatesQuery certificates, PurposeQuery purposes, BoughtDiligenceQuery diligences)
{
    /// <summary>Among so many samples that came first is the one that stands longest at its step.</summary>
    private const int Oldest = 50;

    private static readonly GoodsState[] Ended = [GoodsState.Drafted, GoodsState.Closed, GoodsState.Cancelled];

    /// <param name="mayRead">Whether the reader may open an area of docs/roles.md.</param>
    /// <param name="seal">What an open session keeps from the reader.</param>
    /// <param name="today">The day that is due from.</param>
    /// <param name="cancellationToken">Stops the reading.</param>
    public async Task<IReadOnlyList<DueLine>> ListAsync(Func<string, bool> mayRead, Seal seal, DateOnly today, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(mayRead);
        ArgumentNullException.ThrowIfNull(seal);
        var lines = new List<DueLine>();
        if (mayRead(DueKind.Sample.Area()))
        {
            lines.AddRange(await SamplesAsync(seal, today, cancellationToken));
        }

        if (mayRead(DueKind.Session.Area()))
        {
            lines.AddRange(await SessionsAsync(cancellationToken));
        }

        if (mayRead(DueKind.Fixing.Area()) || mayRead(DueKind.Shipment.Area()) || mayRead(DueKind.Receipt.Area()))
        {
            lines.AddRange((await TradeAsync(seal, today, cancellationToken)).Where(line => mayRead(line.Kind.Area())));
        }

        if (mayRead(DueKind.Certificate.Area()))
        {
            lines.AddRange(await certificates.EndingAsync(today, cancellationToken));
        }

        if (mayRead(DueKind.Reorder.Area()))
        {
            lines.AddRange((await purposes.ListAsync(today, cancellationToken)).Where(row => row.Cover.IsTimeToBuy)
                .Select(row => new DueLine(DueKind.Reorder, row.Purpose.Id.Value, $"buy for {row.Purpose.Name}: stock and what is to come are at the reorder point", "buyer", today)));
        }

        if (mayRead(DueKind.Diligence.Area()))
        {
            lines.AddRange((await diligences.ListAsync(cancellationToken)).SelectMany(row => DueDates.Diligence(row.View.Lot, row.Missing, row.Expected ?? row.View.ReceivedOn, row.View.Habits)).Where(line => !seal.Covers(line.RecordId)));
        }

        return [.. lines.OrderBy(line => line.On).ThenBy(line => line.Kind).ThenBy(line => line.What, StringComparer.Ordinal)];
    }

    public async Task<DueHabits> HabitsAsync(CancellationToken cancellationToken) =>
        await db.DueHabits.AsNoTracking().OfHouseAsync(cancellationToken);

    /// <summary>A line for each step at which samples wait, by the day of the one that waits longest: who has many has a list for them.</summary>
    private async Task<IEnumerable<DueLine>> SamplesAsync(Seal seal, DateOnly today, CancellationToken cancellationToken)
    {
        var habits = await db.SampleHabits.AsNoTracking().OfHouseAsync(cancellationToken);
        // Counted to a day when every sample that waits now is late.
        var rule = new LateRule(habits, today.AddDays(SampleHabits.MostDays + 1), await db.ZoneAsync(cancellationToken));
        var lines = new List<DueLine>();
        foreach (var step in SampleSteps.All.Where(step => habits.DaysAt(step) is not null))
        {
            var filter = new SampleFilter(At: step, LateBy: rule, WithExpected: true, Sort: "received");
            var oldest = await samples.ListAsync(filter, seal, 0, Oldest, cancellationToken);
            if (oldest.Min(row => row.Stands?.On) is { } since)
            {
                var count = await samples.CountAsync(filter, seal, cancellationToken);
                var what = string.Create(CultureInfo.InvariantCulture, $"{count:#,0} {(count == 1 ? "sample is" : "samples are")} {step.Word()}: next {(count == 1 ? "it is" : "they are")} to be {(step + 1).Word()}");
                lines.Add(new DueLine(DueKind.Sample, Guid.Empty, what, WhoMoves(step), since.AddDays(habits.DaysAt(step)!.Value)) { Part = step.ToString() });
            }
        }

        return lines;
    }

    private static string WhoMoves(SampleStep step) => step switch
    {
        SampleStep.Asked or SampleStep.OnTheWay => "seller",
        SampleStep.Cupped => "buyer",
        _ => "sample room",
    };

    private async Task<IEnumerable<DueLine>> SessionsAsync(CancellationToken cancellationToken) => (await db.CuppingSessions.AsNoTracking().Open()
        .Select(session => new { session.Id, session.Title, session.HeldOn, By = db.People.Where(person => person.Id == session.LaidOutBy).Select(person => person.Name).FirstOrDefault() })
        .ToListAsync(cancellationToken))
        .Select(session => new DueLine(DueKind.Session, session.Id.Value, $"cup and close “{session.Title}”", session.By ?? "lead cupper", session.HeldOn));

    private async Task<IEnumerable<DueLine>> TradeAsync(Seal seal, DateOnly today, CancellationToken cancellationToken)
    {
        var habits = await HabitsAsync(cancellationToken);
        var contracts = await db.Contracts.AsNoTracking().Where(contract => !Ended.Contains(contract.Goods)).Whole().ToListAsync(cancellationToken);
        var ids = contracts.ConvertAll(contract => contract.Id);
        var (parts, arrivals) = await shipments.PartsAsync(ids, cancellationToken);
        var received = arrivals.Select(arrival => arrival.ShipmentLotId).ToHashSet();
        var lotIds = parts.SelectMany(shipment => shipment.Lots).Select(lot => lot.LotId).ToHashSet();
        var names = await db.Lots.AsNoTracking().Where(lot => lotIds.Contains(lot.Id)).ToDictionaryAsync(lot => lot.Id, lot => $"{lot.Ref} {lot.Name}", cancellationToken);
        var claims = await db.Claims.AsNoTracking().Where(claim => ids.Contains(claim.ContractId)).ToListAsync(cancellationToken);
        var open = await fixings.OpenAsync(today, cancellationToken);
        IEnumerable<DueLine> lines =
        [
            .. contracts.SelectMany(DueDates.Approval),
            .. open.SelectMany(month => month.Tasks).Select(DueDates.Fixing),
            .. contracts.SelectMany(contract => DueDates.Shipment(contract, ContractProgress.Of(contract, parts, received))),
            .. contracts.SelectMany(contract => DueDates.NotShipped(contract, ContractProgress.Of(contract, parts, received), claims, today, habits)),
            .. parts.SelectMany(shipment => DueDates.Documents(shipment, habits)),
            .. parts.SelectMany(shipment => DueDates.Receipts(shipment, received, lot => names.GetValueOrDefault(lot.LotId, ""), habits)),
            .. parts.SelectMany(shipment => BeforeReceipt(shipment, contracts, received, names, habits, today)),
            .. await ArrivedAsync(contracts, parts, arrivals, names, claims, habits, today, cancellationToken),
        ];
        return seal.IsEmpty ? lines : lines.Where(line => !Sealed(line, seal, contracts, parts, arrivals));
    }

    private static IEnumerable<DueLine> BeforeReceipt(Shipment shipment, List<Contract> contracts, HashSet<Id<ShipmentLot>> received, Dictionary<Id<Lot>, string> names, DueHabits habits, DateOnly today) =>
        from lot in shipment.Lots
        where !received.Contains(lot.Id)
        from contract in contracts
        where contract.Id == lot.ContractId
        from line in DueDates.BeforeReceipt(lot, names.GetValueOrDefault(lot.LotId, ""), shipment, contract.Terms.Form, today, habits)
        select line;

    private async Task<IEnumerable<DueLine>> ArrivedAsync(
        List<Contract> contracts, IReadOnlyList<Shipment> parts, IReadOnlyList<Arrival> arrivals, Dictionary<Id<Lot>, string> names, IReadOnlyList<Claim> claims, DueHabits habits, DateOnly today, CancellationToken cancellationToken)
    {
        var drawn = arrivals.Select(arrival => arrival.ArrivalSampleId).OfType<Id<Sample>>().ToList();
        var cupped = (await db.SampleResults.AsNoTracking().Where(result => drawn.Contains(result.SampleId)).Select(result => result.SampleId).ToListAsync(cancellationToken)).ToHashSet();
        return arrivals.SelectMany(arrival =>
        {
            var shipment = parts.First(one => one.Id == arrival.ShipmentId);
            var lot = names.GetValueOrDefault(arrival.LotId, "");
            var contract = contracts.Find(one => shipment.Lots.Any(part => part.Id == arrival.ShipmentLotId && part.ContractId == one.Id));
            IEnumerable<DueLine> cup = arrival.ArrivalSampleId is { } sample && cupped.Contains(sample) ? [] : [DueDates.Cupping(arrival, lot, habits)];
            return contract is null ? cup : cup.Concat(DueDates.Claims(arrival, shipment, contract.Terms.Form, [.. claims.Where(claim => claim.ArrivalId == arrival.Id)], lot, today, habits));
        });
    }

    /// <summary>A line names a coffee: nothing of a contract, shipment or arrival with a sealed lot is told, nor of one whose lots are not known here.</summary>
    private static bool Sealed(DueLine line, Seal seal, List<Contract> contracts, IReadOnlyList<Shipment> parts, IReadOnlyList<Arrival> arrivals)
    {
        IEnumerable<Id<Lot>> lots =
        [
            .. contracts.Where(contract => contract.Id.Value == line.RecordId).SelectMany(contract => contract.Lots).Select(lot => lot.LotId),
            .. parts.Where(shipment => shipment.Id.Value == line.RecordId).SelectMany(shipment => shipment.Lots).Select(lot => lot.LotId),
            .. parts.SelectMany(shipment => shipment.Lots).Where(lot => lot.Id.Value == line.RecordId).Select(lot => lot.LotId),
            .. arrivals.Where(arrival => arrival.Id.Value == line.RecordId).Select(arrival => arrival.LotId),
        ];
        var known = lots.ToList();
        return known.Count == 0 || known.Exists(lot => seal.Covers(lot.Value));
    }
}
