using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Web.Api;

/// <summary>What was found when a lot was received.</summary>
/// <param name="LandedKg">Net, as weighed here.</param>
/// <param name="Odour">What it smells of besides coffee.</param>
/// <param name="SealIntact">Left out where nobody looked.</param>
/// <param name="Note">Needed where more came than was shipped.</param>
internal sealed record LotReceiptRequest(
    DateOnly ReceivedOn,
    int Bags,
    decimal LandedKg,
    int WetBags = 0,
    int TornBags = 0,
    int StainedBags = 0,
    bool IsInfested = false,
    int InfestedBags = 0,
    string? Odour = null,
    int OdourBags = 0,
    bool? SealIntact = null,
    decimal? TemperatureCelsius = null,
    decimal? HumidityPercent = null,
    string? Note = null)
{
    public Receipt Receipt()
    {
        Rule.Require(LandedKg is >= 0m and <= 1_000_000_000m, "The landed net weight lies at 0 kg or above.", nameof(LandedKg));
        Rule.Require(TemperatureCelsius is null or (>= -40m and <= 80m), "The temperature lies between −40 and 80 °C.", nameof(TemperatureCelsius));
        return new Receipt(
            ReceivedOn,
            Bags,
            Weight.FromKilograms(LandedKg),
            new ReceiptCondition(WetBags, TornBags, StainedBags, IsInfested, Odour, SealIntact, InfestedBags, OdourBags),
            Note,
            TemperatureCelsius is { } celsius ? decimal.ToInt32(Math.Round(celsius * 10m, 0, MidpointRounding.AwayFromZero)) : null,
            HumidityPercent is { } humidity ? Percent.Of(humidity) : null);
    }
}

/// <summary>Receives a lot of a shipment.</summary>
internal sealed record ReceiveLotRequest(Guid ShipmentLotId, LotReceiptRequest Receipt);

/// <summary>Puts a receipt right; how it stood before stays with the reason.</summary>
internal sealed record CorrectionRequest(LotReceiptRequest Receipt, string Reason);
