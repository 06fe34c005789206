using System.Net;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Cupping;

/// <summary>The house's words and the descriptive form are data with a history, edited by whoever leads.</summary>
public sealed class WordsPagesTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_word_is_added_sorted_and_no_longer_offered()
    {
        var leader = await house.BrowserAsync(Role.LeadCupper);
        await leader.SendFormAsync("/Cupping/NewDescriptor", new Dictionary<string, string> { ["Input.Word"] = "quince", ["Input.Family"] = "orchard" });
        var twice = await TestBrowser.PageAsync(await leader.SendFormAsync("/Cupping/NewDescriptor", new Dictionary<string, string> { ["Input.Word"] = "quince", ["Input.Family"] = "hedge" }));
        var link = (await leader.ReadAsync("/Cupping/Descriptors?q=quince")).QuerySelectorAll("main a").Single(one => one.TextContent == "quince").GetAttribute("href")!;

        await leader.SendFormAsync(link, new Dictionary<string, string> { ["Input.Family"] = "stone walls", ["Input.IsRetired"] = "true" });

        Assert.Contains("already, in the family “orchard”", twice.QuerySelector("[data-errors]")!.TextContent, StringComparison.Ordinal);
        var stored = await house.FromLedgerAsync(db => db.Descriptors.SingleAsync(word => word.Word == "quince", Stop));
        Assert.Equal(("stone walls", true), (stored.Family, stored.IsRetired));
        Assert.Contains("no longer offered", (await leader.ReadAsync("/Cupping/Descriptors?q=quince")).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_family_is_renamed_with_all_its_words()
    {
        var leader = await house.BrowserAsync(Role.LeadCupper);
        var before = await house.FromLedgerAsync(db => db.Descriptors.Where(word => word.Family == "citrus grove").Select(word => word.Word).ToListAsync(Stop));

        await leader.SendFormAsync("/Cupping/Family", new Dictionary<string, string> { ["Input.From"] = "citrus grove", ["Input.Family"] = "citrus" });

        Assert.NotEmpty(before);
        Assert.Equal(before.Order(), (await house.FromLedgerAsync(db => db.Descriptors.Where(word => word.Family == "citrus").Select(word => word.Word).ToListAsync(Stop))).Order());
    }

    [Fact]
    public async Task A_changed_descriptive_form_is_a_new_revision_and_the_next_sessions_own()
    {
        var leader = await house.BrowserAsync(Role.LeadCupper);
        var address = $"/Cupping/ReviseDescriptive/{DescriptiveForm.Sca103Id}";

        var refused = await TestBrowser.PageAsync(await leader.SendFormAsync(address, new Dictionary<string, string> { ["Input.Words[tastes]"] = "sweet\nsour\nlively" }));
        var answer = await leader.SendFormAsync(address, new Dictionary<string, string> { ["Input.Words[tastes]"] = "sweet\nsour\nlively", ["Input.Reason"] = "the panel asked for it" });
        var late = await TestBrowser.PageAsync(await leader.SendFormAsync(address, new Dictionary<string, string> { ["Input.Reason"] = "again on the old one" }));

        Assert.Contains("The reason for the change", refused.QuerySelector("[data-errors]")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("lively", refused.QuerySelector("#words-tastes")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Contains("lively", (await leader.ReadAsync(answer.Headers.Location!.ToString())).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("newer revision (2)", late.QuerySelector("[data-errors]")!.TextContent, StringComparison.Ordinal);
        var forms = await house.FromLedgerAsync(db => db.DescriptiveForms.OrderBy(form => form.Revision).ToListAsync(Stop));
        Assert.Equal([5, 3], forms.Select(form => form.Rules.Lists[2].Words.Count));
        Assert.Equal("sweet", forms[1].Rules.Lists[2].Words[0].Key);
    }
}
