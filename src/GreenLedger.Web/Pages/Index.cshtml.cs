using GreenLedger.Data.Summaries;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace GreenLedger.Web.Pages;

public sealed class IndexModel(FirstHourQuery ledger) : PageModel
{
    public string House { get; private set; } = "";

    public IReadOnlyList<FirstStep> Steps { get; private set; } = [];

    public IReadOnlyList<Figure> Figures { get; private set; } = [];

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        var held = await ledger.FindAsync(cancellationToken);
        House = held.House;
        FirstStep[] steps =
        [
            Make("Name and currency", "Landed cost and shortlists are in the currency of the house.", true, "Settings", "Set up", "/Settings/Index"),
            Make("A route to your warehouse", "From the port of loading to your door, with what each leg costs.", held.Routes > 0, "Pricing", "Set up a route", "/Pricing/Routes", "/Pricing/Index"),
            Make("Market and exchange rates", "Differentials need the futures of their month, foreign prices the day's rate.", held.Quotes > 0, "Pricing", "Enter rates", "/Pricing/Rates", "/Pricing/Index"),
            Make("The first offer list", "As the exporter sent it: a workbook or a text table.", held.OfferLists > 0 || held.Offers > 0, "Offers", "Load a list", "/Offers/Import", "/Offers/Index"),
            Make("What the samples scored", "Enter score sheets, or import past results.", held.CuppedSamples > 0, "Cupping", "Enter sheets", "/Cupping/Index"),
        ];
        var next = Array.Find(steps, step => !step.IsDone && step.Address is not null);
        Steps = [.. steps.Select(step => step with { IsNext = step == next })];
        Figures =
        [
            new("offers", held.Offers, AddressIn("Offers")),
            new("lots", held.Lots, AddressIn("Offers")),
            new("samples cupped", held.CuppedSamples, AddressIn("Cupping")),
            new("routes", held.Routes, AddressIn("Pricing")),
        ];
    }

    /// <summary>The button leads to the first of the pages that there is; without the right it names who can do it.</summary>
    private FirstStep Make(string title, string why, bool isDone, string area, string button, params string[] pages)
    {
        var address = User.MayWrite(area) || (isDone && User.MayRead(area))
            ? pages.Select(page => Url.Page(page)).FirstOrDefault(found => found is not null)
            : null;
        return new FirstStep(title, why, isDone, address, button, $"Ask {AreaAccess.WhoWrites(area)}.", IsNext: false);
    }

    private string? AddressIn(string room) => User.MayRead(room) ? Url.Page($"/{room}/Index") : null;

    public sealed record FirstStep(string Title, string Why, bool IsDone, string? Address, string Button, string Who, bool IsNext);

    public sealed record Figure(string Word, int Count, string? Address);
}
