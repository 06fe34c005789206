using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Domain.Contracts;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Pages.Contracts;

/// <summary>Enters that the goods went on board, arrived, or that the contract was closed or cancelled.</summary>
public sealed class MoveModel(LedgerContext db, HouseZone house, TimeProvider clock) : ContractPage(db, house, clock)
{
    [BindProperty(SupportsGet = true)]
    public GoodsMove Move { get; set; }

    [BindProperty]
    public MoveForm Input { get; set; } = new();

    public bool IsBreach => Move == GoodsMove.Ship && Shown?.Goods == GoodsState.AwaitingApproval;

    /// <summary>Of the page, the button, and the field for a reason.</summary>
    public (string Title, string Button, string Reason) Words => Move switch
    {
        GoodsMove.Ship => ("Shipped:", "It is on board", IsBreach ? "What happened" : "Note"),
        GoodsMove.ShipNoMore => ("No more is shipped:", "No more is shipped", "Why what is left does not come"),
        GoodsMove.Arrive => ("Arrived:", "It has arrived", "Note"),
        GoodsMove.Close => ("Close", "Close the contract", "Note"),
        _ => ("Cancel", "Cancel the contract", "Reason"),
    };

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        Input.On = Today;
        return Page();
    }

    public Task<IActionResult> OnPostAsync(CancellationToken cancellationToken) => ActAsync(null, contract =>
    {
        contract.Enter(Move, Input.On!.Value, Input.Reason, User.Person(), Now);
        return $"{contract.Ref} is {contract.Goods.Word()}.";
    }, cancellationToken);

    /// <summary>Signing, amending and approving have pages of their own.</summary>
    protected override async Task<bool> IsThereAsync(CancellationToken cancellationToken) =>
        Move is GoodsMove.Ship or GoodsMove.ShipNoMore or GoodsMove.Arrive or GoodsMove.Close or GoodsMove.Cancel && await base.IsThereAsync(cancellationToken);

    public sealed class MoveForm
    {
        [Display(Name = "Day")]
        [Required(ErrorMessage = "On which day did it happen?")]
        public DateOnly? On { get; set; }

        public string? Reason { get; set; }
    }
}
