using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Stock;
using GreenLedger.Web.People;
using GreenLedger.Web.Tests.Arrivals;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using UglyToad.PdfPig;

namespace GreenLedger.Web.Tests.Stock;

public sealed class StockPagesTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task An_arrival_comes_into_stock_once_and_leaves_in_part()
    {
        var (arrived, lot, warehouse) = await FillAsync();
        var buyer = await house.BrowserAsync(Role.Buyer);

        Assert.Contains("Take in", (await buyer.ReadAsync("/Stock")).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        var taken = await buyer.SendFormAsync($"/Stock/Receive/{arrived.Arrival}", new Dictionary<string, string> { ["Input.WarehouseId"] = $"{warehouse}", ["Input.On"] = "2026-11-03" });
        var again = await buyer.SendFormAsync($"/Stock/Receive/{arrived.Arrival}", new Dictionary<string, string> { ["Input.WarehouseId"] = $"{warehouse}", ["Input.On"] = "2026-11-03" });
        var released = await buyer.SendFormAsync($"/Stock/Take/{lot}", new Dictionary<string, string> { ["Input.Kind"] = "Release", ["Input.WarehouseId"] = $"{warehouse}", ["Input.On"] = "2026-11-05", ["Input.Bags"] = "4", ["Input.WeighedKg"] = "274.3", ["Input.Document"] = "R-118" });

        Assert.Equal(HttpStatusCode.Redirect, taken.StatusCode);
        Assert.Contains("in stock already", (await TestBrowser.PageAsync(again)).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Redirect, released.StatusCode);
        // Handbook, trade 8 example G: 18,790 kg landed of 275 bags and 18,975 kg shipped, 274 bags received.
        var text = (await buyer.ReadAsync($"/Stock/Lot/{lot}")).QuerySelector("main")!.TextContent;
        Assert.Contains("18,515.7 kg", text, StringComparison.Ordinal);
        Assert.Contains("R-118", text, StringComparison.Ordinal);
        Assert.Equal(270, await house.FromLedgerAsync(db => db.Holdings.Where(one => one.LotId == lot).Select(one => one.Bags).SingleAsync(Stop)));
    }

    [Fact]
    public async Task More_than_is_there_is_refused_with_what_was_typed_kept()
    {
        var (_, lot, warehouse) = await FillAsync();
        var buyer = await house.BrowserAsync(Role.Buyer);
        await OpenAsync(buyer, lot, warehouse, 10, 690m);

        var refused = await buyer.SendFormAsync($"/Stock/Take/{lot}", new Dictionary<string, string> { ["Input.Kind"] = "Sale", ["Input.WarehouseId"] = $"{warehouse}", ["Input.On"] = "2026-11-25", ["Input.Bags"] = "2", ["Input.WeighedKg"] = "700" });

        var page = await TestBrowser.PageAsync(refused);
        Assert.Contains("Only 690 kg are here", page.QuerySelector("#Input_WeighedKg_error")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("700", page.QuerySelector("#Input_WeighedKg")!.GetAttribute("value"));
        Assert.Equal(1, await house.FromLedgerAsync(db => db.Movements.CountAsync(one => one.LotId == lot, Stop)));
    }

    [Fact]
    public async Task What_is_reserved_stays_until_it_is_let_go()
    {
        var (_, lot, warehouse) = await FillAsync();
        var buyer = await house.BrowserAsync(Role.Buyer);
        await OpenAsync(buyer, lot, warehouse, 10, 690m);

        await buyer.SendFormAsync($"/Stock/Reserve/{lot}", new Dictionary<string, string> { ["Input.WarehouseId"] = $"{warehouse}", ["Input.WeightKg"] = "600", ["Input.Use"] = "winter espresso" });
        var refused = await buyer.SendFormAsync($"/Stock/Take/{lot}", new Dictionary<string, string> { ["Input.Kind"] = "Release", ["Input.WarehouseId"] = $"{warehouse}", ["Input.On"] = "2026-11-25", ["Input.Bags"] = "2", ["Input.WeighedKg"] = "138" });
        await buyer.SendFormAsync($"/Stock/Lot/{lot}", new Dictionary<string, string>(), "Free");
        var released = await buyer.SendFormAsync($"/Stock/Take/{lot}", new Dictionary<string, string> { ["Input.Kind"] = "Release", ["Input.WarehouseId"] = $"{warehouse}", ["Input.On"] = "2026-11-25", ["Input.Bags"] = "2", ["Input.WeighedKg"] = "138" });

        Assert.Contains("let the reserve go first", (await TestBrowser.PageAsync(refused)).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Redirect, released.StatusCode);
    }

    [Fact]
    public async Task No_more_comes_back_than_went_out_and_bags_hold_what_bags_hold()
    {
        var (_, lot, warehouse) = await FillAsync();
        var buyer = await house.BrowserAsync(Role.Buyer);
        await OpenAsync(buyer, lot, warehouse, 10, 690m);

        var heavy = await buyer.SendFormAsync($"/Stock/Take/{lot}", new Dictionary<string, string> { ["Input.Kind"] = "Sale", ["Input.WarehouseId"] = $"{warehouse}", ["Input.On"] = "2026-11-25", ["Input.Bags"] = "1", ["Input.WeighedKg"] = "500" });
        await buyer.SendFormAsync($"/Stock/Take/{lot}", new Dictionary<string, string> { ["Input.Kind"] = "Sale", ["Input.WarehouseId"] = $"{warehouse}", ["Input.On"] = "2026-11-25", ["Input.Bags"] = "2", ["Input.WeighedKg"] = "138" });
        var more = await buyer.SendFormAsync($"/Stock/Add/{lot}", Back("138.001"));
        var all = await buyer.SendFormAsync($"/Stock/Add/{lot}", Back("138"));
        var again = await buyer.SendFormAsync($"/Stock/Add/{lot}", Back("1"));

        Assert.Contains("do not hold 500 kg", (await TestBrowser.PageAsync(heavy)).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("Only 138 kg of this lot were sold", (await TestBrowser.PageAsync(more)).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Redirect, all.StatusCode);
        Assert.Contains("Only 0 kg of this lot", (await TestBrowser.PageAsync(again)).QuerySelector("main")!.TextContent, StringComparison.Ordinal);

        Dictionary<string, string> Back(string kilograms) => new()
        {
            ["Input.Kind"] = "Return",
            ["Input.WarehouseId"] = $"{warehouse}",
            ["Input.On"] = "2026-11-25",
            ["Input.Bags"] = "2",
            ["Input.PackedKg"] = kilograms,
            ["Input.WeighedKg"] = kilograms,
            ["Input.Reason"] = "The customer sent it back",
        };
    }

    [Fact]
    public async Task A_script_keeps_the_house_of_the_stock()
    {
        using var script = await house.ScriptAsync(Role.Buyer);
        var name = $"Canal store {Guid.NewGuid():N}";

        var warehouse = (await (await script.PostAsJsonAsync("/api/stock/warehouses", new { name }, Stop)).Content.ReadFromJsonAsync<JsonElement>(Stop)).GetProperty("id").GetGuid();
        var twice = await script.PostAsJsonAsync("/api/stock/warehouses", new { name }, Stop);
        var called = await script.PutAsJsonAsync($"/api/stock/warehouses/{warehouse}", new { name = $"{name} 2" }, Stop);
        var habits = (await script.GetFromJsonAsync<JsonElement>("/api/stock/habits", Stop)).GetProperty("habits");
        var kept = await script.PutAsJsonAsync("/api/stock/habits", habits, Stop);
        var purpose = (await (await script.PostAsJsonAsync("/api/stock/purposes", new { name = $"Filter {name}", weeklyUseKg = 60 }, Stop)).Content.ReadFromJsonAsync<JsonElement>(Stop)).GetProperty("id").GetGuid();
        var changed = await script.PutAsJsonAsync($"/api/stock/purposes/{purpose}", new { name = $"Filter of {name}", weeklyUseKg = 70 }, Stop);
        await script.PostAsJsonAsync($"/api/stock/purposes/{purpose}/put-away", new { }, Stop);
        var left = await script.GetFromJsonAsync<JsonElement>("/api/stock/purposes", Stop);

        Assert.Contains("of that name already", await twice.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.OK, HttpStatusCode.OK), (called.StatusCode, kept.StatusCode, changed.StatusCode));
        Assert.DoesNotContain(purpose, left.EnumerateArray().Select(one => one.GetProperty("id").GetGuid()));
    }

    [Fact]
    public async Task A_transfer_is_taken_back_with_both_halves()
    {
        var (_, lot, warehouse) = await FillAsync();
        var buyer = await house.BrowserAsync(Role.Buyer);
        var other = await WarehouseAsync($"Rail store {Guid.NewGuid():N}");
        await OpenAsync(buyer, lot, warehouse, 10, 690m);
        await buyer.SendFormAsync($"/Stock/Transfer/{lot}", new Dictionary<string, string> { ["Input.WarehouseId"] = $"{warehouse}", ["Input.ToWarehouseId"] = $"{other}", ["Input.On"] = "2026-11-25", ["Input.Bags"] = "4", ["Input.WeighedKg"] = "276" });
        var left = await house.FromLedgerAsync(db => db.Movements.Where(one => one.LotId == lot && one.Kind == MovementKind.TransferOut).Select(one => one.Id).SingleAsync(Stop));

        var back = await buyer.SendFormAsync($"/Stock/Reverse/{left}", new Dictionary<string, string> { ["Input.On"] = "2026-11-25", ["Input.Reason"] = "Wrong warehouse" });

        Assert.Equal(HttpStatusCode.Redirect, back.StatusCode);
        var held = await house.FromLedgerAsync(db => db.Holdings.AsNoTracking().Where(one => one.LotId == lot).ToListAsync(Stop));
        Assert.Equal([0, 10], held.Select(one => one.Bags).Order());
        Assert.Equal(2, await house.FromLedgerAsync(db => db.Movements.CountAsync(one => one.LotId == lot && one.Kind == MovementKind.Reversal, Stop)));
    }

    [Fact]
    public async Task A_count_is_filled_and_a_second_person_approves_it()
    {
        var (_, lot, _) = await FillAsync();
        var buyer = await house.BrowserAsync(Role.Buyer);
        var store = await WarehouseAsync($"Count store {Guid.NewGuid():N}");
        await OpenAsync(buyer, lot, store, 10, 690m);
        var begun = await buyer.SendFormAsync("/Stock/Counts", new Dictionary<string, string> { ["Input.WarehouseId"] = $"{store}", ["Input.On"] = "2026-11-25" });
        var address = begun.Headers.Location!.OriginalString;

        await buyer.SendFormAsync(address, new Dictionary<string, string> { ["Input.Lines[0].Bags"] = "9", ["Input.Lines[0].WeighedKg"] = "621", ["Input.Lines[0].Reason"] = "One bag is missing" });
        var own = await buyer.SendFormAsync(address, new Dictionary<string, string>(), "Approve");
        var bare = await buyer.SendFormAsync(address, new Dictionary<string, string> { ["Input.Lines[0].Bags"] = "", ["Input.Lines[0].WeighedKg"] = "" });
        var other = await SecondBuyerAsync();
        var approved = await other.SendFormAsync(address, new Dictionary<string, string>(), "Approve");

        var refused = await TestBrowser.PageAsync(own);
        Assert.Contains("asks for a second person", refused.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(["9", "621", "One bag is missing"], Typed(refused));
        Assert.Contains("how many bags are there?", (await TestBrowser.PageAsync(bare)).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Redirect, approved.StatusCode);
        Assert.Equal(9, await house.FromLedgerAsync(db => db.Holdings.Where(one => one.LotId == lot && one.WarehouseId == store).Select(one => one.Bags).SingleAsync(Stop)));
    }

    [Fact]
    public async Task A_lot_that_lies_here_and_not_by_the_ledger_is_added_to_the_count_and_becomes_a_gain()
    {
        var (_, lot, _) = await FillAsync();
        var buyer = await house.BrowserAsync(Role.Buyer);
        var (store, elsewhere) = (await WarehouseAsync($"Found store {Guid.NewGuid():N}"), await WarehouseAsync($"Other store {Guid.NewGuid():N}"));
        await OpenAsync(buyer, lot, store, 10, 690m);
        var (found, also) = await house.FromLedgerAsync(async db =>
        {
            var lots = (Found: new Lot($"F-{Guid.NewGuid():N}"[..12], "Strayed"), Also: new Lot($"G-{Guid.NewGuid():N}"[..12], "Strayed too"));
            db.AddRange(lots.Found, lots.Also);
            await db.SaveChangesAsync(Stop);
            return lots;
        });
        await OpenAsync(buyer, found.Id, elsewhere, 20, 1_380m);
        var address = (await buyer.SendFormAsync("/Stock/Counts", new Dictionary<string, string> { ["Input.WarehouseId"] = $"{store}", ["Input.On"] = "2026-11-25" })).Headers.Location!.OriginalString;
        using var script = await house.ScriptAsync(Role.Buyer);

        var sought = await buyer.ReadAsync($"{address}?handler=Find&lot={found.Ref}");
        var counted = new Dictionary<string, string> { ["Input.Lines[0].Bags"] = "10", ["Input.Lines[0].WeighedKg"] = "690" };
        var refused = await TestBrowser.PageAsync(await buyer.SendFormAsync(address, new Dictionary<string, string>(counted) { ["Input.Lot"] = "NOSUCH", ["Input.Bags"] = "2", ["Input.WeighedKg"] = "136.1234" }, "Found"));
        var added = await buyer.SendFormAsync(address, new Dictionary<string, string>(counted) { ["Input.Lot"] = found.Ref.ToLowerInvariant(), ["Input.Bags"] = "2", ["Input.WeighedKg"] = "136.1234" }, "Found");
        var answer = await (await script.PostAsJsonAsync($"/api{address.Replace("/Stock/Count/", "/stock/counts/", StringComparison.Ordinal)}/found", new { lot = $"{also.Id}", bags = 0, weighedKg = 3.5m, reason = "Loose" }, Stop)).Content.ReadFromJsonAsync<JsonElement>(Stop);
        var page = (await buyer.ReadAsync(address)).QuerySelector("main")!.TextContent;
        var approved = await (await SecondBuyerAsync()).SendFormAsync(address, new Dictionary<string, string>(), "Approve");

        Assert.Equal(found.Ref, sought.QuerySelector("#Input_Lot")!.GetAttribute("value"));
        Assert.Contains("No lot has the reference NOSUCH", refused.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(("10", "136.1234"), (refused.QuerySelector("[name='Input.Lines[0].Bags']")!.GetAttribute("value"), refused.QuerySelector("#Input_WeighedKg")!.GetAttribute("value")));
        Assert.Equal(HttpStatusCode.Redirect, added.StatusCode);
        Assert.Equal(3, answer.GetProperty("lines").GetArrayLength());
        Assert.Contains("136.1234 kg", page, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Redirect, approved.StatusCode);
        var gains = await house.FromLedgerAsync(db => db.Movements.AsNoTracking().Where(one => one.WarehouseId == store && one.Kind == MovementKind.Gain).OrderByDescending(one => one.Weighed.Micrograms).ToListAsync(Stop));
        // By the papers of the other store a bag holds 69 kg; loose coffee counts as it was weighed.
        Assert.Equal([(found.Id, 2, 138m, 136.1234m), (also.Id, 0, 3.5m, 3.5m)], gains.Select(one => (one.LotId, one.Bags, one.Packed.Kilograms, one.Weighed.Kilograms)));
    }

    [Fact]
    public async Task A_label_opens_the_lots_line_of_the_open_count_and_else_its_stock()
    {
        var (_, lot, _) = await FillAsync();
        var (buyer, viewer) = (await house.BrowserAsync(Role.Buyer), await house.BrowserAsync(Role.Viewer));
        var store = await WarehouseAsync($"Label store {Guid.NewGuid():N}");
        await OpenAsync(buyer, lot, store, 10, 690m);

        var idle = await buyer.Client.GetAsync(new Uri($"/l/{lot}", UriKind.Relative), Stop);
        var count = (await buyer.SendFormAsync("/Stock/Counts", new Dictionary<string, string> { ["Input.WarehouseId"] = $"{store}", ["Input.On"] = "2026-11-25" })).Headers.Location!.OriginalString;
        var counting = await buyer.Client.GetAsync(new Uri($"/l/{lot}", UriKind.Relative), Stop);
        var looking = await viewer.Client.GetAsync(new Uri($"/l/{lot}", UriKind.Relative), Stop);
        var other = await buyer.ReadAsync($"/l/{Guid.NewGuid()}");
        var typed = await buyer.Client.GetAsync(new Uri($"{count}?handler=Find&lot={Uri.EscapeDataString($"http://ledger.example/l/{lot}")}", UriKind.Relative), Stop);
        var absent = await buyer.ReadAsync($"{count}?handler=Find&lot=NOSUCH");

        Assert.Equal(($"/Stock/Lot/{lot}", $"/Stock/Lot/{lot}"), (idle.Headers.Location!.OriginalString, looking.Headers.Location!.OriginalString));
        Assert.StartsWith("/Stock/CountLine/", counting.Headers.Location!.OriginalString, StringComparison.Ordinal);
        Assert.Equal(counting.Headers.Location, typed.Headers.Location);
        Assert.Contains("No lot has this label", other.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("No lot NOSUCH is on this count", absent.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Whoever_counts_a_lot_that_somebody_counted_meanwhile_is_told_so_and_may_save_again()
    {
        var (_, lot, _) = await FillAsync();
        var (one, two) = (await house.BrowserAsync(Role.Buyer), await SecondBuyerAsync());
        var store = await WarehouseAsync($"Shared store {Guid.NewGuid():N}");
        await OpenAsync(one, lot, store, 10, 690m);
        await one.SendFormAsync("/Stock/Counts", new Dictionary<string, string> { ["Input.WarehouseId"] = $"{store}", ["Input.On"] = "2026-11-25" });
        var line = (await one.Client.GetAsync(new Uri($"/l/{lot}", UriKind.Relative), Stop)).Headers.Location!.OriginalString;
        var opened = await two.ReadAsync(line);

        var first = await one.SendFormAsync(line, new Dictionary<string, string> { ["Input.Bags"] = "9", ["Input.WeighedKg"] = "621" });
        var late = await TestBrowser.PageAsync(await two.SendStandingAsync(opened, line, new Dictionary<string, string> { ["Input.Bags"] = "8", ["Input.WeighedKg"] = "552" }));
        var again = await two.SendStandingAsync(late, line, new Dictionary<string, string> { ["Input.Reason"] = "" });

        Assert.StartsWith("/Stock/Count/", first.Headers.Location!.OriginalString, StringComparison.Ordinal);
        Assert.Contains("Somebody wrote down 9 bags and 621 kg", late.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("8", late.QuerySelector("#Input_Bags")!.GetAttribute("value"));
        Assert.Equal(HttpStatusCode.Redirect, again.StatusCode);
        Assert.DoesNotContain("690", opened.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_count_is_printed_with_or_without_what_the_ledger_says_and_lots_get_labels()
    {
        var (_, lot, _) = await FillAsync();
        var buyer = await house.BrowserAsync(Role.Buyer);
        var store = await WarehouseAsync($"Paper store {Guid.NewGuid():N}");
        await OpenAsync(buyer, lot, store, 10, 687.345m);
        var count = (await buyer.SendFormAsync("/Stock/Counts", new Dictionary<string, string> { ["Input.WarehouseId"] = $"{store}", ["Input.On"] = "2026-11-25" })).Headers.Location!.OriginalString;
        var name = await house.FromLedgerAsync(db => db.Lots.Where(one => one.Id == lot).Select(one => one.Ref).SingleAsync(Stop));

        var blank = await WordsAsync(buyer, $"{count}?handler=Sheet");
        var book = await WordsAsync(buyer, $"{count}?handler=Sheet&book=true");
        var labels = await WordsAsync(buyer, $"/Stock/Labels?handler=Pdf&warehouse={store}&each=3&sheet=a4-3x7");
        var refused = await buyer.ReadAsync($"/Stock/Labels?handler=Pdf&warehouse={store}&each=3&sheet=a4-3x7&from=22");

        Assert.Contains(name, blank);
        Assert.DoesNotContain("687.345", blank);
        Assert.Contains("687.345", book);
        Assert.Equal(3, labels.Count(word => word == name));
        Assert.Contains("a place on it from 1 to 21", refused.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_script_counts_by_the_same_rules()
    {
        var (_, lot, _) = await FillAsync();
        var store = await WarehouseAsync($"Script store {Guid.NewGuid():N}");
        await OpenAsync(await house.BrowserAsync(Role.Buyer), lot, store, 10, 690m);
        using var script = await house.ScriptAsync(Role.Buyer);

        var begun = await (await script.PostAsJsonAsync("/api/stock/counts", new { warehouseId = store.Value, on = "2026-11-25" }, Stop)).Content.ReadFromJsonAsync<JsonElement>(Stop);
        var (count, line) = (begun.GetProperty("id").GetGuid(), begun.GetProperty("lines")[0].GetProperty("id").GetGuid());
        var early = await script.PostAsJsonAsync($"/api/stock/counts/{count}/approval", new { }, Stop);
        var written = await script.PutAsJsonAsync($"/api/stock/counts/{count}/lines/{line}", new { bags = 9, weighedKg = 621.5m, reason = "One is missing" }, Stop);
        var own = await script.PostAsJsonAsync($"/api/stock/counts/{count}/approval", new { }, Stop);
        var ended = await script.PostAsJsonAsync($"/api/stock/counts/{count}/end", new { reason = "Counted again on Monday" }, Stop);
        var all = await script.GetFromJsonAsync<JsonElement>("/api/stock/counts", Stop);

        Assert.Contains("1 of 1 lots are not counted yet", await early.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        Assert.Equal(-68.5m, (await written.Content.ReadFromJsonAsync<JsonElement>(Stop)).GetProperty("lines")[0].GetProperty("differenceKg").GetDecimal());
        Assert.Equal(HttpStatusCode.UnprocessableEntity, own.StatusCode);
        Assert.Equal("Counted again on Monday", (await ended.Content.ReadFromJsonAsync<JsonElement>(Stop)).GetProperty("givenUpBecause").GetString());
        Assert.Contains(count, all.EnumerateArray().Select(one => one.GetProperty("id").GetGuid()));
    }

    private static async Task<IReadOnlyList<string>> WordsAsync(TestBrowser buyer, string address)
    {
        using var pdf = PdfDocument.Open(await buyer.Client.GetByteArrayAsync(new Uri(address, UriKind.Relative), Stop));
        return [.. pdf.GetPages().SelectMany(page => page.GetWords()).Select(word => word.Text)];
    }

    [Fact]
    public async Task Two_who_count_at_once_are_shown_both_versions_and_may_save_again()
    {
        var (_, lot, _) = await FillAsync();
        var (one, two) = (await house.BrowserAsync(Role.Buyer), await SecondBuyerAsync());
        var store = await WarehouseAsync($"Busy store {Guid.NewGuid():N}");
        await OpenAsync(one, lot, store, 10, 690m);
        var address = (await one.SendFormAsync("/Stock/Counts", new Dictionary<string, string> { ["Input.WarehouseId"] = $"{store}", ["Input.On"] = "2026-11-25" })).Headers.Location!.OriginalString;
        var opened = await two.ReadAsync(address);
        await one.SendFormAsync(address, new Dictionary<string, string> { ["Input.Lines[0].Bags"] = "9", ["Input.Lines[0].WeighedKg"] = "621" });

        var late = await TestBrowser.PageAsync(await two.SendStandingAsync(opened, address, new Dictionary<string, string> { ["Input.Lines[0].Bags"] = "8", ["Input.Lines[0].WeighedKg"] = "552" }));
        var again = await two.SendStandingAsync(late, address, new Dictionary<string, string> { ["Input.Lines[0].Reason"] = "" });

        Assert.Contains("Somebody saved this record while you had it open", late.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(["8", "552", ""], Typed(late));
        Assert.Equal(HttpStatusCode.Redirect, again.StatusCode);
    }

    private async Task<TestBrowser> SecondBuyerAsync()
    {
        var email = $"{Guid.NewGuid():N}@sorrel-roasters.example";
        await using var scope = house.Services.CreateAsyncScope();
        await scope.ServiceProvider.GetRequiredService<Accounts>().AddAsync(new Person("Another buyer", Role.Buyer), email, HouseFixture.Password);
        var browser = house.Visitor();
        await browser.SignInAsync(email, HouseFixture.Password);
        return browser;
    }

    private static string[] Typed(AngleSharp.Html.Dom.IHtmlDocument page) =>
        [.. new[] { "Bags", "WeighedKg", "Reason" }.Select(field => page.QuerySelector($"[name='Input.Lines[0].{field}']")!.GetAttribute("value") ?? "")];

    [Fact]
    public async Task A_script_moves_stock_by_the_same_rules()
    {
        var (_, lot, warehouse) = await FillAsync();
        using var script = await house.ScriptAsync(Role.Buyer);

        var opened = await script.PostAsJsonAsync("/api/stock/movements", new { lotId = lot.Value, warehouseId = warehouse.Value, kind = "Opening", bags = 10, weighedKg = 685.5m, packedKg = 690m, on = "2026-11-20" }, Stop);
        var refused = await script.PostAsJsonAsync("/api/stock/movements", new { lotId = lot.Value, warehouseId = warehouse.Value, kind = "Release", bags = 1, weighedKg = 700m, on = "2026-11-21" }, Stop);
        var rows = await script.GetFromJsonAsync<JsonElement>($"/api/stock/lots/{lot}/movements", Stop);

        Assert.Equal(HttpStatusCode.OK, opened.StatusCode);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        Assert.Contains("Only 685.5 kg are here", await refused.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        Assert.Equal(1, rows.GetArrayLength());
    }

    [Fact]
    public async Task The_calculators_give_the_handbooks_figures()
    {
        using var script = await house.ScriptAsync(Role.Viewer);

        var shared = await script.PostAsJsonAsync("/api/stock/calculate/allocation", new
        {
            amount = 4218.75m,
            currency = "EUR",
            basis = "Weight",
            lots = new[] { new { name = "A", weightKg = 9000, value = 45000 }, new { name = "B", weightKg = 6000, value = 42000 }, new { name = "C", weightKg = 3975, value = 39750 } },
        }, Stop);
        var reorder = await script.PostAsJsonAsync("/api/stock/calculate/reorder", new { weeklyUseKg = 1200, useSpreadKg = 180, leadWeeks = 14, leadSpreadWeeks = 2, safetyFactor = 1.645m, availableKg = 8400 }, Stop);

        // Handbook, trade, check values 30, 71 and 72.
        var parts = (await shared.Content.ReadFromJsonAsync<JsonElement>(Stop)).GetProperty("parts").EnumerateArray().Select(part => part.GetProperty("part").GetProperty("amount").GetDecimal());
        Assert.Equal([2_000.99m, 1_333.99m, 883.77m], parts);
        var point = await reorder.Content.ReadFromJsonAsync<JsonElement>(Stop);
        Assert.Equal((7.0m, 20_900.5m, 349), (point.GetProperty("coverWeeks").GetDecimal(), Math.Round(point.GetProperty("reorderPointKg").GetDecimal(), 1), point.GetProperty("bags").GetInt32()));
    }

    [Fact]
    public async Task A_late_freight_bill_shows_on_the_lot_beside_its_value()
    {
        var (arrived, lot, warehouse) = await FillAsync();
        var buyer = await house.BrowserAsync(Role.Buyer);
        var shipment = await house.FromLedgerAsync(db => db.Arrivals.Where(one => one.Id == arrived.Arrival).Select(one => one.ShipmentId).SingleAsync(Stop));
        await buyer.SendFormAsync($"/Stock/Receive/{arrived.Arrival}", new Dictionary<string, string> { ["Input.WarehouseId"] = $"{warehouse}", ["Input.On"] = "2026-11-03" });

        await buyer.SendFormAsync("/Costs/Post", Invoice($"lot:{lot}", "", "112740.00", "C-1"));
        var freight = await buyer.SendFormAsync("/Costs/Post", Invoice($"shipment:{shipment}", "Freight", "1879.00", "F-9"));
        var wrong = await buyer.SendFormAsync("/Costs/Post", new Dictionary<string, string>(Invoice($"lot:{lot}", "", "1", "X")) { ["Input.Amount"] = "0" });

        Assert.Equal(HttpStatusCode.Redirect, freight.StatusCode);
        Assert.Contains("above zero", (await TestBrowser.PageAsync(wrong)).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        // Worked by hand over 18,790 kg landed: 6.00 EUR/kg of coffee and 0.10 EUR/kg of freight.
        var text = (await buyer.ReadAsync($"/Costs/Lot/{lot}")).QuerySelector("main")!.TextContent;
        Assert.Contains("114,619.00 EUR, 6.1000 EUR/kg", text, StringComparison.Ordinal);
        Assert.Contains("F-9", text, StringComparison.Ordinal);
        await TheBillOpensToItsLotAsync(buyer, lot);
        Assert.Contains("114,619.00 EUR", (await buyer.ReadAsync("/Costs/Value?on=2026-11-26")).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
    }

    private async Task TheBillOpensToItsLotAsync(TestBrowser buyer, Id<Lot> lot)
    {
        var bill = await house.FromLedgerAsync(db => db.CostPostings.Where(one => one.Document == "F-9").OrderByDescending(one => one.Id).Select(one => one.Id).FirstAsync(Stop));
        var page = (await buyer.ReadAsync($"/Costs/Posting/{bill}")).QuerySelector("main")!;
        using var script = await house.ScriptAsync(Role.Buyer);
        var reply = await script.GetFromJsonAsync<JsonElement>($"/api/costs/postings/{bill}", Stop);
        var parts = (await script.GetFromJsonAsync<JsonElement>($"/api/costs/lots/{lot}", Stop)).GetProperty("parts");

        Assert.NotNull(page.QuerySelector($"a[href='/Costs/Lot/{lot}']"));
        Assert.NotNull(page.QuerySelector("a[href^='/Shipments/Shipment/']"));
        Assert.Equal(1_879m, reply.GetProperty("shares")[0].GetProperty("part").GetProperty("amount").GetDecimal());
        Assert.Equal(2, parts.GetArrayLength());
    }

    private static Dictionary<string, string> Invoice(string on, string stage, string amount, string document) => new()
    {
        ["Input.OnWhat"] = on,
        ["Input.Stage"] = stage,
        ["Input.Amount"] = amount,
        ["Input.Currency"] = "EUR",
        ["Input.On"] = "2026-11-20",
        ["Input.Document"] = document,
        ["Input.From"] = "Weald Freight",
    };

    private static async Task OpenAsync(TestBrowser buyer, Id<Lot> lot, Id<Warehouse> warehouse, int bags, decimal kilograms)
    {
        var opened = await buyer.SendFormAsync($"/Stock/Add/{lot}", new Dictionary<string, string>
        {
            ["Input.Kind"] = "Opening",
            ["Input.WarehouseId"] = $"{warehouse}",
            ["Input.On"] = "2026-11-20",
            ["Input.Bags"] = $"{bags}",
            ["Input.PackedKg"] = $"{kilograms}",
            ["Input.WeighedKg"] = $"{kilograms}",
        });
        Assert.Equal(HttpStatusCode.Redirect, opened.StatusCode);
    }

    private async Task<(ArrivedLot Arrived, Id<Lot> Lot, Id<Warehouse> Warehouse)> FillAsync()
    {
        var arrived = await ArrivedLot.FillAsync(house);
        var lot = await house.FromLedgerAsync(db => db.Arrivals.Where(one => one.Id == arrived.Arrival).Select(one => one.LotId).SingleAsync(Stop));
        return (arrived, lot, await WarehouseAsync($"Quay store {Guid.NewGuid():N}"));
    }

    private Task<Id<Warehouse>> WarehouseAsync(string name) => house.FromLedgerAsync(async db =>
    {
        var warehouse = new Warehouse(name);
        db.Add(warehouse);
        await db.SaveChangesAsync(Stop);
        return warehouse.Id;
    });
}
