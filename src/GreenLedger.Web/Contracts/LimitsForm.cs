using System.ComponentModel.DataAnnotations;
using GreenLedger.Domain;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;
using Microsoft.AspNetCore.Mvc.Rendering;

namespace GreenLedger.Web.Contracts;

/// <summary>Figures that the coffee is to keep, as they are typed; what is empty is not agreed.</summary>
public sealed class LimitsForm
{
    [Display(Name = "Arrival may cup below the approved sample, points")]
    public decimal? CupTolerance { get; set; }

    [Display(Name = "Lowest moisture, %")]
    public decimal? LowestMoisture { get; set; }

    [Display(Name = "Highest moisture, %")]
    public decimal? HighestMoisture { get; set; }

    [Display(Name = "Water activity below")]
    public decimal? WaterActivityBelow { get; set; }

    [Display(Name = "Category 1 full defects at most")]
    public decimal? Category1 { get; set; }

    [Display(Name = "Category 2 full defects at most")]
    public decimal? Category2 { get; set; }

    [Display(Name = "Screen")]
    public int? Screen { get; set; }

    [Display(Name = "Least share on it, %")]
    public decimal? LeastOnScreen { get; set; }

    [Display(Name = "Full defects counted by")]
    public string? CountedBy { get; set; }

    /// <summary>Nothing is typed.</summary>
    public bool IsEmpty => this is
    {
        CupTolerance: null, LowestMoisture: null, HighestMoisture: null, WaterActivityBelow: null, Category1: null, Category2: null, Screen: null, LeastOnScreen: null,
        CountedBy: null or "",
    };

    /// <summary>The defect tables by code and name, those of the house last.</summary>
    public static IReadOnlyList<SelectListItem> Tables(GradingStandards standards)
    {
        ArgumentNullException.ThrowIfNull(standards);
        return [new("the contract names none", ""), .. standards.Newest.OrderBy(scheme => scheme.IsOfHouse).Select(scheme => new SelectListItem(scheme.Name, scheme.Code))];
    }

    public static LimitsForm Of(LimitTerms terms) => new()
    {
        CupTolerance = terms.CupTolerance?.Points,
        LowestMoisture = terms.LowestMoisture?.Points,
        HighestMoisture = terms.HighestMoisture?.Points,
        WaterActivityBelow = terms.WaterActivityBelow?.Ratio,
        Category1 = terms.Category1,
        Category2 = terms.Category2,
        Screen = terms.Screen,
        LeastOnScreen = terms.LeastOnScreen?.Points,
        CountedBy = terms.CountedBy,
    };

    /// <exception cref="RuleBrokenException">A figure cannot be.</exception>
    public LimitTerms Terms() => new(
        CupTolerance is { } tolerance ? Points(tolerance) : null,
        Share(LowestMoisture, nameof(LowestMoisture)),
        Share(HighestMoisture, nameof(HighestMoisture)),
        WaterActivityBelow is { } activity ? Domain.Measures.WaterActivity.Of(activity) : null,
        Category1,
        Category2,
        Screen,
        Share(LeastOnScreen, nameof(LeastOnScreen)),
        Rule.OptionalText(CountedBy, "The table", 40, $"Limits.{nameof(CountedBy)}"));

    private static Score Points(decimal points)
    {
        Rule.Require(points is >= 0m and <= 10m, "The tolerance of the cup lies between 0 and 10 points.", $"Limits.{nameof(CupTolerance)}");
        return Score.Of(points);
    }

    private static Percent? Share(decimal? points, string field)
    {
        Rule.Require(points is null or (>= 0m and <= 100m), "This share lies between 0 and 100 %.", $"Limits.{field}");
        return points is { } known ? Percent.Of(known) : null;
    }
}
