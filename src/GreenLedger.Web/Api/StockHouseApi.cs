using GreenLedger.Data;
using GreenLedger.Data.Stock;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Stock;
using GreenLedger.Web.Display;
using GreenLedger.Web.Stock;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Api;

/// <summary>Where the house keeps stock, by which habits, and how it values it.</summary>
internal static class StockHouseApi
{
    public static void MapStockHouseApi(this IEndpointRouteBuilder stock)
    {
        stock.MapGet("/warehouses", WarehousesAsync).WithName("ListWarehouses").WithSummary("The warehouses of the house");
        stock.MapPost("/warehouses", NameAsync).WithName("AddWarehouse").WithSummary("Names a warehouse");
        stock.MapPut("/warehouses/{id}", CallAsync).WithName("RenameWarehouse").WithSummary("Gives a warehouse another name");
        stock.MapGet("/habits", HabitsAsync).WithName("ReadStockHabits").WithSummary("By which habits stock is kept, watched and valued");
        stock.MapPut("/habits", KeepAsync).WithName("SetStockHabits").WithSummary("Keeps and watches stock by these habits from now on");
        stock.MapGet("/calendar", CalendarAsync).WithName("ReadHarvestCalendar").WithSummary("Harvests and shipment windows of the origins, twelve months from the present one")
            .WithDescription("With `purposeId` only origins that could serve that purpose. Harvest months are set under /api/origins/countries/{country}/harvest, how long after them coffee ships under /api/stock/habits; both are indicative.");
        stock.MapPost("/valuations", ValueAsync).WithName("SetValuation").WithSummary("Values stock by this method from a day on, never before what is valued already");
    }

    private static async Task<Ok<List<WarehouseReply>>> WarehousesAsync(LedgerContext db, CancellationToken cancellationToken)
    {
        var warehouses = await db.Warehouses.AsNoTracking().OrderBy(one => one.Name).ToListAsync(cancellationToken);
        return TypedResults.Ok(warehouses.ConvertAll(one => new WarehouseReply(one.Id.Value, one.Name)));
    }

