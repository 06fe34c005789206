using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Data.Stock;
using GreenLedger.Domain;
using GreenLedger.Domain.Stock;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using GreenLedger.Web.Stock;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Pages.Stock;

/// <summary>Moves part of a lot to another warehouse.</summary>
public sealed class TransferModel(LedgerContext db, StockQuery query, StockActs acts, HouseZone house) : StockLotPage(db, query, house)
{
    [BindProperty]
    public TransferForm Input { get; set; } = new();

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var movement = await acts.TransferAsync(
            Id, Input.WarehouseId, Input.ToWarehouseId, Input.Bags!.Value, Kilograms(Input.WeighedKg, nameof(Input.WeighedKg)), new MovementNote(Input.On!.Value, Input.Document, Input.Reason), User.Person(), cancellationToken);
        return await SaveAsync($"{Display.Figures.ExactWeight((-movement.Amount).Weighed, User.ShowsPounds())} are transferred.", cancellationToken);
    }

    protected override void Prepare() => Input = new TransferForm { On = Today };

    public sealed class TransferForm
    {
        [Required(ErrorMessage = "Choose the warehouse that it leaves.")]
        [Display(Name = "From")]
        public Id<Warehouse> WarehouseId { get; set; }

        [Required(ErrorMessage = "Choose the warehouse that it goes to.")]
        [Display(Name = "To")]
        public Id<Warehouse> ToWarehouseId { get; set; }

        [Required(ErrorMessage = "How many bags? 0 for part of an opened bag.")]
        public int? Bags { get; set; }

        [Required(ErrorMessage = "How many kilograms?")]
        [Display(Name = "Weight as weighed (kg)")]
        public decimal? WeighedKg { get; set; }

        [Required(ErrorMessage = "Give the day.")]
        public DateOnly? On { get; set; }

        public string? Document { get; set; }

        public string? Reason { get; set; }
    }
}
