using System.ComponentModel.DataAnnotations;
using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Web.Arrivals;

/// <summary>What a person decides when a claim on goods that did not come is opened, as it is typed; money in the contract's currency.</summary>
public sealed class MissingForm
{
    /// <summary>The part of the shipment, or else the lot, that did not come.</summary>
    public Guid? Part { get; set; }

    [Display(Name = "Made on")]
    [Required(ErrorMessage = "On which day is the claim made?")]
    public DateOnly? On { get; set; }

    [Display(Name = "What such coffee costs that day")]
    public decimal? Market { get; set; }

    [Display(Name = "For one")]
    public PriceUnit MarketUnit { get; set; } = PriceUnit.Pound;

    [Display(Name = "Provisional price of the contract")]
    public decimal? ProvisionalPrice { get; set; }

    [Display(Name = "For one")]
    public PriceUnit ProvisionalUnit { get; set; } = PriceUnit.Pound;

    [Display(Name = "Paid already for these goods")]
    public decimal? Paid { get; set; }

    [Display(Name = "What else is claimed")]
    public string? OtherWords { get; set; }

    [Display(Name = "Its amount")]
    public decimal? Other { get; set; }

    [Display(Name = "What else the seller is to read")]
    public string? Words { get; set; }

    [Display(Name = "Why it is made late")]
    public string? LateReason { get; set; }

    /// <exception cref="RuleBrokenException">A figure cannot be.</exception>
    public MissingOrder Order(Currency currency)
    {
        Rule.Require(On is not null, "On which day is the claim made?", nameof(On));
        return new MissingOrder(
            On.Value,
            Price(Market, MarketUnit, currency, nameof(Market)),
            Price(ProvisionalPrice, ProvisionalUnit, currency, nameof(ProvisionalPrice)),
            Amount(Paid, currency, nameof(Paid)),
            OtherWords,
            Amount(Other, currency, nameof(Other)),
            Words,
            LateReason);
    }

    private static PricePerWeight? Price(decimal? amount, PriceUnit unit, Currency currency, string field)
    {
        Rule.Require(amount is null or (> 0m and <= 1_000_000m), "This lies above 0; please check the figure and its unit.", field);
        return amount is { } price ? PricePerWeight.Of(price, currency, unit) : null;
    }

    private static Money? Amount(decimal? amount, Currency currency, string field)
    {
        Rule.Require(amount is null or (> -1_000_000_000_000m and < 1_000_000_000_000m), "This amount is too large: please check it.", field);
        return amount is { } money ? Money.Of(money, currency) : null;
    }
}
