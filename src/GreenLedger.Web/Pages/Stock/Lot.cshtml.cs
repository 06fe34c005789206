using GreenLedger.Data;
using GreenLedger.Data.Stock;
using GreenLedger.Domain;
using GreenLedger.Domain.Stock;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using GreenLedger.Web.Stock;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Pages.Stock;

/// <summary>Where a lot lies, what is reserved of it, and every movement of it.</summary>
public sealed class LotModel(LedgerContext db, StockQuery query, StockActs acts, PurposeQuery purposes, HouseZone house) : StockLotPage(db, query, house)
{
    public IReadOnlyList<MovementRow> Movements { get; private set; } = [];

    /// <summary>What is used of it in a week; null where none is in stock.</summary>
    public LotUseRow? Use { get; private set; }

    public IReadOnlyList<ReservationRow> Reservations { get; private set; } = [];

    public async Task<IActionResult> OnPostFreeAsync(Id<Reservation> reservation, CancellationToken cancellationToken) =>
        await acts.FreeAsync(reservation, User.Person(), cancellationToken) is { } free
            ? await SaveAsync($"{Display.Figures.ExactWeight(free.Weight, User.ShowsPounds())} are no longer reserved.", cancellationToken)
            : NotFound();

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        await base.LoadAsync(cancellationToken);
        Movements = await Query.MovementsAsync(Id, cancellationToken);
        Use = (await purposes.LotsAsync(Today, cancellationToken)).FirstOrDefault(row => row.LotId == Id);
        Reservations = await Query.ReservationsAsync(Id, cancellationToken);
    }
}
