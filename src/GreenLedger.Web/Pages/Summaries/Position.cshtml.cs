using GreenLedger.Data;
using GreenLedger.Data.Contracts;
using GreenLedger.Data.Summaries;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Pricing;
using GreenLedger.Domain.Summaries;
using GreenLedger.Web.Display;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Summaries;

/// <summary>What is contracted, priced, unpriced and in stock by futures month, and what a move of the markets would do.</summary>
public sealed class PositionModel(MarketPositionQuery query, FixingsQuery fixings, LedgerContext db, HouseZone zone) : PageModel
{
    /// <summary>A move of the arabica market in US cents/lb.</summary>
    [BindProperty(SupportsGet = true)]
    public decimal? Arabica { get; set; }

    /// <summary>A move of the robusta market in USD/t.</summary>
    [BindProperty(SupportsGet = true)]
    public decimal? Robusta { get; set; }

    public MarketPosition Position { get; private set; } = new([]);

    public IReadOnlyList<MarketMove> Moves { get; private set; } = [];

    /// <summary>From US dollars to the house currency at the newest rate; null without a rate, and where the house reckons in dollars.</summary>
    public Conversion? ToHouse { get; private set; }

    /// <summary>What is wrong with the move that was asked for.</summary>
    public string? Trouble { get; private set; }

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        Position = await query.FindAsync(cancellationToken);
        var currency = await db.Houses.AsNoTracking().Select(house => house.Currency).SingleOrDefaultAsync(cancellationToken);
        var rates = await db.ExchangeRates.AsNoTracking().Where(rate => rate.Kind == RateKind.Market && (rate.Currency == currency || rate.Currency == Currency.Usd)).ToListAsync(cancellationToken);
        ToHouse = new ExchangeRates(rates).Find(Currency.Usd, currency, zone.Today) is { IsSame: false } conversion ? conversion : null;
        try
        {
            Rule.Require(ModelState.IsValid, "A move of a market is a number such as 10 or -7.5: please check what was typed.");
            Moves = Position.IfMoved(
                new Dictionary<FuturesMarket, decimal> { [FuturesMarket.Arabica] = Arabica ?? 0m, [FuturesMarket.Robusta] = Robusta ?? 0m },
                await fixings.QuotesAsync(zone.Today, cancellationToken), zone.Today);
        }
        catch (RuleBrokenException broken)
        {
            Trouble = broken.Message;
        }
    }
}