    private static async Task<Ok<WarehouseReply>> NameAsync(WarehouseRequest request, LedgerContext db, WarehouseActs acts, CancellationToken cancellationToken)
    {
        var warehouse = await acts.NameAsync(request.Name, cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok(new WarehouseReply(warehouse.Id.Value, warehouse.Name));
    }

    private static async Task<Results<Ok<WarehouseReply>, NotFound>> CallAsync(Id<Warehouse> id, WarehouseRequest request, LedgerContext db, WarehouseActs acts, CancellationToken cancellationToken)
    {
        if (await db.Warehouses.SingleOrDefaultAsync(one => one.Id == id, cancellationToken) is not { } warehouse)
        {
            return TypedResults.NotFound();
        }

        await acts.CallAsync(warehouse, request.Name, cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok(new WarehouseReply(warehouse.Id.Value, warehouse.Name));
    }

    private static async Task<Results<Ok<List<OriginYearReply>>, NotFound>> CalendarAsync(LedgerContext db, FillingOriginsQuery filling, HouseZone house, CancellationToken cancellationToken, Guid? purposeId = null)
    {
        var purpose = purposeId is { } id ? await db.Purposes.AsNoTracking().Whole().SingleOrDefaultAsync(one => one.Id == new Id<Purpose>(id), cancellationToken) : null;
        if (purposeId is not null && purpose is null)
        {
            return TypedResults.NotFound();
        }

        var origins = purpose is null ? await db.Countries.AsNoTracking().OrderBy(country => country.Name).ToListAsync(cancellationToken) : await filling.ListAsync(purpose, cancellationToken);
        var (today, habits) = (house.Today, await db.StockHabits.AsNoTracking().OfHouseAsync(cancellationToken));
        return TypedResults.Ok(HarvestCalendar.Of(origins, today, habits).Select(origin => OriginYearReply.Of(origin, today)).ToList());
    }

    private static async Task<Ok<StockHabitsReply>> HabitsAsync(LedgerContext db, CancellationToken cancellationToken) =>
        TypedResults.Ok(StockHabitsReply.Of(await db.StockHabits.AsNoTracking().Whole().OfHouseAsync(cancellationToken)));

    private static async Task<Ok<StockHabitsReply>> KeepAsync(StockHabitsRequest request, LedgerContext db, CancellationToken cancellationToken)
    {
        Rule.Require(request.RoastLossPercent is >= 0m and <= 50m, "The roast loss lies between 0 and 50 %.", nameof(request.RoastLossPercent));
        Rule.Require(request.MoistureDriftPoints is > 0m and <= 10m, "Moisture may move by more than 0 and at most 10 percentage points.", nameof(request.MoistureDriftPoints));
        Rule.Require(request.DoseGrams is > 0m and <= 1_000m, "A cup holds more than 0 g and at most 1,000 g of roasted coffee.", nameof(request.DoseGrams));
        var habits = await OpenAsync(db, cancellationToken);
        habits.Keep(request.CountNeedsSecondPerson, request.UseWeeks, request.LeadDays, request.LeadSpreadDays, request.SafetyFactor, Percent.Of(request.RoastLossPercent), Weight.FromGrams(request.DoseGrams));
        habits.Expect(request.WayDays, request.ShipsAfterMonths, request.ShipsUntilMonths);
        habits.Watch(request.PastCropMonths, Percent.Of(request.MoistureDriftPoints));
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok(StockHabitsReply.Of(habits));
    }

    private static async Task<Ok<StockHabitsReply>> ValueAsync(ValuationRequest request, LedgerContext db, HouseZone house, CancellationToken cancellationToken)
    {
        var habits = await OpenAsync(db, cancellationToken);
        habits.Value(request.Method, request.From, house.Today);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok(StockHabitsReply.Of(habits));
    }

    private static async Task<StockHabits> OpenAsync(LedgerContext db, CancellationToken cancellationToken)
    {
        var habits = await db.StockHabits.Whole().StatedAsync(cancellationToken);
        if (habits is null)
        {
            habits = new StockHabits();
            db.Add(habits);
        }

        return habits;
    }

    internal sealed record WarehouseRequest(string Name);

    internal sealed record ValuationRequest(ValuationMethod Method, DateOnly From);

    /// <summary>What happens in an origin in one month, 1 to 12.</summary>
    internal sealed record OriginMonthReply(int Year, int Month, bool IsHarvest, bool Ships);

    internal sealed record OriginYearReply(string Code, string Name, IReadOnlyList<OriginMonthReply> Months)
    {
        public static OriginYearReply Of(OriginYear origin, DateOnly first) => new(
            origin.Code, origin.Name, [.. origin.Months.Select((month, ahead) => new OriginMonthReply(first.AddMonths(ahead).Year, first.AddMonths(ahead).Month, month.IsHarvest, month.Ships))]);
    }

    internal sealed record StockHabitsRequest(
        bool CountNeedsSecondPerson, int UseWeeks, int LeadDays, int LeadSpreadDays, decimal SafetyFactor, decimal RoastLossPercent, decimal DoseGrams,
        int WayDays, int ShipsAfterMonths, int ShipsUntilMonths, int PastCropMonths, decimal MoistureDriftPoints);

    internal sealed record StockHabitsReply(StockHabitsRequest Habits, IReadOnlyList<ValuationRequest> Valuations)
    {
        public static StockHabitsReply Of(StockHabits habits) => new(
            new StockHabitsRequest(
                habits.CountNeedsSecondPerson, habits.UseWeeks, habits.LeadDays, habits.LeadSpreadDays, habits.SafetyFactor, habits.RoastLoss.Points, habits.Dose.Grams,
                habits.WayDays, habits.ShipsAfterMonths, habits.ShipsUntilMonths, habits.PastCropMonths, habits.MoistureDrift.Points),
            [.. habits.Valuations.OrderBy(one => one.From).Select(one => new ValuationRequest(one.Method, one.From))]);
    }
}
