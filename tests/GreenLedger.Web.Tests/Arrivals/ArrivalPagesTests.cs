using System.Net;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Arrivals;

public sealed class ArrivalPagesTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task An_arrivals_page_shows_both_verdicts_with_their_arithmetic_and_the_last_days()
    {
        var lot = await ArrivedLot.FillAsync(house);

        var page = await (await house.BrowserAsync(Role.Viewer)).ReadAsync($"/Arrivals/Arrival/{lot.Arrival}");

        var text = page.QuerySelector("main")!.TextContent;
        // Handbook, trade 8, example G; deadlines by check value 36's rule from discharge on 26 October 2026.
        Assert.Contains("185 kg less 94.875 kg is 90.125 kg, at 321.65 ¢/lb worth 639.09 USD.", text, StringComparison.Ordinal);
        // Worked by hand: two parts of 18,975 kg; 550 × 69 kg less and more 3 %.
        Assert.Contains("Under the whole contract 37,950 kg were shipped, which lies within the agreed quantity, 36,811.5 kg to 39,088.5 kg", text, StringComparison.Ordinal);
        Assert.Contains("The arrival is short: it cupped 1.75 points below the approved sample.", text, StringComparison.Ordinal);
        Assert.Contains("16 Nov 2026", text, StringComparison.Ordinal);
        Assert.Contains("23 Nov 2026", text, StringComparison.Ordinal);
        Assert.Contains("weighed on 29 Oct 2026", text, StringComparison.Ordinal); // received 31 days after 28 September, before the 16th of November: in time
        Assert.Contains("2 wet", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_part_is_received_once_and_more_than_was_shipped_needs_a_reason()
    {
        var lot = await ArrivedLot.FillAsync(house);
        var buyer = await house.BrowserAsync(Role.Buyer);
        var typed = new Dictionary<string, string> { ["Input.ReceivedOn"] = "2026-11-02", ["Input.Bags"] = "276", ["Input.LandedKg"] = "18900" };

        var refused = await buyer.SendFormAsync($"/Arrivals/Receive/{lot.AfloatLot}", typed);
        var taken = await buyer.SendFormAsync(
            $"/Arrivals/Receive/{lot.AfloatLot}",
            new Dictionary<string, string>(typed) { ["Input.Note"] = "One bag of the first part.", ["Input.WetBags"] = "" },
            files: [("Photographs", "seal.txt", "A sketch of the seal."u8.ToArray()), ("Photographs", "floor.txt", "A sketch of the floor."u8.ToArray())]);

        var page = await TestBrowser.PageAsync(refused);
        Assert.Equal(HttpStatusCode.OK, refused.StatusCode);
        Assert.Contains("say why in the note", page.QuerySelector("#Input_Note_error")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("276", page.QuerySelector("#Input_Bags")!.GetAttribute("value"));
        Assert.Equal(HttpStatusCode.Redirect, taken.StatusCode);
        var arrival = await buyer.ReadAsync(taken.Headers.Location!.OriginalString);
        // Handbook, trade, check value 66: 75 kg of 18,975 are 0.3953 %, within the franchise.
        Assert.Contains("does not exceed the franchise", arrival.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(["floor.txt", "seal.txt"], arrival.QuerySelectorAll("a[href^='/Papers/Download/']").Select(link => link.TextContent.Trim()).Order());
        Assert.Equal(GoodsState.Arrived, await house.FromLedgerAsync(db => db.Contracts.Where(contract => contract.Id == lot.Contract).Select(contract => contract.Goods).SingleAsync(Stop)));
        Assert.Equal(HttpStatusCode.Redirect, (await buyer.Client.GetAsync($"/Arrivals/Receive/{lot.AfloatLot}", Stop)).StatusCode);
    }

    [Fact]
    public async Task A_shipment_is_written_down_by_its_papers_and_a_doubtful_container_is_told()
    {
        var lot = await ArrivedLot.FillAsync(house);
        var buyer = await house.BrowserAsync(Role.Buyer);

        var saved = await buyer.SendFormAsync($"/Shipments/Edit?contract={lot.Contract}", new Dictionary<string, string>
        {
            ["Input.Lots[0].Bags"] = "100",
            ["Input.Lots[0].NetKg"] = "6900",
            ["Input.PortOfLoading"] = "cobun",
            ["Input.PortOfDestination"] = "DE HAM",
            ["Input.ShippedOn"] = "2026-10-03",
            ["Input.Containers"] = "MSKU0123456 SL9",
        });

        Assert.Equal(HttpStatusCode.Redirect, saved.StatusCode);
        var text = (await buyer.ReadAsync(saved.Headers.Location!.OriginalString)).QuerySelector("main")!.TextContent;
        // Period to 30 September, on board on 3 October (rule of handbook, trade 4.2); the number by its 5.3.
        Assert.Contains("3 days late", text, StringComparison.Ordinal);
        Assert.Contains("should be 9", text, StringComparison.Ordinal);
        Assert.Contains("MSKU0123456 (seal SL9)", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_lots_of_a_contract_are_added_and_what_was_typed_stays()
    {
        var lot = await ArrivedLot.FillAsync(house);
        var buyer = await house.BrowserAsync(Role.Buyer);

        var shown = await TestBrowser.PageAsync(await buyer.SendFormAsync(
            "/Shipments/Edit", new Dictionary<string, string> { ["Contract"] = $"{lot.Contract}", ["Input.Vessel"] = "Heron" }, "Lots"));

        Assert.NotEmpty(shown.QuerySelectorAll("[name='Input.Lots[0].Bags']"));
        Assert.Equal("Heron", shown.QuerySelector("#Input_Vessel")!.GetAttribute("value"));
        Assert.Empty(shown.QuerySelectorAll(".field-validation-error"));
    }

    [Fact]
    public async Task A_port_that_is_none_is_refused_beside_its_field_and_changes_nothing()
    {
        var lot = await ArrivedLot.FillAsync(house);
        var buyer = await house.BrowserAsync(Role.Buyer);
        var before = await house.FromLedgerAsync(db => db.Shipments.CountAsync(Stop));

        var refused = await buyer.SendFormAsync($"/Shipments/Edit?contract={lot.Contract}", new Dictionary<string, string>
        {
            ["Input.Lots[0].Bags"] = "100",
            ["Input.Lots[0].NetKg"] = "6900",
            ["Input.PortOfLoading"] = "Hamburg",
            ["Input.PortOfDestination"] = "DEHAM",
        });

        var page = await TestBrowser.PageAsync(refused);
        Assert.Contains("is not a UN/LOCODE", page.QuerySelector("#Input_PortOfLoading_error")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("Hamburg", page.QuerySelector("#Input_PortOfLoading")!.GetAttribute("value"));
        Assert.Equal(before, await house.FromLedgerAsync(db => db.Shipments.CountAsync(Stop)));
    }

    [Fact]
    public async Task What_the_house_states_decides_how_arrivals_are_judged()
    {
        var lot = await ArrivedLot.FillAsync(house);
        var buyer = await house.BrowserAsync(Role.Buyer);

        await buyer.SendFormAsync("/Arrivals/Habits", new Dictionary<string, string> { ["Input.TolerancePoints"] = "2.5", ["Input.BetweenSessionsPoints"] = "" });
        var wide = (await buyer.ReadAsync($"/Arrivals/Arrival/{lot.Arrival}")).QuerySelector("main")!.TextContent;
        await buyer.SendFormAsync("/Arrivals/Habits", new Dictionary<string, string> { ["Input.TolerancePoints"] = "1" });

        Assert.Contains("The arrival matches: it cupped 1.75 points below the approved sample.", wide, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_receipt_is_corrected_with_a_reason_and_the_first_version_stays_on_the_page()
    {
        var lot = await ArrivedLot.FillAsync(house);
        var buyer = await house.BrowserAsync(Role.Buyer);
        var right = new Dictionary<string, string> { ["Input.LandedKg"] = "18900", ["Input.OdourBags"] = "3", ["Input.Odour"] = "diesel", ["Input.TemperatureCelsius"] = "21.5", ["Input.HumidityPercent"] = "58" };

        var refused = await buyer.SendFormAsync($"/Arrivals/Correct/{lot.Arrival}", right);
        var taken = await buyer.SendFormAsync($"/Arrivals/Correct/{lot.Arrival}", new Dictionary<string, string>(right) { ["Input.Reason"] = "The scales were read wrong." });

        Assert.Contains("is missing", (await TestBrowser.PageAsync(refused)).QuerySelector("#Input_Reason_error")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Redirect, taken.StatusCode);
        var text = (await buyer.ReadAsync($"/Arrivals/Arrival/{lot.Arrival}")).QuerySelector("main")!.TextContent;
        // Handbook, trade, check value 66: 18,900 kg landed are within the franchise.
        Assert.Contains("does not exceed the franchise", text, StringComparison.Ordinal);
        Assert.Contains("The scales were read wrong.", text, StringComparison.Ordinal);
        Assert.Contains("18,790 kg net, 2 wet.", text, StringComparison.Ordinal);
        Assert.Contains("3 with odour: diesel", text, StringComparison.Ordinal);
        Assert.Contains("21.5 °C, 58 % relative humidity", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_blind_pair_is_laid_out_from_the_arrival_with_both_samples_chosen()
    {
        var lot = await ArrivedLot.FillAsync(house);
        await house.InLedgerAsync(async db =>
        {
            var arrival = await db.Arrivals.SingleAsync(one => one.Id == lot.Arrival, Stop);
            var another = new Sample(arrival.LotId, SampleKind.Arrival, "ARX" + lot.Arrival.Value.ToString("N")[..8], new DateOnly(2026, 11, 21), Weight.FromGrams(500m));
            db.Add(another);
            arrival.Compare(await db.Samples.SingleAsync(one => one.Id == arrival.ApprovedSampleId, Stop), another);
            await db.SaveChangesAsync(Stop);
        });
        var leader = await house.BrowserAsync(Role.Buyer);

        var link = (await leader.ReadAsync($"/Arrivals/Arrival/{lot.Arrival}")).QuerySelector("a[href*='/Cupping/New?sample=']")!.GetAttribute("href")!;
        var chosen = (await leader.ReadAsync(link)).QuerySelectorAll("input[name='Input.Samples'][checked]").Select(box => box.GetAttribute("value"));

        Assert.Equal(link.Split("sample=").Skip(1).Select(id => id.TrimEnd('&')).Order(), chosen.Order());
        Assert.Equal(2, chosen.Count());
    }
}
