using GreenLedger.Data.Offers;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Pricing;
using GreenLedger.Web.Display;

namespace GreenLedger.Web.Api;

/// <summary>One page of rows: its number from 1, how many pages and rows there are in all.</summary>
internal sealed record PageReply<T>(int Page, int Pages, int Total, IReadOnlyList<T> Rows)
{
    public static PageReply<T> Of(Paging paging, IEnumerable<T> rows) => new(paging.Page, paging.Pages, paging.Total, [.. rows]);
}

/// <summary>An offer as a row; prices per kilogram to four decimals, kg null while the quantity is not stated.</summary>
internal sealed record OfferReply(
    string Id,
    string Ref,
    string LotId,
    string Lot,
    string SupplierId,
    string Supplier,
    string? CountryCode,
    string? Process,
    string? CropYear,
    decimal? Kg,
    AmountRow? PricePerKg,
    string? PriceAsQuoted,
    decimal? DifferentialCentsPerLb,
    decimal? DifferentialUsdPerTonne,
    string? FuturesMonth,
    string? Incoterm,
    string? Place,
    string State,
    decimal? StatedScore,
    DateOnly? ValidUntil,
    DateOnly RevisedOn,
    int? LeastBags)
{
    public static OfferReply Of(OfferRow row) => new(
        row.Id.ToString(), row.Ref, row.LotId.ToString(), row.Lot, row.SupplierId.ToString(), row.Supplier, row.CountryCode, row.Process, row.CropYear,
        Asked.Kg(row.Quantity), Asked.PerKg(row.Price), row.Price?.ToString(), Asked.Cents(row.Differential), Asked.Dollars(row.Differential),
        row.Differential?.Month.ToString(), row.Incoterm?.Word(), row.Place, row.State.Word(), row.StatedScore?.Points, row.ValidUntil, row.RevisedOn, row.LeastBags);
}

/// <summary>What an offer asked from one day on; the list that said so, or null where it was typed.</summary>
internal sealed record OfferPriceReply(
    DateOnly On, AmountRow? PricePerKg, decimal? DifferentialCentsPerLb, decimal? DifferentialUsdPerTonne, string? FuturesMonth, decimal? Kg, string State, string? List)
{
    public static OfferPriceReply Of(OfferPriceRow row) => new(
        row.On, Asked.PerKg(row.Price), Asked.Cents(row.Differential), Asked.Dollars(row.Differential), row.Differential?.Month.ToString(),
        Asked.Kg(row.Quantity), row.State.Word(), row.List);
}

/// <summary>
/// One offer with its packing, its price history (the newest first) and its landed cost today. Where that is not known, it
/// is null and the problems say what is missing.
/// </summary>
internal sealed record WholeOfferReply(
    string Id,
    string Ref,
    string LotId,
    string Lot,
    string SupplierId,
    string Supplier,
    string? CountryCode,
    decimal? Kg,
    int? Bags,
    decimal? BagKg,
    int? LeastBags,
    AmountRow? PricePerKg,
    string? PriceAsQuoted,
    decimal? DifferentialCentsPerLb,
    decimal? DifferentialUsdPerTonne,
    string? FuturesMonth,
    string? Incoterm,
    string? Place,
    string State,
    decimal? StatedScore,
    DateOnly? ValidUntil,
    string? Availability,
    DateOnly FirstOfferedOn,
    DateOnly RevisedOn,
    AmountRow? LandedCostPerKg,
    IReadOnlyList<string> LandedCostProblems,
    IReadOnlyList<OfferPriceReply> Prices)
{
    public static WholeOfferReply Of(OfferView view, LandedCost? cost)
    {
        var (offer, lot, supplier, prices) = view;
        return new WholeOfferReply(
            offer.Id.ToString(), offer.Ref, lot.Id.ToString(), lot.Name, supplier.Id.ToString(), supplier.Name, lot.CountryCode,
            Asked.Kg(offer.Quantity), offer.Bags, offer.BagWeight?.Kilograms, offer.LeastBags, Asked.PerKg(offer.Price), offer.Price?.ToString(),
            Asked.Cents(offer.Differential), Asked.Dollars(offer.Differential), offer.Differential?.Month.ToString(), offer.Incoterm?.Word(), offer.Place,
            offer.State.Word(), offer.StatedScore?.Points, offer.ValidUntil, offer.Availability, offer.FirstOfferedOn, offer.RevisedOn,
            cost?.ShownPerKilogram is { } shown ? new AmountRow(shown, cost.Currency.Code) : null,
            [.. cost?.Problems.Select(problem => problem.Message) ?? []],
            [.. prices.Select(OfferPriceReply.Of)]);
    }
}

