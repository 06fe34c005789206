using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Stock;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Choosing;

/// <summary>Plans on the running example: spot offers of 35 bags of 60 kg; C costs 6.90 EUR/kg, the least of those that were cupped.</summary>
public sealed class PlanTests(OpenShop shop) : IClassFixture<OpenShop>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_plan_becomes_decisions_in_one_step()
    {
        await NeedAsync(shop);
        var buyer = await shop.House.BrowserAsync(Role.Buyer);
        var address = "/Choosing/Plan?Wish.Months=1&Wish.Make=true&Wish.Doubt=0";

        var page = await buyer.ReadAsync(address);
        var main = page.QuerySelector("main")!.TextContent;
        var bags = int.Parse(page.QuerySelector("input[name='Input.Lines[0].Bags']")!.GetAttribute("value")!, System.Globalization.CultureInfo.InvariantCulture);
        var offer = page.QuerySelector("input[name='Input.Lines[0].OfferId']")!.GetAttribute("value")!;
        var decided = await buyer.SendFormAsync(address, new Dictionary<string, string>
        {
            ["Input.Lines[0].OfferId"] = offer,
            ["Input.Lines[0].Bags"] = $"{bags}",
            ["Input.Lines[0].IsTaken"] = "true",
            ["Input.Reason"] = "By the plan.",
        });

        Assert.Contains("no plan within these limits is better", main, StringComparison.Ordinal);
        Assert.Contains("Others come before it by cost for House filter", main, StringComparison.Ordinal);
        Assert.Equal($"{shop.Market.OfferOf("C").Id}", offer);
        Assert.Equal(HttpStatusCode.Redirect, decided.StatusCode);
        var decision = await shop.House.FromLedgerAsync(db => db.Decisions.SingleAsync(Stop));
        Assert.Equal((Outcome.Buy, Weight.FromKilograms(60m) * bags), (decision.Outcome, decision.Quantity));
        Assert.DoesNotContain($"value=\"{offer}\"", (await buyer.ReadAsync(address)).DocumentElement.OuterHtml, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_script_plans_for_the_house_and_may_not_decide_on_what_is_not_open()
    {
        await NeedAsync(shop);
        using var script = await shop.House.ScriptAsync(Role.Buyer);
        var before = await shop.House.FromLedgerAsync(db => db.Decisions.CountAsync(Stop));

        var plan = await (await script.PostAsJsonAsync("/api/choosing/plan", new { months = 1, doubt = 0, seconds = 5 }, Stop)).Content.ReadFromJsonAsync<JsonElement>(Stop);
        var refused = await script.PostAsJsonAsync("/api/choosing/plan/decisions", new { lines = new[] { new { offerId = Guid.NewGuid(), bags = 1 } }, wish = new { months = 1 } }, Stop);
        var late = await script.PostAsJsonAsync("/api/choosing/plan", new { months = 1, seconds = 61 }, Stop);

        Assert.Equal(1, plan.GetProperty("months").GetArrayLength());
        Assert.Equal(plan.GetProperty("needs").GetArrayLength() > 0, plan.GetProperty("lines").GetArrayLength() > 0);
        Assert.Equal((HttpStatusCode.UnprocessableEntity, HttpStatusCode.UnprocessableEntity), (refused.StatusCode, late.StatusCode));
        Assert.Equal(before, await shop.House.FromLedgerAsync(db => db.Decisions.CountAsync(Stop)));
    }

    [Fact]
    public async Task An_offer_with_a_least_lot_of_its_own_is_bought_of_no_less()
    {
        // A shop of its own: another need would stand in the plans of the other tests.
        await using var own = new OpenShop();
        await own.InitializeAsync();
        await NeedAsync(own, "Second filter", 60m);
        using var script = await own.House.ScriptAsync(Role.Buyer);
        async Task<JsonElement> PlanAsync() => await (await script.PostAsJsonAsync("/api/choosing/plan", new { months = 1, doubt = 0, seconds = 5 }, Stop)).Content.ReadFromJsonAsync<JsonElement>(Stop);
        var offer = (await PlanAsync()).GetProperty("lines")[0].GetProperty("offerId").GetGuid();

        var refused = await script.PutAsJsonAsync($"/api/offers/{offer}/least-lot", new { leastBags = 0 }, Stop);
        var put = await script.PutAsJsonAsync($"/api/offers/{offer}/least-lot", new { leastBags = 36 }, Stop);
        var plan = await PlanAsync();
        var read = await script.GetFromJsonAsync<JsonElement>($"/api/offers/{offer}", Stop);
        var buyer = await own.House.BrowserAsync(Role.Buyer);
        await buyer.SendFormAsync($"/Offers/Offer/{offer}", new Dictionary<string, string> { ["Input.LeastBags"] = "35" }, "LeastLot");
        var page = (await buyer.ReadAsync($"/Offers/Offer/{offer}")).QuerySelector("main")!.TextContent;
        var all = await PlanAsync();
        await script.PutAsJsonAsync($"/api/offers/{offer}/least-lot", new { leastBags = (int?)null }, Stop);

        Assert.Equal((HttpStatusCode.UnprocessableEntity, HttpStatusCode.NoContent), (refused.StatusCode, put.StatusCode));
        Assert.Equal(36, read.GetProperty("leastBags").GetInt32());
        Assert.DoesNotContain(offer, plan.GetProperty("lines").EnumerateArray().Select(line => line.GetProperty("offerId").GetGuid()));
        Assert.Contains("Only 35 bags are on offer", plan.GetProperty("plan").GetRawText(), StringComparison.Ordinal);
        Assert.Contains("35 bags", page, StringComparison.Ordinal);
        Assert.All(all.GetProperty("lines").EnumerateArray().Where(line => line.GetProperty("offerId").GetGuid() == offer), line => Assert.Equal(35, line.GetProperty("bags").GetInt32()));
    }

    [Fact]
    public async Task A_limit_that_cannot_be_kept_is_named_on_the_page()
    {
        // A shop of its own: another need would stand in the plans of the other tests.
        await using var own = new OpenShop();
        await own.InitializeAsync();
        await NeedAsync(own, "Busy espresso", 700m);
        var buyer = await own.House.BrowserAsync(Role.Buyer);

        var text = (await buyer.ReadAsync("/Choosing/Plan?Wish.Months=1&Wish.Make=true&Wish.Doubt=0&Wish.Budget[0]=1")).QuerySelector("main")!.TextContent;

        Assert.Contains("The budget stands against it", text, StringComparison.Ordinal);
    }

    /// <summary>What was typed is kept, whatever is wrong with a figure beside it.</summary>
    [Theory]
    [InlineData("Wish.Months=", "Months ahead")]
    [InlineData("Wish.Months=99", "A plan spans 1 to 24 months")]
    [InlineData("Wish.Months=2&Wish.StorageKg=12,5", "Room for what lies over (kg) cannot be")]
    public async Task A_figure_that_cannot_be_loses_no_budget(string figure, string sentence)
    {
        await NeedAsync(shop);
        var buyer = await shop.House.BrowserAsync(Role.Buyer);

        var page = await buyer.ReadAsync($"/Choosing/Plan?{figure}&Wish.Make=true&Wish.Budget[0]=4000&Wish.Budget[1]=5000");

        Assert.Contains(sentence, page.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(["4000", "5000"], page.QuerySelectorAll("input[name^='Wish.Budget']").Take(2).Select(budget => budget.GetAttribute("value")));
    }

    [Fact]
    public async Task The_api_plans_what_is_sent_and_stores_nothing()
    {
        var client = await shop.House.ScriptAsync(Role.Viewer);
        var before = await shop.House.FromLedgerAsync(db => db.Decisions.CountAsync(Stop));

        var answer = await client.PostAsJsonAsync("/api/choosing/calculate/plan", new
        {
            months = 1,
            needs = new[] { new { name = "Base", kg = new[] { 130m } } },
            offers = new[] { new { @ref = "A", costPerKg = 5m, points = 82m, bagKg = 60m, mostBags = 20 }, new { @ref = "B", costPerKg = 6m, points = 86m, bagKg = 60m, mostBags = 20 } },
        }, Stop);
        var plan = await answer.Content.ReadFromJsonAsync<JsonElement>(Stop);
        var refused = await client.PostAsJsonAsync("/api/choosing/calculate/plan", new { months = 99, needs = Array.Empty<object>(), offers = Array.Empty<object>() }, Stop);

        // Worked by hand: three bags of 60 kg at 5.00.
        Assert.Equal((900m, 180m, 0.0), (plan.GetProperty("cost").GetDecimal(), plan.GetProperty("kg").GetDecimal(), plan.GetProperty("gap").GetDouble()));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        Assert.Equal(before, await shop.House.FromLedgerAsync(db => db.Decisions.CountAsync(Stop)));
    }

    private static Task<int> NeedAsync(OpenShop shop, string name = "House filter", decimal weekly = 70m) => shop.House.FromLedgerAsync(async db =>
    {
        if (!await db.Purposes.AnyAsync(purpose => purpose.Name == name, Stop))
        {
            db.Add(new Purpose(new PurposeTerms(name, null, null, null, Weight.FromKilograms(weekly))));
        }

        return await db.SaveChangesAsync(Stop);
    });
}
