using System.ComponentModel.DataAnnotations;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Offers.Reading;
using Microsoft.AspNetCore.Mvc.Rendering;

namespace GreenLedger.Web.Pages.Offers;

/// <summary>The mapping of a list as a buyer corrects it.</summary>
public sealed class ColumnsForm
{
    public string? Supplier { get; set; }

    [Display(Name = "Received on")]
    public DateOnly ReceivedOn { get; set; }

    public IList<ColumnForm> Columns { get; init; } = [];

    [Display(Name = "Futures month")]
    public string? FuturesMonth { get; set; }

    [Display(Name = "Delivery rule")]
    public Incoterm? Incoterm { get; set; }

    [Display(Name = "Named place")]
    public string? Place { get; set; }

    [Display(Name = "Valid until")]
    public DateOnly? ValidUntil { get; set; }

    [Display(Name = "Crop year")]
    public string? CropYear { get; set; }

    [Display(Name = "Country of origin")]
    public string? CountryCode { get; set; }

    [Display(Name = "One bag holds, kg")]
    public decimal? BagKg { get; set; }

    [Display(Name = "A lot is its reference together with its grade")]
    public bool RefWithGrade { get; set; }

    public ColumnForm Price { get; init; } = new();

    public static ColumnsForm Of(OfferMapping mapping, string supplier, DateOnly receivedOn) => new()
    {
        Supplier = supplier,
        ReceivedOn = receivedOn,
        Columns = [.. mapping.Columns.Select(column => new ColumnForm(column))],
        FuturesMonth = mapping.Terms.FuturesMonth,
        Incoterm = mapping.Terms.Incoterm,
        Place = mapping.Terms.Place,
        ValidUntil = mapping.Terms.ValidUntil,
        CropYear = mapping.Terms.CropYear,
        CountryCode = mapping.Terms.CountryCode,
        BagKg = mapping.Terms.BagKg,
        RefWithGrade = mapping.Terms.RefWithGrade,
        Price = new ColumnForm(new MappedColumn("", ColumnMeaning.Price, null, mapping.Terms.Quote)),
    };

    public OfferMapping ToMapping() => new(
        [.. Columns.Select(column => new MappedColumn(column.Heading, column.Meaning, column.Unit, column.Quote()))],
        new ListTerms
        {
            Quote = Price.Quote(),
            FuturesMonth = string.IsNullOrWhiteSpace(FuturesMonth) ? null : FuturesMonth.Trim(),
            Incoterm = Incoterm,
            Place = string.IsNullOrWhiteSpace(Place) ? null : Place.Trim(),
            ValidUntil = ValidUntil,
            CropYear = string.IsNullOrWhiteSpace(CropYear) ? null : CropYear.Trim(),
            CountryCode = string.IsNullOrWhiteSpace(CountryCode) ? null : CountryCode.Trim().ToUpperInvariant(),
            BagKg = BagKg,
            RefWithGrade = RefWithGrade,
        });
}

/// <summary>One column of the list: what it holds, and in which unit.</summary>
public sealed class ColumnForm
{
    public ColumnForm()
    {
    }

    public ColumnForm(MappedColumn column)
    {
        Heading = column.Heading;
        Meaning = column.Meaning;
        Unit = column.Unit;
        Currency = column.Quote?.Currency;
        PriceUnit = column.Quote?.Unit;
        InCents = column.Quote?.InCents == true;
    }

    public string Heading { get; set; } = "";

    public ColumnMeaning Meaning { get; set; }

    public WeightUnit? Unit { get; set; }

    public string? Currency { get; set; }

    public PriceUnit? PriceUnit { get; set; }

    public bool InCents { get; set; }

    /// <summary>What a column of this meaning needs besides: "weight", "price", or nothing.</summary>
    public static string? Needs(ColumnMeaning meaning) => meaning switch
    {
        ColumnMeaning.BagWeight or ColumnMeaning.Quantity or ColumnMeaning.NetWeight or ColumnMeaning.LeastBags => "weight",
        ColumnMeaning.Price or ColumnMeaning.Differential => "price",
        _ => null,
    };

    public static IReadOnlyList<SelectListItem> WeightUnits { get; } =
        [.. Enum.GetValues<WeightUnit>().Select(unit => new SelectListItem(unit.Word(), unit.ToString()))];

    public static IReadOnlyList<SelectListItem> PriceUnits { get; } =
        [.. Enum.GetValues<PriceUnit>().Select(unit => new SelectListItem(unit.Sign(), unit.ToString()))];

    public static IReadOnlyList<SelectListItem> Incoterms { get; } =
        [.. Enum.GetValues<Incoterm>().Select(term => new SelectListItem(term.Word(), term.ToString()))];

    public PriceQuote? Quote() => string.IsNullOrWhiteSpace(Currency) && PriceUnit is null
        ? null : new PriceQuote(string.IsNullOrWhiteSpace(Currency) ? null : Currency.Trim().ToUpperInvariant(), PriceUnit, InCents);
}
