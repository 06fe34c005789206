using System.Net;
using GreenLedger.Data.Choosing;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Choosing;

public sealed class RulesTests(OpenShop shop) : IClassFixture<OpenShop>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Every_gate_and_weight_is_written_and_shown_again()
    {
        var buyer = await shop.House.BrowserAsync(Role.Buyer);
        var fields = new Dictionary<string, string>
        {
            ["Input.Name"] = "Espresso",
            ["Input.Sessions"] = "InverseVariance",
            ["Input.RanksStatedScores"] = "true",
            ["Input.StatedDoubt"] = "2",
            ["Input.WeightScore"] = "50",
            ["Input.WeightCost"] = "30",
            ["Input.WeightCostPerPoint"] = "15",
            ["Input.WeightProcess"] = "5",
            ["Input.CostPerPoint"] = "PricePerPointAbove",
            ["Input.BaseScore"] = "79",
            ["Input.LeastScore"] = "82.25",
            ["Input.LeastLowerBound"] = "81",
            ["Input.HighestCostPerKilogram"] = "9.5",
            ["Input.LeastQuantityKg"] = "600",
            ["Input.LeastMoisture"] = "9",
            ["Input.HighestMoisture"] = "12",
            ["Input.HighestWaterActivity"] = "0.6",
            ["Input.HighestCategory1"] = "0",
            ["Input.HighestCategory2"] = "5",
            ["Input.HighestQuakers"] = "3",
            ["Input.Screen"] = "15",
            ["Input.LeastRetained"] = "95",
            ["Input.EarliestCropYear"] = "2025/26",
            ["Input.Certificates"] = "Organic, fairtrade",
            ["Input.MeasurementsRequired"] = "true",
            ["Input.LeastOffersPerGroup"] = "4",
            ["Input.Processes[0].Preference"] = "0.75",
        };

        var answer = await buyer.SendFormAsync("/Choosing/EditRules", fields);

        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        var rules = await FindAsync("Espresso");
        var terms = rules.Terms;
        Assert.Equal(new Weights { Score = 50m, Cost = 30m, CostPerPoint = 15m, Process = 5m }, terms.Weights);
        Assert.Equal((SessionRule.InverseVariance, true, Score.Of(2m), CostPerPointRule.PricePerPointAbove, Score.Of(79m), true, 4), (terms.Sessions, terms.RanksStatedScores, terms.StatedDoubt, terms.CostPerPoint, terms.BaseScore, terms.MeasurementsRequired, terms.LeastOffersPerGroup));
        Assert.Equal((Score.Of(82.25m), Score.Of(81m), 9.5m, Weight.FromKilograms(600m)), (terms.Gates.LeastScore, terms.Gates.LeastLowerBound, terms.Gates.HighestCostPerKilogram, terms.Gates.LeastQuantity));
        Assert.Equal((15, Percent.Of(95m), "2025/26"), (terms.Gates.Screen, terms.Gates.LeastRetained, terms.Gates.EarliestCropYear));
        Assert.Equal(["organic", "fairtrade"], terms.Gates.Certificates);
        Assert.Equal(0.75m, Assert.Single(terms.Processes).Preference);
        var again = await buyer.ReadAsync($"/Choosing/EditRules/{rules.Id}");
        Assert.All(
            fields.Where(field => field.Value is not "true" && !field.Key.Contains("Processes", StringComparison.Ordinal) && field.Key is not ("Input.Sessions" or "Input.CostPerPoint" or "Input.Certificates")),
            field => Assert.Equal(field.Value, again.QuerySelector($"[name='{field.Key}']")!.GetAttribute("value")));
        var shown = (await buyer.ReadAsync($"/Choosing/RuleSet/{rules.Id}")).Body!.TextContent;
        Assert.Contains("at least 95 % kept by screen 15", shown, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Input.Name", "", "Please name the rules.")]
    [InlineData("Input.Name", "House", "There are rules of this name already")]
    [InlineData("Input.LeastScore", "101", "no form gives more than 100 points")]
    [InlineData("Input.LeastScore", "high", "cannot be “high”")]
    [InlineData("Input.WeightScore", "-1", "A weight is 0 or more.")]
    [InlineData("Input.LowScore", "95", "must lie below the one that counts 1")]
    [InlineData("Input.Screen", "15", "A screen gate needs the screen and the share that it keeps.")]
    [InlineData("Input.EarliestCropYear", "last year", "Write the crop year as 2026/27 or 2026.")]
    [InlineData("Input.StatedDoubt", "0", "The doubt about a stated score lies above 0")]
    public async Task A_wrong_figure_is_answered_and_nothing_is_written(string field, string value, string sentence)
    {
        var buyer = await shop.House.BrowserAsync(Role.Buyer);
        var fields = new Dictionary<string, string> { ["Input.Name"] = "Never written", ["Input.Certificates"] = "kept as typed", [field] = value };

        var answer = await buyer.SendFormAsync("/Choosing/EditRules", fields);

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        var page = await TestBrowser.PageAsync(answer);
        Assert.Contains(sentence, page.QuerySelector("[data-errors]")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("kept as typed", page.QuerySelector("[name='Input.Certificates']")!.GetAttribute("value"));
        Assert.Equal(0, await shop.House.FromLedgerAsync(db => db.BuyingRules.CountAsync(set => set.Name == "Never written", Stop)));
    }

    [Fact]
    public async Task An_edit_is_a_revision_and_says_what_it_changed()
    {
        var buyer = await shop.House.BrowserAsync(Role.Buyer);
        await buyer.SendFormAsync("/Choosing/EditRules", new Dictionary<string, string> { ["Input.Name"] = "Filter" });
        var id = (await FindAsync("Filter")).Id;

        await buyer.SendFormAsync($"/Choosing/EditRules/{id}", new Dictionary<string, string> { ["Input.LeastScore"] = "83" });

        var rules = await FindAsync("Filter");
        Assert.Equal((2, 2), (rules.Revision, rules.Revisions.Count));
        Assert.Null(rules.Revisions.Single(revision => revision.Number == 1).Terms.Gates.LeastScore);
        var edits = (await buyer.ReadAsync($"/Choosing/RuleSet/{id}")).QuerySelector("#edits + div")!.TextContent;
        Assert.Contains("Score: not asked → at least 83.00", string.Join(' ', edits.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Who_edits_what_somebody_else_edited_meanwhile_is_told()
    {
        var buyer = await shop.House.BrowserAsync(Role.Buyer);
        await buyer.SendFormAsync("/Choosing/EditRules", new Dictionary<string, string> { ["Input.Name"] = "Shared" });
        var id = (await FindAsync("Shared")).Id;
        await buyer.SendFormAsync($"/Choosing/EditRules/{id}", new Dictionary<string, string> { ["Input.LeastScore"] = "83" });

        var answer = await buyer.SendFormAsync($"/Choosing/EditRules/{id}", new Dictionary<string, string> { ["Input.LeastScore"] = "85", ["Input.Version"] = "0" });

        Assert.Contains("Somebody saved this record while you had it open", (await TestBrowser.PageAsync(answer)).Body!.TextContent, StringComparison.Ordinal);
        Assert.Equal(Score.Of(83m), (await FindAsync("Shared")).Terms.Gates.LeastScore);
    }

    [Fact]
    public async Task Rules_put_away_rank_nothing_until_they_are_taken_up_again()
    {
        var buyer = await shop.House.BrowserAsync(Role.Buyer);
        await buyer.SendFormAsync("/Choosing/EditRules", new Dictionary<string, string> { ["Input.Name"] = "Seasonal" });
        var id = (await FindAsync("Seasonal")).Id;

        await buyer.SendFormAsync($"/Choosing/RuleSet/{id}", new Dictionary<string, string>(), "PutAway");
        var away = await buyer.Client.GetAsync(new Uri("/Choosing?Rules=Seasonal", UriKind.Relative), Stop);
        await buyer.SendFormAsync($"/Choosing/RuleSet/{id}", new Dictionary<string, string>(), "TakeUp");
        var back = await buyer.Client.GetAsync(new Uri("/Choosing?Rules=Seasonal", UriKind.Relative), Stop);

        Assert.Equal((HttpStatusCode.NotFound, HttpStatusCode.OK), (away.StatusCode, back.StatusCode));
    }

    private Task<BuyingRules> FindAsync(string name) =>
        shop.House.FromLedgerAsync(db => db.BuyingRules.Whole().AsNoTracking().SingleAsync(set => set.Name == name, Stop));
}
