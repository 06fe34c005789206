using GreenLedger.Data.Arrivals;
using GreenLedger.Documents.Layout;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Web.Arrivals;
using GreenLedger.Web.Display;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace GreenLedger.Web.Pages.Arrivals;

/// <summary>What the house claims of its sellers, and how it ended.</summary>
public sealed class ClaimsModel(ClaimQuery query) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public string? Search { get; set; }

    [BindProperty(SupportsGet = true)]
    public bool? Open { get; set; }

    [BindProperty(SupportsGet = true)]
    public ClaimOutcome? Outcome { get; set; }

    [BindProperty(SupportsGet = true)]
    public bool? Late { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? Sort { get; set; }

    public IReadOnlyList<Claim> Rows { get; private set; } = [];

    public Paging Paging { get; private set; } = Paging.Of(1, 0);

    public bool HasAny { get; private set; }

    public async Task OnGetAsync([FromQuery(Name = "pageNumber")] int number, CancellationToken cancellationToken)
    {
        HasAny = await query.CountAsync(new ClaimFilter(), cancellationToken) > 0;
        Paging = Paging.Of(number, await query.CountAsync(Filter, cancellationToken), "claim", "claims");
        Rows = await query.ListAsync(Filter, Sort, Paging.Skip, Paging.Size, cancellationToken);
    }

    /// <summary>What the list shows, every page of it, as a workbook.</summary>
    public async Task<IActionResult> OnGetWorkbookAsync(CancellationToken cancellationToken)
    {
        TableColumn<Claim>[] columns =
        [
            TableColumn<Claim>.Text("Claim", row => row.Ref, 12),
            TableColumn<Claim>.Text("Seller", row => row.Case.Parties.Seller, 28),
            TableColumn<Claim>.Text("Contract", row => row.Case.Parties.ContractRef, 12),
            TableColumn<Claim>.Text("Lot", row => row.Case.Goods.LotRef, 16),
            TableColumn<Claim>.Text("Name of the lot", row => row.Case.Goods.LotName, 32),
            TableColumn<Claim>.Text("Shipment", row => row.Case.Goods.ShipmentRef ?? "", 12),
            TableColumn<Claim>.Text("Grounds", row => string.Join(", ", row.Case.Grounds().Select(ground => ground.Word())), 32),
            TableColumn<Claim>.Day("Made on", row => row.On),
            TableColumn<Claim>.Day("Deadline", row => row.LastDay),
            TableColumn<Claim>.YesNo("Late", row => row.IsLate),
            TableColumn<Claim>.YesNo("Late, accepted", row => row.IsAcceptedLate),
            TableColumn<Claim>.Text("Currency", row => row.Case.Currency.Code, 10),
            TableColumn<Claim>.Number("Claimed", row => row.Amount?.Amount),
            TableColumn<Claim>.Text("Outcome", ArrivalFigures.Word, 16),
            TableColumn<Claim>.Number("Settled at", row => row.Settled?.Amount),
            TableColumn<Claim>.Day("Settled on", row => row.SettledOn),
        ];
        return await this.WorkbookAsync("Claims", columns, await query.ListAsync(Filter, Sort, 0, null, cancellationToken), cancellationToken);
    }

    private ClaimFilter Filter => new(Search, Open, Outcome, Late);
}
