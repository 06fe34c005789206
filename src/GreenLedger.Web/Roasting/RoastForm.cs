using System.ComponentModel.DataAnnotations;
using System.Globalization;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Roasting;

namespace GreenLedger.Web.Roasting;

/// <summary>What is typed about one sample roast; times are minutes and seconds, or minutes alone.</summary>
public sealed class RoastForm
{
    public int Version { get; set; }

    [Required(ErrorMessage = "Type the label code of the sample.")]
    [Display(Name = "Label code")]
    public string? Label { get; set; }

    [Required(ErrorMessage = "Say when the batch left the roaster.")]
    [Display(Name = "Roast ended")]
    public DateTime? RoastedAt { get; set; }

    [Display(Name = "Roasted by")]
    public Id<Person> By { get; set; }

    [Required(ErrorMessage = "How many grams went in?")]
    [Display(Name = "Green in (g)")]
    public decimal? MassInGrams { get; set; } = 100m;

    [Display(Name = "Roasted out (g)")]
    public decimal? MassOutGrams { get; set; }

    [Display(Name = "Total time (min:s)")]
    public string? Total { get; set; }

    [Display(Name = "First crack at (min:s)")]
    public string? FirstCrack { get; set; }

    [Display(Name = "Colour scale")]
    public string? ColourScale { get; set; }

    [Display(Name = "Colour, whole bean")]
    public decimal? WholeBean { get; set; }

    [Display(Name = "Colour, ground")]
    public decimal? Ground { get; set; }

    [Display(Name = "Cupping at")]
    public DateTime? CuppingAt { get; set; }

    public string? Note { get; set; }

    public static RoastForm Of(SampleRoast roast, string label, ClockZone zone) => new()
    {
        Version = roast.Version,
        Label = label,
        RoastedAt = zone.Local(roast.RoastedAt),
        By = roast.By ?? default,
        MassInGrams = roast.MassIn.Grams,
        MassOutGrams = roast.MassOut?.Grams,
        Total = RoastCheck.Clock(roast.TotalSeconds),
        FirstCrack = RoastCheck.Clock(roast.FirstCrackSeconds),
        ColourScale = roast.ColourScale,
        WholeBean = roast.WholeBean?.Value,
        Ground = roast.Ground?.Value,
        CuppingAt = roast.CuppingAt is { } cupping ? zone.Local(cupping) : null,
        Note = roast.Note,
    };

    /// <exception cref="RuleBrokenException">The clocks of the house left that time out.</exception>
    public DateTimeOffset EndedAt(ClockZone zone) => zone.At(RoastedAt!.Value, nameof(RoastedAt));

    /// <summary>Writes what was measured onto the roast.</summary>
    /// <exception cref="RuleBrokenException">A figure cannot be.</exception>
    public SampleRoast Onto(SampleRoast roast, ClockZone zone) => roast
        .Weigh(Weight.FromGrams(MassInGrams!.Value), MassOutGrams is { } left ? Weight.FromGrams(left) : null)
        .Time(Seconds(Total, nameof(Total)), Seconds(FirstCrack, nameof(FirstCrack)))
        .Read(ColourScale, WholeBean is { } whole ? ColourReading.Of(whole) : null, Ground is { } ground ? ColourReading.Of(ground) : null)
        .CupAt(CuppingAt is { } cupping ? zone.At(cupping, nameof(CuppingAt)) : null)
        .Remark(Note);

    /// <summary><c>9:30</c> is 570 seconds, <c>9</c> and <c>9.5</c> are minutes.</summary>
    /// <exception cref="RuleBrokenException">The text is no time.</exception>
    public static int? Seconds(string? text, string field)
    {
        if (string.IsNullOrWhiteSpace(text))
        {
            return null;
        }

        var parts = text.Trim().Split(':');
        var minutes = 0m;
        var seconds = 0;
        var isTime = parts.Length is 1 or 2
            && decimal.TryParse(parts[0], parts.Length == 1 ? NumberStyles.AllowDecimalPoint : NumberStyles.None, CultureInfo.InvariantCulture, out minutes)
            && (parts.Length == 1 || (int.TryParse(parts[1], NumberStyles.None, CultureInfo.InvariantCulture, out seconds) && seconds < 60));
        Rule.Require(isTime && minutes <= 600m, $"'{text}' is no time: write minutes and seconds, such as 9:30.", field);
        return decimal.ToInt32(Math.Round(minutes * 60m, 0, MidpointRounding.AwayFromZero)) + seconds;
    }
}
