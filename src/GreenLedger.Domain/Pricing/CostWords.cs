using System.Globalization;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Pricing;

/// <summary>The arithmetic behind a line of a landed cost, in words and figures.</summary>
internal static class CostWords
{
    public static string Coffee(PricePerWeight price, Parcel parcel, FuturesQuote? quote)
    {
        var of = $"{Kg(parcel.Quantity)} × {price} {parcel.DeliveryWord}";
        return quote is null || parcel.Differential is not { } differential
            ? of
            : $"{of} ({differential.Month} {N(quote.Quoted)} of {Day(quote.On)} {(differential.Quoted < 0m ? "−" : "+")} {N(Math.Abs(differential.Quoted))} {differential.Month.Market.QuoteUnit()})";
    }

    public static string Leg(RouteLeg leg, Route route, Parcel parcel, Base value, Base cif, int year) => leg.Answer switch
    {
        LegAnswer.Included => "included in another leg",
        LegAnswer.None => "none on this route",
        _ => leg.Basis switch
        {
            LegBasis.PerKilogram => $"{Kg(parcel.Quantity)} × {Amount(leg)} a kg",
            LegBasis.PerBag => $"{N(parcel.Bags ?? 0)} bags × {Amount(leg)} a bag",
            LegBasis.PerContainer => PerContainer(leg, route, parcel),
            LegBasis.PerShipment => PerShipment(leg, route, parcel),
            LegBasis.PercentOfValue => $"{leg.Rate} of the value, {value}",
            LegBasis.PercentOfCif when leg.Stage == CostStage.Insurance => $"{leg.Rate} of {route.Insured} of CIF, {cif} with the premium",
            LegBasis.PercentOfCif => $"{leg.Rate} of CIF, {cif}",
            LegBasis.Interest => $"{leg.Rate} a year of the value, {value}, for {N(leg.Days)} days of a year of {N(year)}",
            LegBasis.PerTonneMonth => $"{N(parcel.Quantity.Kilograms / 1000m)} t × {Amount(leg)} a month × {N(leg.Months)} started months",
            _ => throw new InvalidOperationException($"No words for {leg.Basis}."),
        },
    };

    private static string PerContainer(RouteLeg leg, Route route, Parcel parcel) => route.SharedOver == SharedOver.Fill
        ? $"{Amount(leg)} a container × {Kg(parcel.Quantity)} of a fill of {Kg(route.Fill)}"
        : $"{Amount(leg)} a container × {N(Math.Ceiling(parcel.Quantity.Kilograms / route.Fill.Kilograms))} for this quantity alone ({Kg(parcel.Quantity)} at {Kg(route.Fill)} a container)";

    private static string PerShipment(RouteLeg leg, Route route, Parcel parcel) => route.SharedOver == SharedOver.Fill
        ? $"{Amount(leg)} a shipment × {Kg(parcel.Quantity)} of {Kg(route.Fill * route.ContainersPerShipment)} ({N(route.ContainersPerShipment)} × a fill of {Kg(route.Fill)})"
        : $"{Amount(leg)} a shipment, for this quantity alone";

    private static string Amount(RouteLeg leg) => $"{leg.Amount.ToString("#,##0.00####", CultureInfo.InvariantCulture)} {leg.Currency}";

    private static string Kg(Weight weight) => N(weight.Kilograms) + " kg";

    private static string N(decimal number) => number.ToString("#,##0.######", CultureInfo.InvariantCulture);

    private static string Day(DateOnly day) => day.ToString("d MMM yyyy", CultureInfo.InvariantCulture);

    /// <summary>What a share is taken of.</summary>
    internal readonly record struct Base(decimal Amount, Currency Currency)
    {
        public override string ToString() => $"{Amount.ToString("#,##0.00", CultureInfo.InvariantCulture)} {Currency}";
    }
}
