using GreenLedger.Data;
using GreenLedger.Data.Arrivals;
using GreenLedger.Data.Shipments;
using GreenLedger.Data.Stock;
using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Web.Arrivals;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Arrivals;

/// <summary>Puts right what was received.</summary>
public sealed class CorrectModel(LedgerContext db, StockQuery stock, TimeProvider clock) : FormPage
{
    [BindProperty(SupportsGet = true)]
    public Id<Arrival> Id { get; set; }

    [BindProperty]
    public CorrectionForm Input { get; set; } = new();

    public Arrival? Arrival { get; private set; }

    public string LotName { get; private set; } = "";

    protected override bool IsThere => Arrival is not null;

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        if (Arrival is null)
        {
            return NotFound();
        }

        Input.Show(Arrival.Receipt);
        Input.Version = Arrival.Version;
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        if (await db.Arrivals.Whole().SingleOrDefaultAsync(one => one.Id == Id, cancellationToken) is not { } arrival)
        {
            return NotFound();
        }

        OpenedOn(arrival, Input.Version);
        var shipment = await db.Shipments.AsNoTracking().Whole().SingleAsync(one => one.Id == arrival.ShipmentId, cancellationToken);
        var receipt = Input.Receipt();
        Rule.Require(
            (receipt.Bags, receipt.Landed, receipt.On) == (arrival.Bags, arrival.Landed, arrival.ReceivedOn) || !await stock.IsInStockAsync(Id, cancellationToken),
            "This arrival is in stock with these figures: take that movement back first, then correct the receipt and take it in again.", "");
        arrival.Correct(shipment, receipt, Input.Reason ?? "", User.Person(), clock.GetUtcNow());
        await db.SaveChangesAsync(cancellationToken);
        Say("The receipt is corrected; how it stood before is kept below.");
        return RedirectToPage("Arrival", new { Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        Arrival = await db.Arrivals.AsNoTracking().SingleOrDefaultAsync(one => one.Id == Id, cancellationToken);
        LotName = await db.Lots.Where(lot => db.Arrivals.Any(arrival => arrival.Id == Id && arrival.LotId == lot.Id)).Select(lot => lot.Ref + " " + lot.Name).SingleOrDefaultAsync(cancellationToken) ?? "";
    }
}