/// <summary>A lot as a row: what it is, where it grew, and how it is packed.</summary>
internal sealed record LotReply(
    string Id,
    string Ref,
    string Name,
    string? SupplierId,
    string? Supplier,
    string? ProducerId,
    string? Producer,
    string? CountryCode,
    string? Country,
    string? Region,
    string? Varieties,
    string? Process,
    string? ProcessAsWritten,
    string? CropYear,
    string? Grade,
    string? Screen,
    int? AltitudeFromM,
    int? AltitudeToM,
    int? Bags,
    decimal? BagKg,
    decimal? NetKg,
    decimal? StatedMoisturePercent,
    IReadOnlyList<string> Certificates,
    string? Programme,
    string? IcoMark,
    string? Notes)
{
    public static LotReply Of(LotRow row) => new(
        row.Lot.Id.ToString(), row.Lot.Ref, row.Lot.Name, row.Lot.SupplierId?.ToString(), row.Supplier, row.Lot.ProducerId?.ToString(), row.Producer,
        row.Lot.CountryCode, row.Country, row.Lot.Region, row.Lot.Varieties, row.Process, row.Lot.ProcessAsWritten, row.Lot.CropYear, row.Lot.Grade,
        row.Lot.Screen, row.Lot.AltitudeFrom, row.Lot.AltitudeTo, row.Lot.Bags, row.Lot.BagWeight?.Kilograms, row.Lot.NetWeight?.Kilograms,
        row.Lot.StatedMoisture?.Points, row.Lot.Certificates, row.Lot.Programme, row.Lot.IcoMark, row.Lot.Notes);
}

/// <summary>A supplier with how many offers it has, and how many of them stand.</summary>
internal sealed record SupplierReply(string Id, string Name, string Kind, string? CountryCode, string? Country, string? Language, string? Email, int OnOffer, int Offers)
{
    public static SupplierReply Of(SupplierRow row) => new(
        row.Id.ToString(), row.Name, row.Kind.Word(), row.CountryCode, row.Country, row.Language, row.Email, row.OnOffer, row.Offers);
}

/// <summary>A list that was received, with its counts; waiting are the rows set aside that nobody has mended yet.</summary>
internal sealed record OfferListReply(
    string Id, string FileName, string SupplierId, string Supplier, DateOnly ReceivedOn, int Accepted, int Revised, int Unchanged, int SetAside, int Waiting, string By, DateTimeOffset At)
{
    public static OfferListReply Of(OfferListRow row) => new(
        row.Id.ToString(), row.FileName, row.SupplierId.ToString(), row.Supplier, row.ReceivedOn, row.Accepted, row.Revised, row.Unchanged, row.SetAside, row.Waiting, row.By, row.At);
}

/// <summary>Figures with the unit in the name.</summary>
internal static class Asked
{
    public static decimal? Kg(Weight quantity) => quantity == Weight.Zero ? null : quantity.Kilograms;

    public static AmountRow? PerKg(PricePerWeight? price) =>
        price is { } asked ? new AmountRow(Math.Round(asked.PerKilogram, 4, MidpointRounding.AwayFromZero), asked.Currency.Code) : null;

    public static decimal? Cents(Differential? differential) => differential is { Month.Market: FuturesMarket.Arabica } one ? one.Quoted : null;

    public static decimal? Dollars(Differential? differential) => differential is { Month.Market: FuturesMarket.Robusta } one ? one.Quoted : null;
}
