using System.Globalization;
using Microsoft.Playwright;

namespace GreenLedger.Web.Tests.InBrowser;

/// <summary>What a buyer does with one lot from the decision to the stock, page by page. Days are counted back from today.</summary>
internal sealed class PurchaseWay(Window window)
{
    private readonly Forms _forms = new(window);
    private string _contract = "";

    public Forms Forms => _forms;

    public Window Window => window;

    public IPage Page => window.Page;

    public static string DaysAgo(int days) => DateTime.UtcNow.AddDays(-days).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    public async Task DecideAsync(Guid offer)
    {
        await _forms.GoAsync($"/Choosing/Decide/{offer}");
        await _forms.ChooseAsync("Outcome", "Buy");
        await _forms.FillAsync(("QuantityKg", "600"), ("Reason", "The first of a longer purchase."));
        await _forms.SendAsync("Decide");
    }

    /// <summary>550 bags of 69 kg, a differential of +35.00 over two lots, replacement allowed, ESCC's days of the handbook.</summary>
    public async Task DraftAsync(string month)
    {
        await _forms.FollowAsync("a[href^='/Contracts/Draft/']");
        await _forms.FillAsync(("Lots[0].Bags", "550"), ("Lots[0].BagWeightKg", "69"), ("Month", month), ("Differential", "35.00"), ("MarketLots", "2"));
        await _forms.ChooseAsync("Pricing", "ToBeFixed");
        await _forms.ChooseAsync("Call", "Buyer");
        await _forms.ChooseAsync("Incoterm", "Fob");
        await _forms.FillAsync(("Place", "Santos"), ("ShipFrom", DaysAgo(60)), ("ShipUntil", DaysAgo(40)), ("FranchisePercent", "0.5"), ("MostSamples", "3"));
        await _forms.ChooseAsync("ApprovalRule", "Replace");
        await _forms.FillAsync(("WeighWithinDays", "21"), ("QualityClaimDays", "28"), ("OtherClaimDays", "45"));
        await _forms.SendAsync("Draft the contract");
        _contract = new Uri(Page.Url).AbsolutePath;
    }

    public async Task SignAsync()
    {
        await ActAsync("Sign");
        await _forms.FillAsync("SignedOn", DaysAgo(80));
        await _forms.SendAsync("Both sides have signed");
    }

    public async Task FixAsync(string level, int daysAgo)
    {
        await ActAsync("Fix");
        await _forms.FillAsync(("On", DaysAgo(daysAgo)), ("Lots", "1"), ("Level", level));
        await _forms.SendAsync("Fix");
    }

    /// <summary>A sample of the lot comes; the label that its page names.</summary>
    public async Task<string> ReceiveASampleAsync(string lot, string kind, int daysAgo)
    {
        await _forms.GoAsync("/Samples/New");
        await _forms.FillAsync(("Lot", lot), ("ReceivedOn", DaysAgo(daysAgo)), ("WeightGrams", "500"));
        await _forms.ChooseAsync("Kind", kind);
        await _forms.SendAsync("Receive");
        return (await _forms.ReadAsync(".note, [role=status]")).Split(' ')[1];
    }

    public async Task JudgeAsync(string label, string verdict, string remarks, int daysAgo)
    {
        await ActAsync("Approve");
        await Page.Locator("[name='Input.SampleId']").SelectOptionAsync(await Page.Locator($"[name='Input.SampleId'] option:has-text('{label}')").GetAttributeAsync("value") ?? "");
        await _forms.ChooseAsync("Verdict", verdict);
        await _forms.FillAsync(("On", DaysAgo(daysAgo)), ("Remarks", remarks));
        await _forms.SendAsync("Put it on record");
    }

    /// <summary>275 bags of 18,975 kg go on board in Santos for Hamburg; the address of the shipment.</summary>
    public async Task<string> ShipAsync(string container, int shippedDaysAgo)
    {
        await _forms.GoAsync("/Shipments/Edit" + "?contract=" + _contract.Split('/')[^1]);
        await _forms.FillAsync(
            ("Lots[0].Bags", "275"), ("Lots[0].NetKg", "18975"), ("PortOfLoading", "BRSSZ"), ("PortOfDestination", "DEHAM"), ("Vessel", "Linnet"), ("BillOfLading", "BL-" + container),
            ("ShippedOn", DaysAgo(shippedDaysAgo)), ("DischargedOn", DaysAgo(10)), ("Containers", container + " SL1"));
        await _forms.SendAsync("Save");
        return Page.Url;
    }

    /// <summary>The lot of a shipment is received; the address of the arrival.</summary>
    public async Task<string> ReceiveAsync(string shipment, string bags, string kilograms, string wet)
    {
        await _forms.GoAsync(shipment);
        await _forms.FollowAsync("main a[href^='/Arrivals/Receive/']");
        await _forms.FillAsync(("ReceivedOn", DaysAgo(5)), ("Bags", bags), ("LandedKg", kilograms), ("WetBags", wet));
        await _forms.SendAsync("Receive");
        return Page.Url;
    }

    public async Task HoldAgainstAsync(string arrival, string approved, string drawn)
    {
        await _forms.GoAsync(arrival);
        await ChooseLabelAsync("#approved", approved);
        await ChooseLabelAsync("#drawn", drawn);
        await _forms.SendAsync("Hold them against each other");
    }

    /// <summary>Every ground that is shown is claimed, 3 % of the landed value for the cup; the letter as it was downloaded.</summary>
    public async Task<(string Name, byte[] Bytes)> ClaimAsync(string arrival)
    {
        await _forms.GoAsync(arrival);
        await _forms.FollowAsync("main a[href^='/Arrivals/OpenClaim/']");
        await _forms.FillAsync("SharePercent", "3");
        await _forms.SendAsync("Open the claim");
        return await _forms.DownloadAsync("a:has-text('Letter as PDF')");
    }

    public async Task TakeIntoStockAsync(string arrival)
    {
        await _forms.GoAsync("/Stock/Receive/" + new Uri(arrival).Segments[^1]);
        await _forms.SendAsync("Take into stock");
    }

    private async Task ChooseLabelAsync(string list, string label) =>
        await Page.Locator(list).SelectOptionAsync(await Page.Locator($"{list} option:has-text('{label}')").GetAttributeAsync("value") ?? "");

    private async Task ActAsync(string act)
    {
        await _forms.GoAsync(_contract);
        await _forms.FollowAsync($"main a[href^='/Contracts/{act}/'], .actions a[href^='/Contracts/{act}/'], a[href^='/Contracts/{act}/']");
    }
}
