using GreenLedger.Data.Contracts;
using GreenLedger.Domain;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Http.HttpResults;

namespace GreenLedger.Web.Api;

/// <summary>Reckons without storing anything.</summary>
internal static class ContractCalculators
{
    [StoresNothing]
    public static async Task<Ok<CalculationReply>> FixingAsync(
        FixingRequest request, FixingsQuery fixings, HouseZone house, CancellationToken cancellationToken)
    {
        var today = request.On ?? house.Today;
        var month = PricingRequests.Month(request.Month, today);
        var net = Weight.FromKilograms(request.NetWeightKg);
        Rule.Require(net > Weight.Zero, "State the net weight in kg.", nameof(request.NetWeightKg));
        var lots = request.MarketLots ?? PriceTerms.UsualLots(month.Market, net);
        Rule.Require(lots is null or > 0, "The lots of the market are one or more.", nameof(request.MarketLots));
        var position = FixingPosition.Of(
            month, request.Differential, lots is { } whole ? month.Market.LotWeight() * whole : net,
            [.. (request.Fixings ?? []).Select(fixing => Part(fixing, request, month, today))]);
        if (request.Settlement is { } level)
        {
            FixingPosition.RequireLevel(month.Market, level, nameof(request.Settlement));
        }

        var share = request.ProvisionalSharePercent is { } percent ? Percent.Of(percent) : (Percent?)null;
        var calendar = await fixings.CalendarAsync(cancellationToken);
        return TypedResults.Ok(new CalculationReply(
            PriceTerms.LotsOf(month.Market, net),
            lots,
            PositionReply.Of(position),
            !position.IsFixed && request.Settlement is { } settlement ? position.Provisional(settlement) : null,
            InvoiceReply.Of(InvoiceValue.Of(position, net, request.Settlement, share)),
            calendar.FirstNotice(month),
            calendar.LastTrading(month),
            calendar.LastSensible(month, null)));
    }

    private static FixedPart Part(CalculatedFixing fixing, FixingRequest request, FuturesMonth month, DateOnly today)
    {
        Rule.Require(fixing.Lots is null || fixing.WeightKg is null, "A fixing is of lots or of a weight, not both.", nameof(request.Fixings));
        Rule.Require(fixing.Lots is null or (> 0 and <= 10_000), "A fixing is of one lot or more.", nameof(request.Fixings));
        return new FixedPart(
            fixing.Month is { } symbol ? PricingRequests.Month(symbol, today) : month,
            fixing.Lots is { } lots ? month.Market.LotWeight() * lots : Weight.FromKilograms(fixing.WeightKg ?? 0m),
            fixing.Level,
            fixing.Differential ?? request.Differential);
    }
}
