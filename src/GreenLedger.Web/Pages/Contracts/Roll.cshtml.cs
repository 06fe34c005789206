using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Data.Contracts;
using GreenLedger.Domain;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Web.Contracts;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Pages.Contracts;

/// <summary>Rolls all that is open to a later month.</summary>
public sealed class RollModel(LedgerContext db, FixingsQuery fixings, HouseZone house, TimeProvider clock) : ContractPage(db, house, clock)
{
    private const int MostMonths = 6;

    [BindProperty]
    public RollForm Input { get; set; } = new();

    /// <summary>The later months, with the spread that the newest quotes give; null where a quote is missing.</summary>
    public IReadOnlyList<(FuturesMonth Month, decimal? Spread)> Months { get; private set; } = [];

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        Input = new RollForm
        {
            Version = Shown!.Version,
            On = Today,
            To = Months.Count > 0 ? Months[0].Month.ToString() : null,
            Spread = Months.Count > 0 ? Months[0].Spread : null,
        };
        return Page();
    }

    public Task<IActionResult> OnPostAsync(CancellationToken cancellationToken) => ActAsync(Input.Version, contract =>
    {
        Rule.Require(FuturesMonth.TryParse(Input.To, Today, out var to), $"'{Input.To}' is not a futures month such as KCN27.", nameof(Input.To));
        contract.Roll(new RollOrder(Input.On!.Value, to, Input.Spread!.Value, Input.Fee), User.Person(), Now);
        return $"What is open of {contract.Ref} stands against {to} {ContractFigures.Signed(to.Market, contract.Position!.Differential)} now.";
    }, cancellationToken);

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        await base.LoadAsync(cancellationToken);
        if (Shown?.Position is not { IsFixed: false } position)
        {
            return;
        }

        var quotes = await fixings.QuotesAsync(Today, cancellationToken);
        var from = quotes.Find(position.Month, Today);
        Months = [.. position.Month.Following(MostMonths).Select(month => (month, quotes.Find(month, Today)?.Quoted - from?.Quoted))];
    }

    public sealed class RollForm
    {
        public int Version { get; set; }

        [Display(Name = "Rolled on")]
        [Required(ErrorMessage = "On which day was it rolled?")]
        public DateOnly? On { get; set; }

        [Display(Name = "To the month")]
        public string? To { get; set; }

        [Required(ErrorMessage = "Type the spread; 0 where there is none.")]
        public decimal? Spread { get; set; }

        [Display(Name = "Fee for the roll")]
        public decimal Fee { get; set; }
    }
}
