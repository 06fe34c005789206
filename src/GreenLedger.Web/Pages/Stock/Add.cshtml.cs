using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Data.Stock;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Stock;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using GreenLedger.Web.Stock;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Pages.Stock;

/// <summary>Coffee that comes without an arrival: opening stock, a return, a gain.</summary>
public sealed class AddModel(LedgerContext db, StockQuery query, StockActs acts, HouseZone house) : StockLotPage(db, query, house)
{
    [BindProperty]
    public AddForm Input { get; set; } = new();

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        Rule.Require(Input.PackedKg is >= 0m and <= 100_000_000m, "The weight as packed lies at 0 kg or above.", nameof(Input.PackedKg));
        var amount = new StockAmount(Input.Bags!.Value, Weight.FromKilograms(Input.PackedKg.Value), Kilograms(Input.WeighedKg, nameof(Input.WeighedKg)));
        var movement = await acts.AddAsync(Id, Input.WarehouseId, Input.Kind, amount, new MovementNote(Input.On!.Value, Input.Document, Input.Reason), User.Person(), cancellationToken);
        return await SaveAsync($"Written down: {movement.Kind.Word()}, {Display.Figures.ExactWeight(movement.Weighed, User.ShowsPounds())}.", cancellationToken);
    }

    protected override void Prepare() => Input = new AddForm { On = Today };

    public sealed class AddForm
    {
        [Display(Name = "What it is")]
        public MovementKind Kind { get; set; } = MovementKind.Opening;

        [Required(ErrorMessage = "Choose the warehouse.")]
        [Display(Name = "Warehouse")]
        public Id<Warehouse> WarehouseId { get; set; }

        [Required(ErrorMessage = "How many bags came?")]
        public int? Bags { get; set; }

        [Required(ErrorMessage = "What do the papers say is in the bags?")]
        [Display(Name = "Weight as packed (kg)")]
        public decimal? PackedKg { get; set; }

        [Required(ErrorMessage = "How many kilograms came by your scales?")]
        [Display(Name = "Weight as weighed (kg)")]
        public decimal? WeighedKg { get; set; }

        [Required(ErrorMessage = "Give the day.")]
        public DateOnly? On { get; set; }

        public string? Document { get; set; }

        public string? Reason { get; set; }
    }
}
