using GreenLedger.Data.Offers;
using GreenLedger.Data.Origins;
using GreenLedger.Data.People;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Offers.Reading;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Tests.Offers;

/// <summary>A ledger with the origins' reference data and one buyer, and a small invented list to load into it.</summary>
internal static class ListHouse
{
    internal static readonly DateTimeOffset Now = new(2026, 11, 25, 9, 0, 0, TimeSpan.Zero);
    internal static readonly DateOnly Today = new(2026, 11, 25);
    internal static readonly Person Buyer = new("Tilda Brand", Role.Buyer);

    /// <summary>Four rows of an invented list: three offers and one with a score that cannot be.</summary>
    internal static readonly string[][] List =
    [
        ["Ref", "Country", "Farm", "Process", "Score", "Bags", "kg/bag", "USD/kg", "Certificates"],
        ["A-1", "Kenya", "Kiamati", "washed", "87.5", "40", "60", "9.85", "organic, fairtrade"],
        ["A-2", "Kenya", "Kiamati", "natural", "86", "10", "60", "8.40", ""],
        ["A-3", "Peru", "Alto Verde", "moon dried", "85.25", "12", "69", "7.10", ""],
        ["A-4", "Peru", "Alto Verde", "washed", "186", "12", "69", "7.10", ""],
    ];

    public static async Task<Ledger> NewAsync(Ledgers ledgers, Engine engine)
    {
        var ledger = await ledgers.NewAsync(engine);
        await using var db = ledger.Open();
        await OriginsReference.FillAsync(db, default);
        db.People.Add(Buyer);
        await db.SaveChangesAsync();
        return ledger;
    }

    public static async Task<(ListOutcome Outcome, bool Stored)> LoadAsync(
        Ledger ledger, string[][] rows, DateOnly? receivedOn = null, Func<OfferMapping, OfferMapping>? change = null, string fileName = "list.csv")
    {
        await using var db = ledger.Open(new Who(() => Buyer.Id));
        var store = new ListStore(db);
        var reference = await store.ReferenceAsync(Today, default);
        var look = ListLook.Of(Lines(rows), fileName);
        var sender = await store.SenderAsync("Nordhafen Rohkaffee", look, reference, default);
        var mapping = await store.MappingAsync(sender, look, reference, default);
        mapping = change?.Invoke(mapping) ?? mapping;
        var file = new StoredFile(fileName, "text/csv", System.Text.Encoding.UTF8.GetBytes(string.Join('\n', rows.Select(row => string.Join(';', row)))), Buyer.Id, Now);
        await using var transaction = await store.BeginAsync(sender, default);
        var theCase = await store.CaseAsync(sender, file, mapping, receivedOn ?? Today, Buyer.Id, Now, default);
        var outcome = OfferList.From(ListReading.Of(Lines(rows), mapping, reference), theCase);
        var stored = await store.SaveAsync(outcome, theCase, sender, default);
        await transaction.CommitAsync();
        return (outcome, stored);
    }

    public static IEnumerable<OfferLine> Lines(string[][] rows) =>
        rows.Select((row, at) => new OfferLine(at + 1, [.. row.Select(text => new Cell(text))]));

    /// <summary>Every row of every business table as text.</summary>
    public static async Task<string> RowsAsync(Ledger ledger)
    {
        await using var db = ledger.Open();
        var rows = new List<object>();
        rows.AddRange(await db.Suppliers.AsNoTracking().ToListAsync());
        rows.AddRange(await db.SupplierMappings.AsNoTracking().ToListAsync());
        rows.AddRange(await db.Producers.AsNoTracking().ToListAsync());
        rows.AddRange(await db.Lots.AsNoTracking().ToListAsync());
        rows.AddRange(await db.Offers.AsNoTracking().ToListAsync());
        rows.AddRange(await db.OfferPrices.AsNoTracking().ToListAsync());
        rows.AddRange(await db.OfferLists.AsNoTracking().ToListAsync());
        rows.AddRange(await db.SetAsideRows.AsNoTracking().ToListAsync());
        rows.AddRange(await db.StoredFiles.AsNoTracking().ToListAsync());
        return string.Join('\n', rows.Select(row => row.GetType().Name + System.Text.Json.JsonSerializer.Serialize(row, row.GetType())).Order());
    }
}
