using GreenLedger.Data;
using GreenLedger.Data.Choosing;
using GreenLedger.Data.Stock;
using GreenLedger.Domain;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Stock;
using GreenLedger.Web.Choosing;
using GreenLedger.Web.Display;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Stock;

/// <summary>A coffee that could stand in place of a component: a lot in stock, on offer, or both.</summary>
public sealed record Substitute(string Ref, string Name, Id<Lot>? LotId, Id<Offer>? OfferId, IReadOnlyList<SubstituteWay> Ways);

/// <summary>What it costs from there, and the blend with it.</summary>
/// <param name="From">From stock, or as an offer of the shortlist.</param>
public sealed record SubstituteWay(string From, decimal Cost, decimal? Points, BlendCost Blend);

/// <summary>What blends cost, and what a substitution does to cost and score.</summary>
public sealed class BlendsModel(LedgerContext db, BlendQuery query, ShortlistQuery shortlists, HouseZone house) : PageModel
{
    /// <summary>The component that is to be replaced, by the name of its purpose.</summary>
    [BindProperty(SupportsGet = true)]
    public string? Component { get; set; }

    [BindProperty(SupportsGet = true)]
    public int PageNumber { get; set; } = 1;

    public IReadOnlyList<BlendRow> Rows { get; private set; } = [];

    public Currency Currency { get; private set; }

    /// <summary>The blend of the component that is to be replaced.</summary>
    public BlendRow? Chosen { get; private set; }

    public IReadOnlyList<Substitute> Substitutes { get; private set; } = [];

    public Paging Paging { get; private set; } = Paging.Of(1, 0);

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        var lots = await query.LotsAsync(cancellationToken);
        Rows = await query.ListAsync(lots, cancellationToken);
        Currency = await db.Houses.Select(house => house.Currency).SingleOrDefaultAsync(cancellationToken);
        if (string.IsNullOrEmpty(Component))
        {
            return Page();
        }

        Chosen = Rows.FirstOrDefault(row => row.Cost.Parts.Any(part => part.Name == Component));
        if (Chosen is null)
        {
            return NotFound();
        }

        var all = Together(lots, await OffersAsync(cancellationToken));
        Paging = Paging.Of(PageNumber, all.Count, "coffee", "coffees");
        Substitutes = [.. all.OrderBy(one => one.Ways.Min(way => way.Cost)).ThenBy(one => one.Ref, StringComparer.Ordinal).Skip(Paging.Skip).Take(Paging.Size)];
        return Page();
    }

    /// <summary>Ranked offers at their landed cost, by the first rule set of the house.</summary>
    private async Task<IReadOnlyList<ShortlistEntry>> OffersAsync(CancellationToken cancellationToken)
    {
        var ranking = await Ranking.OfAsync(new RankingWish(), db, shortlists, house.Today, cancellationToken);
        return ranking.Shortlist?.Ranked ?? [];
    }

    /// <summary>One row for a lot, whether it is in stock, on offer or both; a second offer of a lot in stock stands by itself.</summary>
    private List<Substitute> Together(IReadOnlyList<StockedLot> lots, IReadOnlyList<ShortlistEntry> offers)
    {
        var stocked = lots.Where(lot => lot.CostPerKilogram is not null).ToDictionary(lot => lot.LotId);
        var rows = new List<Substitute>();
        foreach (var entry in offers)
        {
            var offered = Way("shortlist", entry.Candidate.CostPerKilogram!.Value, entry.Score?.Score.Points);
            var isStocked = stocked.Remove(entry.Candidate.LotId, out var lot);
            rows.Add(new Substitute(entry.Candidate.Ref, entry.Candidate.Name, lot?.LotId, entry.Candidate.OfferId, isStocked ? [Stock(lot!), offered] : [offered]));
        }

        return [.. rows, .. stocked.Values.Select(lot => new Substitute(lot.Ref, lot.Name, lot.LotId, null, [Stock(lot)]))];
    }

    private SubstituteWay Stock(StockedLot lot) => Way("stock", lot.CostPerKilogram!.Value, lot.Score?.Points);

    private SubstituteWay Way(string from, decimal cost, decimal? points) => new(from, cost, points, Chosen!.Cost.With(Component!, cost, points));
}
