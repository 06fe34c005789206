using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;
using GreenLedger.Examples;
using Microsoft.EntityFrameworkCore;
using Microsoft.Playwright;

namespace GreenLedger.Web.Tests.InBrowser;

/// <summary>In a real browser: a purpose is named, a plan is made of what it needs, and the plan becomes decisions.</summary>
public sealed class PlannedPurchaseTests(Chromium chromium)
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_need_becomes_a_plan_and_the_plan_becomes_decisions()
    {
        await using var house = new HouseFixture();
        house.Serve();
        await house.OpenHouseAsync();
        var market = await house.FromLedgerAsync(db => OpenMarket.StoreAsync(db, Currency.Eur, DateTimeOffset.UtcNow, Stop));
        await using var window = await chromium.OpenAsync(house.ClientOptions.BaseAddress);
        await window.SignInAsync(HouseFixture.EmailOf(Role.Buyer), HouseFixture.Password);
        window.Page.Dialog += (_, dialog) => dialog.AcceptAsync();

        await window.GoAsync("/Stock/EditPurpose");
        await window.Page.Locator("[name='Input.Name']").FillAsync("House filter");
        await window.Page.Locator("[name='Input.WeeklyUseKg']").FillAsync("70");
        await window.Page.Locator("main .actions .btn-primary").First.ClickAsync();

        await window.GoAsync("/Choosing/Plan?Wish.Months=1&Wish.Doubt=0");
        await window.Page.GetByRole(AriaRole.Button, new() { Name = "Make the plan" }).ClickAsync();
        var plan = await window.Page.Locator("main").InnerTextAsync();
        Assert.Contains("no plan within these limits is better", plan, StringComparison.Ordinal);
        await Pictures.TakeAsync(window, "plan", "dl.facts");
        await window.Page.GetByRole(AriaRole.Button, new() { Name = "Decide to buy these" }).ClickAsync();

        Assert.EndsWith("/Choosing/Decisions", window.Page.Url, StringComparison.Ordinal);
        // The running example: C costs 6.90 EUR/kg, the least of those that were cupped, in bags of 60 kg.
        var decision = await house.FromLedgerAsync(db => db.Decisions.SingleAsync(Stop));
        Assert.Equal((market.OfferOf("C").Id, Outcome.Buy), (decision.OfferId, decision.Outcome));
        Assert.Equal(0, decision.Quantity!.Value.Micrograms % Weight.FromKilograms(60m).Micrograms);
        Assert.Empty(window.Complaints());
    }
}
