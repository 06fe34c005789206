using System.Net;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Samples;

public sealed class SamplePagesTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_received_sample_gets_a_label_and_leads_on_to_grading_and_cupping()
    {
        var lot = await LotAsync("RB-1", "Ribeira Funda");
        var leader = await house.BrowserAsync(Role.LeadCupper);

        var answer = await leader.SendFormAsync("/Samples/New", new Dictionary<string, string> { ["Input.Lot"] = lot.Ref, ["Input.WeightGrams"] = "350" });

        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        var sample = await house.FromLedgerAsync(db => db.Samples.SingleAsync(one => one.LotId == lot.Id, Stop));
        var page = await leader.ReadAsync(answer.Headers.Location!.OriginalString);
        Assert.Contains($"Write {sample.LabelCode} on the bag", page.Body!.TextContent, StringComparison.Ordinal);
        Assert.NotNull(page.QuerySelector($"a[href='/Grading/New?sample={sample.Id}']"));
        var layOut = await leader.ReadAsync(page.QuerySelector($"a[href='/Cupping/New?sample={sample.Id}']")!.GetAttribute("href")!);
        Assert.True(layOut.QuerySelector($"#sample-{sample.LabelCode}")!.HasAttribute("checked"));
    }

    [Theory]
    [InlineData("no such lot", "350", "No lot here is called 'no such lot'", "#Input_Lot")]
    [InlineData("RB-2", "", "Weigh the sample", "#Input_WeightGrams")]
    [InlineData("RB-2", "a handful", "cannot be “a handful”: figures take a decimal point", "#Input_WeightGrams")]
    public async Task What_cannot_be_received_is_said_beside_its_field_and_nothing_typed_is_lost(string named, string grams, string sentence, string field)
    {
        await LotAsync("RB-2", "Ribeira Alta");
        var before = await house.FromLedgerAsync(db => db.Samples.CountAsync(Stop));
        var buyer = await house.BrowserAsync(Role.Buyer);

        var page = await TestBrowser.PageAsync(await buyer.SendFormAsync(
            "/Samples/New", new Dictionary<string, string> { ["Input.Lot"] = named, ["Input.WeightGrams"] = grams, ["Input.Note"] = "came in a jar" }));

        Assert.Contains(sentence, page.QuerySelector("[data-errors]")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("input-validation-error", page.QuerySelector(field)!.ClassName, StringComparison.Ordinal);
        Assert.Equal(named, page.QuerySelector("#Input_Lot")!.GetAttribute("value"));
        Assert.Equal(grams, page.QuerySelector("#Input_WeightGrams")!.GetAttribute("value") ?? "");
        Assert.Equal("came in a jar", page.QuerySelector("#Input_Note")!.TextContent.Trim());
        Assert.Equal(before, await house.FromLedgerAsync(db => db.Samples.CountAsync(Stop)));
    }

    [Fact]
    public async Task Two_corrections_at_once_show_both_versions_and_the_second_try_goes_through()
    {
        var lot = await LotAsync("RB-3", "Ribeira Brava");
        var sample = new Sample(lot.Id, SampleKind.Offer, "BRAVA", new DateOnly(2026, 11, 20), Weight.FromGrams(350m));
        await house.InLedgerAsync(async db =>
        {
            db.Add(sample);
            await db.SaveChangesAsync(Stop);
        });
        var buyer = await house.BrowserAsync(Role.Buyer);
        await buyer.SendFormAsync($"/Samples/Correct/{sample.Id}", new Dictionary<string, string> { ["Input.Note"] = "theirs" });

        var page = await TestBrowser.PageAsync(await buyer.SendFormAsync(
            $"/Samples/Correct/{sample.Id}", new Dictionary<string, string> { ["Input.Note"] = "mine", ["Input.Version"] = "0" }));

        var differs = page.QuerySelector("[data-errors] tbody")!.TextContent;
        Assert.Contains("mine", differs, StringComparison.Ordinal);
        Assert.Contains("theirs", differs, StringComparison.Ordinal);
        Assert.Equal("mine", page.QuerySelector("#Input_Note")!.TextContent.Trim());
        var version = page.QuerySelector("#Input_Version")!.GetAttribute("value")!;
        await buyer.SendFormAsync($"/Samples/Correct/{sample.Id}", new Dictionary<string, string> { ["Input.Note"] = "mine", ["Input.Version"] = version });
        Assert.Equal("mine", (await house.FromLedgerAsync(db => db.Samples.SingleAsync(one => one.Id == sample.Id, Stop))).Note);
    }

    [Fact]
    public async Task A_samples_page_shows_its_papers_and_what_happened_to_it()
    {
        var lot = await LotAsync("RB-4", "Ribeira Seca");
        var buyer = await house.BrowserAsync(Role.Buyer);
        var answer = await buyer.SendFormAsync("/Samples/New", new Dictionary<string, string> { ["Input.Lot"] = lot.Ref, ["Input.WeightGrams"] = "300" });
        var address = answer.Headers.Location!.OriginalString;

        await buyer.SendFormAsync(address, new Dictionary<string, string> { ["Input.Text"] = "Smells of jute." });

        var page = await buyer.ReadAsync(address);
        Assert.Contains("Smells of jute.", page.QuerySelector("section[aria-labelledby=notes]")!.TextContent, StringComparison.Ordinal);
        Assert.NotNull(page.QuerySelector("section[aria-labelledby=attachments] input[type=file]"));
        Assert.Contains("A Buyer", page.QuerySelector("section[aria-labelledby=history]")!.TextContent, StringComparison.Ordinal);
    }

    private async Task<Lot> LotAsync(string reference, string name)
    {
        await house.OpenHouseAsync();
        return await house.FromLedgerAsync(async db =>
        {
            if (await db.Lots.FirstOrDefaultAsync(lot => lot.Ref == reference, Stop) is { } known)
            {
                return known;
            }

            var added = new Lot(reference, name);
            db.Add(added);
            await db.SaveChangesAsync(Stop);
            return added;
        });
    }
}
