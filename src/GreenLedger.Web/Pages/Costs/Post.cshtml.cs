using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Costs;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Pricing;
using GreenLedger.Domain.Shipments;
using GreenLedger.Web.Costs;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Rendering;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Costs;

/// <summary>Posts an invoice on a contract, a shipment or a lot.</summary>
public sealed class PostModel(LedgerContext db, PostingActs acts, HouseZone house) : FormPage
{
    private static readonly string[] Groups = ["Shipments", "Contracts", "Lots"];

    [BindProperty]
    public PostForm Input { get; set; } = new();

    public IReadOnlyList<SelectListItem> Targets { get; private set; } = [];

    public IReadOnlyList<string> Currencies { get; private set; } = [];

    public async Task OnGetAsync(string? on, CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        Input = new PostForm { OnWhat = on, On = house.Today, Currency = Currencies[0] };
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        Rule.Require(Currency.TryParse(Input.Currency, null, out var currency), "Choose the currency of the invoice.", nameof(Input.Currency));
        Rule.Require(Input.Amount is > -1_000_000_000m and < 1_000_000_000m, "The amount lies below a thousand million.", nameof(Input.Amount));
        var posting = await acts.PostAsync(Target(), Input.Stage, Money.Of(Input.Amount.Value, currency), Input.On!.Value, Input.Document ?? "", Input.From, Input.Basis, User.Person(), cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        Say($"{posting.Document} is posted.");
        return RedirectToPage("Posting", new { posting.Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        var contracts = await db.Contracts.Where(contract => contract.Goods != GoodsState.Drafted && contract.Goods != GoodsState.Cancelled).OrderByDescending(contract => contract.Ref).Select(contract => new { contract.Id, contract.Ref }).ToListAsync(cancellationToken);
        var shipments = await db.Shipments.OrderByDescending(shipment => shipment.Ref).Select(shipment => new { shipment.Id, shipment.Ref, shipment.Vessel }).ToListAsync(cancellationToken);
        var lots = await db.Lots.Where(lot => db.ContractLots.Any(line => line.LotId == lot.Id) || db.Holdings.Any(holding => holding.LotId == lot.Id)).OrderBy(lot => lot.Ref).Select(lot => new { lot.Id, lot.Ref, lot.Name }).ToListAsync(cancellationToken);
        var groups = Groups.ToDictionary(name => name, name => new SelectListGroup { Name = name });
        Targets =
        [
            .. shipments.Select(one => new SelectListItem($"{one.Ref} {one.Vessel}", $"shipment:{one.Id}") { Group = groups["Shipments"] }),
            .. contracts.Select(one => new SelectListItem(one.Ref, $"contract:{one.Id}") { Group = groups["Contracts"] }),
            .. lots.Select(one => new SelectListItem($"{one.Ref} {one.Name}", $"lot:{one.Id}") { Group = groups["Lots"] }),
        ];
        var house = await db.Houses.Select(one => one.Currency).SingleOrDefaultAsync(cancellationToken);
        var known = await db.ExchangeRates.Select(rate => rate.Currency).Distinct().ToListAsync(cancellationToken);
        Currencies = [.. known.Append(Currency.Eur).Append(house).Where(one => one != default).Distinct().OrderBy(one => one != house).ThenBy(one => one.Code).Select(one => one.Code)];
    }

    private PostedOn Target()
    {
        var parts = (Input.OnWhat ?? "").Split(':');
        Rule.Require(parts.Length == 2 && Guid.TryParse(parts[1], out _), "Choose what it is posted on: a contract, a shipment or a lot.", nameof(Input.OnWhat));
        var id = Guid.Parse(parts[1]);
        return parts[0] switch
        {
            "contract" => new PostedOn(new Id<Contract>(id), null, null),
            "shipment" => new PostedOn(null, new Id<Shipment>(id), null),
            _ => new PostedOn(null, null, new Id<Lot>(id)),
        };
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

        [Required(ErrorMessage = "Give the number of the invoice.")]
        [Display(Name = "Number of the invoice")]
        public string? Document { get; set; }

        [Display(Name = "From")]
        public string? From { get; set; }

        [Display(Name = "Shared by")]
        public ShareBasis? Basis { get; set; }
    }
}
