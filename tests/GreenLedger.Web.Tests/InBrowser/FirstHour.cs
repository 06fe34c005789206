using System.Globalization;
using Microsoft.Playwright;

namespace GreenLedger.Web.Tests.InBrowser;

/// <summary>The first hour of a buyer, step by step through the pages, as the guide tells it.</summary>
internal sealed class FirstHour(Window window, bool takesPictures)
{
    private readonly Forms _forms = new(window);

    private IPage Page => window.Page;

    public async Task OpenTheLedgerAsync()
    {
        await GoAsync("/Entrance/FirstAccount");
        await FillAsync("House", "Sorrel Roasters");
        await Page.Locator("[name='Input.Currency']").SelectOptionAsync("EUR");
        await FillAsync("Name", "Imke Adler");
        await FillAsync("Email", "imke@sorrel-roasters.example");
        await FillAsync("Password", HouseFixture.Password);
        await TakeAsync("open-the-ledger");
        await SendAsync("Open the ledger");
        await TakeAsync("first-page");
    }

    /// <summary>Freight of 0.116 USD a kg is the one leg that costs anything.</summary>
    public async Task SetUpARouteAsync()
    {
        await GoAsync("/Pricing/Route");
        await FillAsync("Name", "Buenaventura to Hamburg");
        await FillAsync("OriginCountry", "CO");
        await FillAsync("PortOfLoading", "Buenaventura / COBUN");
        await FillAsync("PortOfDestination", "Hamburg / DEHAM");
        await FillAsync("Warehouse", "Quay warehouse");
        await TakeAsync("route");
        var stages = await Page.Locator("[name$='.Stage']").AllAsync();
        for (var i = 0; i < stages.Count; i++)
        {
            var isFreight = await stages[i].GetAttributeAsync("value") == "Freight";
            await Page.Locator($"[name='Input.Legs[{i}].Way']").SelectOptionAsync(isFreight ? "PerKilogram" : "None");
            if (isFreight)
            {
                await FillAsync($"Legs[{i}].Figure", "0.116");
                await Page.Locator($"[name='Input.Legs[{i}].Currency']").SelectOptionAsync("USD");
            }
        }

        await TakeAsync("route-stages", "fieldset.leg:nth-of-type(6)");
        await SendAsync("Save the route");
    }

