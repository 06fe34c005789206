using GreenLedger.Data;
using GreenLedger.Data.Contracts;
using GreenLedger.Domain;
using GreenLedger.Domain.Contracts;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Filters;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Contracts;

/// <summary>An act on one contract: the page shows the contract, then does one thing to it and leads back.</summary>
public abstract class ContractPage(LedgerContext db, TimeProvider clock) : FormPage
{
    [BindProperty(SupportsGet = true)]
    public Id<Contract> Id { get; set; }

    /// <summary>As it is stored; what the page shows beside its form.</summary>
    public Contract? Shown { get; private set; }

    protected LedgerContext Db => db;

    protected DateTimeOffset Now => clock.GetUtcNow();

    protected DateOnly Today => DateOnly.FromDateTime(Now.UtcDateTime);

    /// <summary>Without the contract there is no page, however the form was filled in.</summary>
    public override async Task OnPageHandlerExecutionAsync(PageHandlerExecutingContext context, PageHandlerExecutionDelegate next)
    {
        if (await IsThereAsync(HttpContext.RequestAborted))
        {
            await base.OnPageHandlerExecutionAsync(context, next);
        }
        else
        {
            context.Result = NotFound();
        }
    }

    /// <summary>Whether what the address names is there.</summary>
    protected override Task<bool> IsThereAsync(CancellationToken cancellationToken) =>
        db.Contracts.AnyAsync(contract => contract.Id == Id, cancellationToken);

    /// <summary>Loads the contract to change it, acts, saves, and leads to its page.</summary>
    protected async Task<IActionResult> ActAsync(int? openedOn, Func<Contract, string> act, CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        if (await db.Contracts.Whole().SingleOrDefaultAsync(contract => contract.Id == Id, cancellationToken) is not { } contract)
        {
            return NotFound();
        }

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
