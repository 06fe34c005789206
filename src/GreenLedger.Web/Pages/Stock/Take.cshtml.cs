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

/// <summary>Coffee that leaves: to roasting, as a sample, to a customer, or as a loss.</summary>
public sealed class TakeModel(LedgerContext db, StockQuery query, StockActs acts, HouseZone house) : StockLotPage(db, query, house)
{
    [BindProperty]
    public TakeForm Input { get; set; } = new();

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var movement = await acts.TakeAsync(
            Id, Input.WarehouseId, Input.Kind, Input.Bags!.Value, Kilograms(Input.WeighedKg, nameof(Input.WeighedKg)), new MovementNote(Input.On!.Value, Input.Document, Input.Reason, Input.PurposeId), User.Person(), cancellationToken);
        return await SaveAsync($"Written down: {movement.Kind.Word()}, {Display.Figures.ExactWeight((-movement.Amount).Weighed, User.ShowsPounds())}.", cancellationToken);
    }

    protected override void Prepare() => Input = new TakeForm { On = Today, Bags = 0 };

    public sealed class TakeForm
    {
        [Display(Name = "What it is")]
        public MovementKind Kind { get; set; } = MovementKind.Release;

        [Required(ErrorMessage = "Choose the warehouse that it leaves.")]
        [Display(Name = "Warehouse")]
        public Id<Warehouse> WarehouseId { get; set; }

        [Required(ErrorMessage = "How many bags leave? 0 for part of an opened bag.")]
        public int? Bags { get; set; }

        [Required(ErrorMessage = "How many kilograms leave?")]
        [Display(Name = "Weight as weighed (kg)")]
        public decimal? WeighedKg { get; set; }

        [Display(Name = "For")]
        public Id<Purpose>? PurposeId { get; set; }

        [Required(ErrorMessage = "Give the day.")]
        public DateOnly? On { get; set; }

        public string? Document { get; set; }

        public string? Reason { get; set; }
    }
}