    public async Task TypeTheRateAsync()
    {
        await GoAsync("/Pricing/Rate");
        await Page.Locator("[name='Input.Currency']").SelectOptionAsync("USD");
        await FillAsync("On", DateTime.UtcNow.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
        await FillAsync("UnitsPerEuro", "1.16");
        await FillAsync("Source", "our bank");
        await TakeAsync("rate");
        await SendAsync("Save the rate");
    }

    public async Task WriteRulesAsync()
    {
        await GoAsync("/Choosing/EditRules");
        await FillAsync("Name", "House rules");
        await FillAsync("LeastScore", "82");
        await FillAsync("HighestCostPerKilogram", "12");
        await TakeAsync("rules");
        await SendAsync("Save");
    }

    /// <summary>Whatever day it is, the list is valid for another month.</summary>
    public async Task LoadTheListAsync(string file)
    {
        await GoAsync("/Offers/Import");
        await Page.Locator("[name='Input.File']").SetInputFilesAsync(file);
        await FillAsync("Supplier", "Sierra Clara Exportadores");
        await TakeAsync("load-a-list");
        await SendAsync("Look at the list");
        await FillAsync("ValidUntil", DateTime.UtcNow.AddDays(30).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
        await TakeAsync("columns");
        await SendAsync("Look at what it comes to");
        await TakeAsync("preview", "#outcome");
    }

    public Task StoreTheListAsync() => SendAsync("Store the list");

    public async Task ReceiveASampleAsync(string lot)
    {
        await GoAsync("/Samples/New");
        await FillAsync("Lot", lot);
        await FillAsync("WeightGrams", "500");
        await TakeAsync("sample");
        await SendAsync("Receive");
    }

    /// <summary>Lays out a table with every sample, and opens its key: which code stands for which lot.</summary>
    public async Task<Dictionary<string, string>> LayOutATableAsync(IReadOnlyList<string> lots)
    {
        await GoAsync("/Cupping/New");
        await FillAsync("Title", "Tuesday table");
        foreach (var box in await Page.Locator("[name='Input.Samples']").AllAsync())
        {
            await box.CheckAsync();
        }

        await SendAsync("Lay out");
        await TakeAsync("table");
        var table = Page.Url;
        await Page.Locator("main a", new PageLocatorOptions { HasTextString = "Key" }).First.ClickAsync();
        await SendAsync("Open the key");
        var rows = await Page.Locator("main tbody tr").AllInnerTextsAsync();
        var codes = await Page.Locator("main tbody tr th").AllInnerTextsAsync();
        await GoAsync(table);
        return lots.ToDictionary(lot => lot, lot => codes[rows.ToList().FindIndex(row => row.Contains(lot, StringComparison.Ordinal))]);
    }

    /// <summary>Seven marks alike and all cups good: 7 × mark + 30 points. Gives the total that the page computed while typing.</summary>
    public async Task<string> FillTheSheetAsync(string code, string mark)
    {
        var table = Page.Url;
        await Page.Locator(".blind-table a", new PageLocatorOptions { HasTextString = code }).ClickAsync();
        await Page.WaitForURLAsync(address => address.Contains("/" + code, StringComparison.Ordinal));
        foreach (var field in await Page.Locator("[data-mark]").AllAsync())
        {
            await field.FillAsync(mark);
        }

        foreach (var field in await Page.Locator("[data-good-cups]").AllAsync())
        {
            await field.FillAsync("5");
        }

        var typed = await Page.Locator("[data-total]").InnerTextAsync();
        await FillAsync("Descriptors", "plum, cocoa, black tea");
        await TakeAsync("sheet");
        await SendAsync("Hand in");
        await GoAsync(table);
        return typed;
    }

    public async Task CloseTheTableAsync()
    {
        Page.Dialog += async (_, dialog) => await dialog.AcceptAsync();
        await Page.Locator("main a", new PageLocatorOptions { HasTextString = "Close the session" }).ClickAsync();
        await SendAsync("Close and compute");
        await TakeAsync("result");
    }

    /// <summary>The references of the ranked lots, first first.</summary>
    public async Task<IReadOnlyList<string>> RankAsync()
    {
        await GoAsync("/Choosing");
        await Page.WaitForTimeoutAsync(takesPictures ? 1500 : 0);
        await TakeAsync("shortlist");
        await TakeAsync("ranking", ".shortlist");
        return await Page.Locator("#ranked .rank + th > a").AllInnerTextsAsync();
    }

    public async Task DecideOnAsync(string lot, string kilograms)
    {
        await Page.Locator("#ranked .rank + th > a", new PageLocatorOptions { HasTextString = lot }).ClickAsync();
        await Page.WaitForURLAsync(address => address.Contains("/Choosing/Decide", StringComparison.Ordinal));
        await Page.Locator("[name='Input.Outcome']").SelectOptionAsync("Buy");
        await FillAsync("QuantityKg", kilograms);
        await FillAsync("Note", "For the filter range.");
        await TakeAsync("decide");
        await SendAsync("Decide");
        await TakeAsync("decision");
    }

    /// <summary>Presses a link of the shortlist that hands over a file, and gives its name and its bytes.</summary>
    public Task<(string Name, byte[] Bytes)> TakeAlongAsync(string link) => _forms.DownloadAsync($".take-along a:has-text('{link}')");

    /// <summary>What stands there, with one space between words.</summary>
    public Task<string> ReadAsync(string selector) => _forms.ReadAsync(selector);

    private Task GoAsync(string address) => _forms.GoAsync(address);

    private Task FillAsync(string field, string text) => _forms.FillAsync(field, text);

    private Task SendAsync(string button) => _forms.SendAsync(button);

    private Task TakeAsync(string name, string? from = null) => takesPictures ? Pictures.TakeAsync(window, name, from) : Task.CompletedTask;
}
