using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Grading;

/// <summary>
/// What somebody writes about a green sample, half or wholly filled in: a form, a script's request. What is null was not
/// measured; beans that are null altogether were not counted.
/// </summary>
public sealed record GradeDraft
{
    public decimal? SampleGrams { get; init; }

    public decimal? MoisturePercent { get; init; }

    public string? MoistureMethod { get; init; }

    public decimal? WaterActivity { get; init; }

    public int? DensityGramsPerLitre { get; init; }

    /// <summary>The key of the defect scheme; null for the newest revision of the usual one of the species.</summary>
    public string? Scheme { get; init; }

    public IReadOnlyDictionary<string, int>? Beans { get; init; }

    public DefectFractions Fractions { get; init; }

    public decimal? ExportDefects { get; init; }

    public int? Quakers { get; init; }

    public decimal? RoastedGrams { get; init; }

    public IReadOnlyDictionary<int, decimal> Screens { get; init; } = new Dictionary<int, decimal>();

    /// <summary>The screen that it was sold as: 16 for "screen 16 up".</summary>
    public int? StatedScreen { get; init; }

    public string? Colour { get; init; }

    public string? Odour { get; init; }

    public bool? HasForeignOdour { get; init; }

    /// <summary>The weight searched, 350 g where nothing else is said.</summary>
    public Weight Sample => SampleGrams is { } grams ? Weight.FromGrams(grams) : GreenGrade.UsualSample;

    /// <summary>Writes all of it onto the grade and judges it.</summary>
    /// <param name="varieties">Of the lot; they tell the species.</param>
    /// <exception cref="RuleBrokenException">A figure cannot be; the grade is not to be kept then.</exception>
    public GreenGrade Onto(GreenGrade grade, string? varieties, GradingStandards standards)
    {
        ArgumentNullException.ThrowIfNull(grade);
        ArgumentNullException.ThrowIfNull(standards);
        foreach (var part in Parts(grade, varieties, standards))
        {
            part();
        }

        return grade.Judge(varieties, standards);
    }

    /// <summary>
    /// What can be said of it so far. A part that breaks a rule is left out and told, because a form is half filled in
    /// for most of its life.
    /// </summary>
    public GradeOutlook Outlook(string? varieties, GradingStandards standards)
    {
        ArgumentNullException.ThrowIfNull(standards);
        var problems = new List<Problem>();
        var grade = new GreenGrade(default, default, default, null, SampleGrams is > 0m ? Sample : GreenGrade.UsualSample);
        foreach (var part in Parts(grade, varieties, standards))
        {
            try
            {
                part();
            }
            catch (RuleBrokenException broken)
            {
                problems.Add(new Problem(null, broken.Field, broken.Message));
            }
        }

        return new GradeOutlook(grade.Judge(varieties, standards), problems, Screens.Count == 0 ? null : Screens.Values.Sum(), standards);
    }

    private IEnumerable<Action> Parts(GreenGrade grade, string? varieties, GradingStandards standards)
    {
        yield return () => Rule.Require(SampleGrams is null or > 0m, "The graded sample must weigh more than 0 g.", nameof(GreenGrade.SampleWeight));
        yield return () => grade.Measure(
            MoisturePercent is { } moisture ? Percent.Of(moisture) : null,
            MoistureMethod,
            WaterActivity is { } activity ? Measures.WaterActivity.Of(activity) : null,
            DensityGramsPerLitre);
        yield return () => grade.Look(Colour, Odour, HasForeignOdour);
        yield return () => grade.Sieve(Screens.ToDictionary(share => share.Key, share => Percent.Of(share.Value)), StatedScreen);
        yield return () => grade.StateExportDefects(ExportDefects is { } full ? FullDefects.Of(full) : null);
        yield return () => grade.Roast(Quakers, RoastedGrams is { } grams ? Weight.FromGrams(grams) : null);
        if (Beans is not null)
        {
            var scheme = Scheme is null ? standards.For(varieties) : standards.Find(Scheme);
            yield return () =>
            {
                Rule.Require(scheme is not null, $"There is no defect table '{Scheme}' here.", nameof(Scheme));
                grade.CountDefects(scheme, Beans, Fractions);
            };
        }
        else if (grade.Scheme is not null)
        {
            yield return () => grade.StateDefects(null, null);
        }
    }
}

/// <summary>What can be said of a grade that is not written down yet.</summary>
/// <param name="Grade">Judged, with the parts that hold; it is not to be stored.</param>
/// <param name="Problems">The parts that were left out, and why.</param>
/// <param name="ScreensSum">What the shares of the screens add up to, in per cent; null where none is given.</param>
/// <param name="Standards">The schemes and limits that it was judged by.</param>
public sealed record GradeOutlook(GreenGrade Grade, IReadOnlyList<Problem> Problems, decimal? ScreensSum, GradingStandards Standards);
