using System.ComponentModel.DataAnnotations;
using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Web.Arrivals;

/// <summary>What a person decides when a claim is opened, as it is typed; money in the contract's currency.</summary>
public sealed class ClaimForm
{
    [Display(Name = "Made on")]
    [Required(ErrorMessage = "On which day is the claim made?")]
    public DateOnly? On { get; set; }

    public List<ClaimGround> Grounds { get; set; } = [];

    [Display(Name = "Allowance on quality")]
    public decimal? Allowance { get; set; }

    [Display(Name = "For one")]
    public PriceUnit AllowanceUnit { get; set; } = PriceUnit.Pound;

    [Display(Name = "Or a share of the price (%)")]
    public decimal? SharePercent { get; set; }

    [Display(Name = "Provisional price")]
    public decimal? ProvisionalPrice { get; set; }

    [Display(Name = "For one")]
    public PriceUnit ProvisionalUnit { get; set; } = PriceUnit.Pound;

    [Display(Name = "What else is claimed")]
    public string? OtherWords { get; set; }

    [Display(Name = "Its amount")]
    public decimal? Other { get; set; }

    [Display(Name = "What else the seller is to read")]
    public string? Words { get; set; }

    [Display(Name = "Why it is made late")]
    public string? LateReason { get; set; }

    /// <exception cref="RuleBrokenException">A figure cannot be.</exception>
    public ClaimOrder Order(Currency currency)
    {
        Rule.Require(On is not null, "On which day is the claim made?", nameof(On));
        Rule.Require(Other is null or (> -1_000_000_000_000m and < 1_000_000_000_000m), "This amount is too large: please check it.", nameof(Other));
        Rule.Require(SharePercent is null or (> 0m and <= 100m), "The share lies above 0 and at most at 100 %.", nameof(SharePercent));
        return new ClaimOrder(
            On.Value,
            Grounds,
            Allowance is { } allowance ? Price(allowance, currency, AllowanceUnit, nameof(Allowance)) : null,
            SharePercent is { } share ? Percent.Of(share) : null,
            ProvisionalPrice is { } price ? Price(price, currency, ProvisionalUnit, nameof(ProvisionalPrice)) : null,
            OtherWords,
            Other is { } other ? Money.Of(other, currency) : null,
            Words,
            LateReason);
    }

    private static PricePerWeight Price(decimal amount, Currency currency, PriceUnit unit, string field)
    {
        Rule.Require(amount is > 0m and <= 1_000_000m, "This lies above 0; please check the figure and its unit.", field);
        return PricePerWeight.Of(amount, currency, unit);
    }
}
