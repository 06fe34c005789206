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

/// <summary>Keeps kilograms of a lot back for a use.</summary>
public sealed class ReserveModel(LedgerContext db, StockQuery query, StockActs acts, HouseZone house) : StockLotPage(db, query, house)
{
    [BindProperty]
    public ReserveForm Input { get; set; } = new();

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var reservation = await acts.ReserveAsync(Id, Input.WarehouseId, Kilograms(Input.WeightKg, nameof(Input.WeightKg)), Input.Use, Input.PurposeId, User.Person(), cancellationToken);
        return await SaveAsync($"{Display.Figures.ExactWeight(reservation.Weight, User.ShowsPounds())} are reserved for {reservation.Use}.", cancellationToken);
    }

    public sealed class ReserveForm
    {
        [Required(ErrorMessage = "Choose the warehouse.")]
        [Display(Name = "Warehouse")]
        public Id<Warehouse> WarehouseId { get; set; }

        [Required(ErrorMessage = "How many kilograms?")]
        [Display(Name = "Weight (kg)")]
        public decimal? WeightKg { get; set; }

        [Display(Name = "For the purpose")]
        public Id<Purpose>? PurposeId { get; set; }

        [Display(Name = "For, in words")]
        public string? Use { get; set; }
    }
}
