using System.ComponentModel.DataAnnotations;
using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Web.Arrivals;

/// <summary>What was found when a lot was received, as it is typed.</summary>
public class ReceiptForm
{
    [Required(ErrorMessage = "Give the day on which it was received.")]
    [Display(Name = "Received on")]
    public DateOnly? ReceivedOn { get; set; }

    [Display(Name = "Bags received")]
    [Required(ErrorMessage = "How many bags came?")]
    public int? Bags { get; set; }

    [Required(ErrorMessage = "Weigh it: how many kilograms net?")]
    [Display(Name = "Landed net weight (kg)")]
    public decimal? LandedKg { get; set; }

    [Display(Name = "Wet bags")]
    public int? WetBags { get; set; }

    [Display(Name = "Torn bags")]
    public int? TornBags { get; set; }

    [Display(Name = "Stained bags")]
    public int? StainedBags { get; set; }

    [Display(Name = "Insects")]
    public bool IsInfested { get; set; }

    [Display(Name = "Infested bags")]
    public int? InfestedBags { get; set; }

    [Display(Name = "Odour that is not coffee")]
    public string? Odour { get; set; }

    [Display(Name = "Bags with that odour")]
    public int? OdourBags { get; set; }

    [Display(Name = "Seal")]
    public bool? SealIntact { get; set; }

    [Display(Name = "Temperature (°C)")]
    public decimal? TemperatureCelsius { get; set; }

    [Display(Name = "Relative humidity (%)")]
    public decimal? HumidityPercent { get; set; }

    public string? Note { get; set; }

    /// <summary>Fills the form with what stands.</summary>
    public void Show(Receipt receipt)
    {
        var condition = receipt.Condition;
        (ReceivedOn, Bags, LandedKg, Note) = (receipt.On, receipt.Bags, receipt.Landed.Kilograms / 1.000000000m, receipt.Note);
        (WetBags, TornBags, StainedBags, InfestedBags, OdourBags) = (condition.WetBags, condition.TornBags, condition.StainedBags, condition.InfestedBags, condition.OdourBags);
        (IsInfested, Odour, SealIntact) = (condition.IsInfested, condition.Odour, condition.SealIntact);
        (TemperatureCelsius, HumidityPercent) = (receipt.TenthsOfCelsius / 10m, receipt.Humidity?.Points);
    }

    /// <exception cref="RuleBrokenException">A figure cannot be.</exception>
    public Receipt Receipt()
    {
        Rule.Require(LandedKg is >= 0m and <= 1_000_000_000m, "The landed net weight lies at 0 kg or above.", nameof(LandedKg));
        Rule.Require(TemperatureCelsius is null or (>= -40m and <= 80m), "The temperature lies between −40 and 80 °C.", nameof(TemperatureCelsius));
        Rule.Require(HumidityPercent is null or (>= 0m and <= 100m), "The humidity lies between 0 and 100 %.", nameof(HumidityPercent));
        return new Receipt(
            ReceivedOn!.Value,
            Bags!.Value,
            Weight.FromKilograms(LandedKg.Value),
            new ReceiptCondition(WetBags ?? 0, TornBags ?? 0, StainedBags ?? 0, IsInfested, Odour, SealIntact, InfestedBags ?? 0, OdourBags ?? 0),
            Note,
            TemperatureCelsius is { } celsius ? decimal.ToInt32(Math.Round(celsius * 10m, 0, MidpointRounding.AwayFromZero)) : null,
            HumidityPercent is { } humidity ? Percent.Of(humidity) : null);
    }
}

/// <summary>The same when it is corrected.</summary>
public sealed class CorrectionForm : ReceiptForm
{
    public int Version { get; set; }

    [Display(Name = "Reason for the correction")]
    public string? Reason { get; set; }
}
