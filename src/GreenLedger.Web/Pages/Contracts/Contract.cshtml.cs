using GreenLedger.Data.Arrivals;
using GreenLedger.Data.Contracts;
using GreenLedger.Data.Shipments;
using GreenLedger.Documents.Contracts;
using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Pricing;
using GreenLedger.Domain.Samples;
using GreenLedger.Domain.Shipments;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace GreenLedger.Web.Pages.Contracts;

/// <summary>One contract: where its goods and its price stand, its terms and versions, and the arithmetic of its price.</summary>
public sealed class ContractModel(ContractQuery query, FixingsQuery fixings, FixingStateQuery states, ApprovalQuery approvals, ShipmentQuery shipments, ClaimQuery claims, HouseZone house, TimeProvider clock) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public Id<Contract> Id { get; set; }

    public Contract Contract { get; private set; } = null!;

    /// <summary>The file that an earlier contract was taken in from; null for any other.</summary>
    public string? SourceName { get; private set; }

    public IReadOnlyDictionary<Id<Person>, string> Names { get; private set; } = new Dictionary<Id<Person>, string>();

    /// <summary>The label codes of the samples that were judged.</summary>
    public IReadOnlyDictionary<Id<Sample>, string> SampleCodes { get; private set; } = new Dictionary<Id<Sample>, string>();

    /// <summary>The fixing that is to be done; null where nothing is open.</summary>
    public FixingTask? Task { get; private set; }

    /// <summary>Under- or over-fixed; null where neither, or where it is too soon to say.</summary>
    public FixingGap? Gap { get; private set; }

    /// <summary>The newest quote of the open month.</summary>
    public FuturesQuote? Quote { get; private set; }

    /// <summary>What the contract is worth; null where something is open and no quote is known.</summary>
    public InvoiceValue? Invoice { get; private set; }

    /// <summary>The shipments that carry lots of it.</summary>
    public IReadOnlyList<Shipment> Parts { get; private set; } = [];

    /// <summary>What of each lot is on board, received and left.</summary>
    public ContractProgress Progress { get; private set; } = new([]);

    /// <summary>Under it, the newest first.</summary>
    public IReadOnlyList<Claim> Claims { get; private set; } = [];

    /// <summary>Something was not shipped in its period, or should have come and was not received.</summary>
    public bool IsMissing { get; private set; }

    public bool MayWrite => User.MayWrite("Contracts");

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (await query.FindAsync(Id, cancellationToken) is not { } contract)
        {
            return NotFound();
        }

        Contract = contract;
        SourceName = await query.SourceNameAsync(contract, cancellationToken);
        Names = await query.NamesAsync(contract, cancellationToken);
        SampleCodes = await approvals.CodesAsync(contract, cancellationToken);
        Quote = contract.OpenMonth is { } month ? (await fixings.QuotesAsync(house.Today, cancellationToken)).Find(month, house.Today) : null;
        Invoice = contract.Value(contract.NetWeight, Quote?.Quoted);
        (Parts, var arrivals) = await shipments.PartsAsync([contract.Id], cancellationToken);
        Progress = ContractProgress.Of(contract, Parts, arrivals.Select(arrival => arrival.ShipmentLotId).ToHashSet());
        Claims = await claims.ListAsync(new ClaimFilter(Contract: Id), null, 0, null, cancellationToken);
        IsMissing = Progress.Lots.Any(lot => MissingGoods.NotShippedOf(contract, Progress, lot).Finding(house.Today).IsShown)
            || Parts.Any(part => MissingGoods.IsOverdue(part, house.Today) && part.Lots.Any(lot => lot.ContractId == Id && arrivals.All(arrival => arrival.ShipmentLotId != lot.Id)));
        (Task, Gap) = await states.OfAsync(contract, Parts, arrivals, house.Today, cancellationToken);
        return Page();
    }

    /// <summary>The version that holds, or the draft, as a purchase confirmation.</summary>
    public async Task<IActionResult> OnGetConfirmationAsync(CancellationToken cancellationToken)
    {
        if (await query.FindAsync(Id, cancellationToken) is not { } contract)
        {
            return NotFound();
        }

        var file = new MemoryStream();
        PurchaseConfirmation.Write(contract, User.PersonName(), clock.GetUtcNow(), file, house.Zone);
        file.Position = 0;
        return File(file, PurchaseConfirmation.MediaType, $"{contract.Ref}-v{(contract.InForce ?? contract.Newest).Number}.pdf");
    }
}
