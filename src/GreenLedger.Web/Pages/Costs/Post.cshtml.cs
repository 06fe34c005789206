using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Costs;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Pricing;
using GreenLedger.Web.Costs;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Costs;

/// <summary>Posts an invoice on a contract, a shipment or a lot.</summary>
public sealed class PostModel(LedgerContext db, PostingActs acts, HouseZone house) : FormPage
{
    [BindProperty]
    public PostForm Input { get; set; } = new();

    /// <summary>Shipments, contracts and lots, each by its number and name.</summary>
    public IReadOnlyList<PostTarget> Targets { get; private set; } = [];

    public IReadOnlyList<string> Currencies { get; private set; } = [];

    public async Task OnGetAsync(string? on, CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        Input = new PostForm { OnWhat = PostTarget.Find(Targets, on)?.Written, On = house.Today, Currency = Currencies[0] };
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        var target = PostTarget.Find(Targets, Input.OnWhat);
        Rule.Require(target is not null, "No one contract, shipment or lot has that number or name: choose it from the list.", nameof(Input.OnWhat));
        Rule.Require(Currency.TryParse(Input.Currency, null, out var currency), "Choose the currency of the invoice.", nameof(Input.Currency));
        Rule.Require(Input.Amount is > -1_000_000_000m and < 1_000_000_000m, "The amount lies below a thousand million.", nameof(Input.Amount));
        var posting = await acts.PostAsync(target.On, Input.Stage, Money.Exactly(Input.Amount.Value, currency, nameof(Input.Amount)), Input.On!.Value, Input.Document ?? "", Input.From, Input.Basis, CoveredDays.Of(Input.CoversFrom, Input.CoversUntil), User.Person(), cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        Say($"{posting.Document} is posted.");
        return RedirectToPage("Posting", new { posting.Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        var contracts = await db.Contracts.Where(contract => contract.Goods != GoodsState.Drafted && contract.Goods != GoodsState.Cancelled).OrderByDescending(contract => contract.Ref).Select(contract => new { contract.Id, contract.Ref, Seller = db.Suppliers.Where(one => one.Id == contract.SupplierId).Select(one => one.Name).FirstOrDefault() }).ToListAsync(cancellationToken);
        var shipments = await db.Shipments.OrderByDescending(shipment => shipment.Ref).Select(shipment => new { shipment.Id, shipment.Ref, shipment.Vessel }).ToListAsync(cancellationToken);
        var lots = await db.Lots.Where(lot => db.ContractLots.Any(line => line.LotId == lot.Id) || db.Holdings.Any(holding => holding.LotId == lot.Id)).OrderBy(lot => lot.Ref).Select(lot => new { lot.Id, lot.Ref, lot.Name }).ToListAsync(cancellationToken);
        Targets =
        [
            .. shipments.Select(one => new PostTarget($"shipment:{one.Id}", one.Ref, $"Shipment {one.Ref} {one.Vessel}", new PostedOn(null, one.Id, null))),
            .. contracts.Select(one => new PostTarget($"contract:{one.Id}", one.Ref, $"Contract {one.Ref} {one.Seller}", new PostedOn(one.Id, null, null))),
            .. lots.Select(one => new PostTarget($"lot:{one.Id}", one.Ref, $"Lot {one.Ref} {one.Name}", new PostedOn(null, null, one.Id))),
        ];
        var house = await db.Houses.Select(one => one.Currency).SingleOrDefaultAsync(cancellationToken);
        var known = await db.ExchangeRates.Select(rate => rate.Currency).Distinct().ToListAsync(cancellationToken);
        Currencies = [.. known.Append(Currency.Eur).Append(house).Where(one => one != default).Distinct().OrderBy(one => one != house).ThenBy(one => one.Code).Select(one => one.Code)];
    }

    public sealed class PostForm
    {
        [Required(ErrorMessage = "Choose what it is posted on.")]
        [Display(Name = "Charged to")]
        public string? OnWhat { get; set; }

        [Display(Name = "For")]
        public CostStage? Stage { get; set; }

        [Required(ErrorMessage = "What does the invoice come to?")]
        [Display(Name = "Amount")]
        public decimal? Amount { get; set; }

        [Required(ErrorMessage = "Choose the currency.")]
        public string? Currency { get; set; }

        [Required(ErrorMessage = "Give the day of the invoice.")]
        [Display(Name = "Day of the invoice")]
        public DateOnly? On { get; set; }

        [Display(Name = "Storage from")]
        public DateOnly? CoversFrom { get; set; }

        [Display(Name = "Storage until")]
        public DateOnly? CoversUntil { get; set; }

        [Required(ErrorMessage = "Give the number of the invoice.")]
        [Display(Name = "Number of the invoice")]
        public string? Document { get; set; }

        [Display(Name = "From")]
        public string? From { get; set; }

        [Display(Name = "Shared by")]
        public ShareBasis? Basis { get; set; }
    }
}
