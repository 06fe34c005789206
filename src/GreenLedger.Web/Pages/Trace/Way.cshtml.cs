using GreenLedger.Data;
using GreenLedger.Data.Trace;
using GreenLedger.Documents.Trace;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Trace;
using GreenLedger.Web.Display;
using GreenLedger.Web.Trace;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Trace;

/// <summary>Where coffee came from and where it went, on one page and as a picture, with its mass balance.</summary>
public sealed class WayModel(LedgerContext db, TraceQuery query, HouseZone house, TimeProvider clock) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public TraceFrom From { get; set; }

    [BindProperty(SupportsGet = true)]
    public Guid Id { get; set; }

    [BindProperty(SupportsGet = true)]
    public int PageNumber { get; set; } = 1;

    public TraceCase Case { get; private set; } = null!;

    public TraceWay Way { get; private set; } = null!;

    public TraceDrawing Drawing { get; private set; } = null!;

    /// <summary>What is not gone, in the order in which coffee passes it.</summary>
    public IReadOnlyList<TraceNode> Stops { get; private set; } = [];

    /// <summary>What left the stock, the newest first, one page of it.</summary>
    public IReadOnlyList<TraceNode> Gone { get; private set; } = [];

    public Paging Paging { get; private set; } = null!;

    public IReadOnlyList<MassBalance> Balances { get; private set; } = [];

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (await query.FindAsync(From, Id, cancellationToken) is not { } found)
        {
            return NotFound();
        }

        Case = found;
        Way = found.Way();
        Drawing = new TraceDrawing(Way);
        Stops = [.. Way.Nodes.Where(node => !node.Key.Kind.IsGone())];
        var gone = Way.Nodes.Where(node => node.Key.Kind.IsGone()).OrderByDescending(node => node.On).ToList();
        Paging = Paging.Of(PageNumber, gone.Count, "movement", "movements");
        Gone = [.. gone.Skip(Paging.Skip).Take(Paging.Size)];
        Balances = found.Balances();
        return Page();
    }

    /// <summary>The same as EPCIS 2.0 events in JSON-LD.</summary>
    public async Task<IActionResult> OnGetEpcisAsync(CancellationToken cancellationToken)
    {
        if (await query.FindAsync(From, Id, cancellationToken) is not { } found)
        {
            return NotFound();
        }

        var names = await db.ExchangeNames.AsNoTracking().OfHouseAsync(cancellationToken);
        return File(EpcisExport.Write(found.Facts, found.Way(), names, house.Zone, clock.GetUtcNow(), (await db.StockHabits.AsNoTracking().OfHouseAsync(cancellationToken)) is { IsRoastLossStated: true } habits ? habits.RoastLoss : (Percent?)null), EpcisExport.MediaType, "epcis events.jsonld");
    }

    /// <summary>The reference of a lot of the trace.</summary>
    public string? LotOf(TraceNode node) => Case.Facts.Lots.FirstOrDefault(lot => lot.Id == node.LotId)?.Ref;
}
