using GreenLedger.Data;
using GreenLedger.Data.Contracts;
using GreenLedger.Domain;
using GreenLedger.Domain.Contracts;
using GreenLedger.Web.Display;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Contracts;

/// <summary>An act on one contract: the page shows the contract, then does one thing to it and leads back.</summary>
public abstract class ContractPage(LedgerContext db, HouseZone house, TimeProvider clock) : FormPage
{
    [BindProperty(SupportsGet = true)]
    public Id<Contract> Id { get; set; }

    /// <summary>As it is stored; what the page shows beside its form.</summary>
    public Contract? Shown { get; private set; }

    protected LedgerContext Db => db;

    protected DateTimeOffset Now => clock.GetUtcNow();

    protected DateOnly Today => house.Today;

    protected override Task<bool> IsThereAsync(CancellationToken cancellationToken) =>
        db.Contracts.AnyAsync(contract => contract.Id == Id, cancellationToken);

    /// <summary>Loads the contract to change it, acts, saves, and leads to its page.</summary>
    protected async Task<IActionResult> ActAsync(int? openedOn, Func<Contract, string> act, CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        var contract = await db.Contracts.Whole().SingleAsync(contract => contract.Id == Id, cancellationToken);
        if (openedOn is { } version)
        {
            OpenedOn(contract, version);
        }

        var said = act(contract);
        await db.SaveChangesAsync(cancellationToken);
        Say(said);
        return RedirectToPage("Contract", new { Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken) =>
        Shown = await db.Contracts.AsNoTracking().Whole().SingleOrDefaultAsync(contract => contract.Id == Id, cancellationToken);
}
