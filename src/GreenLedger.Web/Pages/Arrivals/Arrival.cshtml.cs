using GreenLedger.Data;
using GreenLedger.Data.Arrivals;
using GreenLedger.Data.Contracts;
using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Samples;
using GreenLedger.Web.Display;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Arrivals;

/// <summary>One arrival: how it came, what the scales say, and whether it is what was approved.</summary>
public sealed class ArrivalModel(LedgerContext db, ArrivalCaseQuery cases, ClaimQuery claims, FixingStateQuery states, HouseZone house) : FormPage
{
    [BindProperty(SupportsGet = true)]
    public Id<Arrival> Id { get; set; }

    [BindProperty]
    public ArrivalForm Input { get; set; } = new();

    public ArrivalCase Case { get; private set; } = null!;

    /// <summary>Of the contract: what is still to be fixed, and how far what is fixed lies from what landed.</summary>
    public FixingState Fixing { get; private set; } = new(null, null);

    public DateOnly Today => house.Today;

    /// <summary>Deadlines by the standard form of the contract, from discharge.</summary>
    public IReadOnlyList<ClaimDeadline> Deadlines { get; private set; } = [];

    /// <summary>On this arrival, the newest first.</summary>
    public IReadOnlyList<Claim> Claims { get; private set; } = [];

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (!await db.Arrivals.AnyAsync(arrival => arrival.Id == Id, cancellationToken))
        {
            return NotFound();
        }

        await LoadAsync(cancellationToken);
        Input = new ArrivalForm { Version = Case.Arrival.Version, Approved = Case.Arrival.ApprovedSampleId, Drawn = Case.Arrival.ArrivalSampleId };
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        if (await db.Arrivals.SingleOrDefaultAsync(arrival => arrival.Id == Id, cancellationToken) is not { } arrival)
        {
            return NotFound();
        }

        OpenedOn(arrival, Input.Version);
        arrival.Compare(
            await db.Samples.SingleOrDefaultAsync(sample => sample.Id == Input.Approved, cancellationToken),
            await db.Samples.SingleOrDefaultAsync(sample => sample.Id == Input.Drawn, cancellationToken));
        await db.SaveChangesAsync(cancellationToken);
        return RedirectToPage("Arrival", new { Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        Case = (await cases.FindAsync(Id, cancellationToken))!;
        Deadlines = ClaimTimes.Deadlines(Case.Contract.Terms.Form, Case.Shipment);
        Fixing = await states.OfAsync(Case.Contract, Today, cancellationToken);
        Claims = await claims.ListAsync(new ClaimFilter(Arrival: Id), null, 0, null, cancellationToken);
    }

    public sealed class ArrivalForm
    {
        public int Version { get; set; }

        public Id<Sample>? Approved { get; set; }

        public Id<Sample>? Drawn { get; set; }
    }
}
