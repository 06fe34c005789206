using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Stock;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Stock;

/// <summary>A purpose with its stock, its use and its cover.</summary>
public sealed record PurposeRow(Purpose Purpose, PurposeCover Cover);

/// <summary>A lot in stock with its use of a week and the weeks that what is available lasts.</summary>
/// <param name="Cover">Null where nothing of it was released.</param>
public sealed record LotUseRow(Id<Lot> LotId, string Ref, string Name, Weight Available, WeeklyUse Use, decimal? Cover);

/// <summary>Reads what purposes have, use and expect.</summary>
public sealed class PurposeQuery(LedgerContext db, ExpectedQuery expected)
{
    /// <summary>The purposes in use, by name.</summary>
    public async Task<IReadOnlyList<PurposeRow>> ListAsync(DateOnly today, CancellationToken cancellationToken)
    {
        var habits = await db.StockHabits.AsNoTracking().OfHouseAsync(cancellationToken);
        var purposes = await db.Purposes.AsNoTracking().Whole().InUse().ToListAsync(cancellationToken);
        var lots = purposes.SelectMany(purpose => purpose.Lots.Select(lot => lot.LotId)).Distinct().ToList();
        var facts = new PurposeFacts(
            purposes,
            await HeldAsync(lots, cancellationToken),
            await expected.ListAsync(lots, habits.WayDays, today, cancellationToken),
            await ReleasesAsync(today, habits.UseWeeks, cancellationToken));
        return [.. purposes.Select(purpose => new PurposeRow(purpose, PurposeCover.Of(facts.StockOf(purpose, today, habits.UseWeeks), habits)))];
    }

    /// <summary>Every lot in stock, what is used of it in a week and how long it lasts; by reference.</summary>
    public async Task<IReadOnlyList<LotUseRow>> LotsAsync(DateOnly today, CancellationToken cancellationToken)
    {
        var habits = await db.StockHabits.AsNoTracking().OfHouseAsync(cancellationToken);
        var rows = await db.Holdings.AsNoTracking().Where(holding => holding.Weighed.Micrograms > 0)
            .GroupBy(holding => holding.LotId)
            .Select(group => new { LotId = group.Key, Available = group.Sum(one => one.Weighed.Micrograms - one.Reserved.Micrograms) })
            .Join(db.Lots, row => row.LotId, lot => lot.Id, (row, lot) => new { row.LotId, row.Available, lot.Ref, lot.Name })
            .OrderBy(row => row.Ref).ToListAsync(cancellationToken);
        var releases = (await ReleasesAsync(today, habits.UseWeeks, cancellationToken)).ToLookup(release => release.LotId, release => release.What);
        return
        [
            .. rows.Select(row =>
            {
                var (available, use) = (new Weight(row.Available), WeeklyUse.Of(releases[row.LotId], today, habits.UseWeeks));
                return new LotUseRow(row.LotId, row.Ref, row.Name, available, use, StockCover.Weeks(available, use.Mean));
            }),
        ];
    }

    private async Task<IReadOnlyList<HeldLot>> HeldAsync(List<Id<Lot>> lots, CancellationToken cancellationToken)
    {
        var held = await db.Holdings.AsNoTracking().Where(holding => lots.Contains(holding.LotId)).ToListAsync(cancellationToken);
        var ids = held.ConvertAll(holding => holding.Id);
        var kept = await db.Reservations.AsNoTracking().Where(reservation => reservation.EndedAt == null && ids.Contains(reservation.HoldingId)).ToListAsync(cancellationToken);
        return [.. held.Select(holding => new HeldLot(holding.LotId, holding.Weighed, [.. kept.Where(one => one.HoldingId == holding.Id)]))];
    }

    /// <summary>Standing releases of the weeks that are averaged, and one more so that a long service is told from a short one.</summary>
    private async Task<IReadOnlyList<LotRelease>> ReleasesAsync(DateOnly today, int weeks, CancellationToken cancellationToken)
    {
        var since = today.AddDays(-7 * (weeks + 1));
        var rows = await db.Movements.AsNoTracking()
            .Where(movement => movement.Kind == MovementKind.Release && movement.On > since && movement.On <= today && !db.Movements.Any(back => back.ReversesId == movement.Id))
            .Select(movement => new { movement.LotId, movement.PurposeId, movement.On, movement.Weighed }).ToListAsync(cancellationToken);
        return rows.ConvertAll(row => new LotRelease(row.LotId, row.PurposeId, new Released(row.On, Weight.Zero - row.Weighed)));
    }
}

internal sealed record HeldLot(Id<Lot> LotId, Weight Weighed, IReadOnlyList<Reservation> Reserved);

internal sealed record LotRelease(Id<Lot> LotId, Id<Purpose>? For, Released What);

/// <summary>
/// Shares stock and use among purposes. A lot that serves several is shared by their planned use of a week, evenly where none is planned. A release
/// that names no purpose counts for the one that its lot serves, and for none where it serves several.
/// </summary>
internal sealed class PurposeFacts(IReadOnlyList<Purpose> purposes, IReadOnlyList<HeldLot> held, ILookup<Id<Lot>, Expected> coming, IReadOnlyList<LotRelease> releases)
{
    private readonly ILookup<Id<Lot>, Purpose> _serves = purposes
        .SelectMany(purpose => purpose.Lots.Select(lot => (lot.LotId, Purpose: purpose))).ToLookup(pair => pair.LotId, pair => pair.Purpose);

    public PurposeStock StockOf(Purpose purpose, DateOnly today, int weeks)
    {
        var (onHand, reserved) = (Weight.Zero, Weight.Zero);
        foreach (var lot in held.Where(lot => _serves[lot.LotId].Contains(purpose)))
        {
            var own = Sum(lot.Reserved.Where(one => one.PurposeId == purpose.Id));
            var others = Sum(lot.Reserved.Where(one => one.PurposeId != purpose.Id));
            var free = ShareOf(purpose, lot.LotId, lot.Weighed - own - others);
            (onHand, reserved) = (onHand + free + own + others, reserved + others);
        }

        return new PurposeStock(
            onHand,
            reserved,
            [.. purpose.Lots.SelectMany(lot => coming[lot.LotId].Select(one => one with { Weight = ShareOf(purpose, lot.LotId, one.Weight) })).OrderBy(one => one.On)],
            WeeklyUse.Of(releases.Where(release => IsFor(release, purpose)).Select(release => release.What), today, weeks),
            purpose.WeeklyUse);
    }

    private bool IsFor(LotRelease release, Purpose purpose) => release.For is { } named
        ? named == purpose.Id
        : _serves[release.LotId].Take(2).ToList() is [var only] && only == purpose;

    private Weight ShareOf(Purpose purpose, Id<Lot> lot, Weight weight)
    {
        var all = Sum(_serves[lot].Select(one => one.WeeklyUse));
        return all == Weight.Zero ? new Weight(weight.Micrograms / _serves[lot].Count()) : new Weight((long)((Int128)weight.Micrograms * purpose.WeeklyUse.Micrograms / all.Micrograms));
    }

    private static Weight Sum(IEnumerable<Reservation> reserved) => Sum(reserved.Select(one => one.Weight));

    private static Weight Sum(IEnumerable<Weight> weights) => weights.Aggregate(Weight.Zero, (sum, one) => sum + one);
}
