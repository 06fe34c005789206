using System.ComponentModel.DataAnnotations;
using GreenLedger.Domain;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Web.Choosing;

/// <summary>What an address asks of a purchase plan.</summary>
public sealed class PlanWish
{
    public const int UsualMonths = 8;

    public const int MostSeconds = 60;

    /// <summary>A rule set by its name; the first by name without one.</summary>
    public string? Rules { get; set; }

    [Display(Name = "Months ahead")]
    public int Months { get; set; } = UsualMonths;

    /// <summary>From 0, the least cost, to 100, the most points.</summary>
    [Display(Name = "Least cost to most points")]
    public int Quality { get; set; }

    /// <summary>How many standard errors are taken off a score.</summary>
    [Display(Name = "Standard errors taken off a score")]
    public decimal Doubt { get; set; } = 1m;

    /// <summary>By month; empty where there is none.</summary>
    [Display(Name = "A budget")]
    public List<decimal?> Budget { get; set; } = [];

    [Display(Name = "Room for what lies over (kg)")]
    public decimal? StorageKg { get; set; }

    [Display(Name = "Lots at the most")]
    public int? MostLots { get; set; }

    [Display(Name = "From one supplier at the most (kg)")]
    public decimal? MostOfSupplierKg { get; set; }

    [Display(Name = "From one origin at the most (kg)")]
    public decimal? MostOfOriginKg { get; set; }

    /// <summary>Of a lot whose offer names no least lot of its own.</summary>
    [Display(Name = "Least lot where the offer names none (bags)")]
    public int LeastBags { get; set; } = 1;

    /// <summary>How long a better plan is looked for.</summary>
    [Display(Name = "Time to look for a better plan (s)")]
    public int Seconds { get; set; } = 20;

    /// <summary>Whether the plan is to be made, and not only its needs shown.</summary>
    public bool Make { get; set; }

    public PlanLimits Limits() => new([.. Budget.Take(Months)], Kilograms(StorageKg), MostLots, Kilograms(MostOfSupplierKg), Kilograms(MostOfOriginKg));

    /// <exception cref="RuleBrokenException">A figure is out of range.</exception>
    public void Check()
    {
        Rule.Require(Months is >= 1 and <= PlanRequest.MostMonths, $"A plan spans 1 to {PlanRequest.MostMonths} months.");
        Rule.Require(Quality is >= 0 and <= 100, "Quality counts from 0 to 100 %.");
        Rule.Require(Doubt is >= 0m and <= 3m, "Between 0 and 3 standard errors are taken off a score.");
        Rule.Require(Seconds is >= 1 and <= MostSeconds, $"Give a plan 1 to {MostSeconds} seconds.");
        Rule.Require(LeastBags is >= 1 and <= 10_000, "At least one bag of a lot is bought, and at most 10,000 can be asked for.");
    }

    private static Weight? Kilograms(decimal? typed)
    {
        Rule.Require(typed is null or (>= 0m and <= 100_000_000m), "A weight lies between 0 and 100,000,000 kg.");
        return typed is { } kilograms ? Weight.FromKilograms(kilograms) : null;
    }
}
