using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;

namespace GreenLedger.Domain.Grading;

/// <summary>
/// What was found on the green coffee of one sample: moisture, water activity, defects, screens and quakers. What was
/// observed is kept; full defects are worked out from it. A value that was not measured is null, never zero.
/// </summary>
public sealed class GreenGrade
{
    /// <summary>Washed arabica defect handbook: 350 g green, of which 100 g are roasted for quakers.</summary>
    public static readonly Weight UsualSample = Weight.FromGrams(350m);
    public static readonly Weight UsualRoast = Weight.FromGrams(100m);

    private readonly List<DefectCount> _defects = [];
    private readonly List<ScreenShare> _screens = [];
    private readonly List<GradeLimit> _limits = [];

    private GreenGrade()
    {
    }

    public GreenGrade(Id<Sample> sampleId, Id<Lot> lotId, DateOnly gradedOn, Id<Person>? by, Weight sampleWeight, string? note = null)
    {
        Id = Id<GreenGrade>.New();
        SampleId = sampleId;
        LotId = lotId;
        By = by;
        Correct(gradedOn, sampleWeight, note);
    }

    public Id<GreenGrade> Id { get; private set; }

    public int Version { get; private set; }

    public Id<Sample> SampleId { get; private set; }

    public Id<Lot> LotId { get; private set; }

    public DateOnly GradedOn { get; private set; }

    /// <summary>Null for a past grade taken in from a file.</summary>
    public Id<Person>? By { get; private set; }

    /// <summary>Green coffee searched for defects; 350 g in the usual scheme.</summary>
    public Weight SampleWeight { get; private set; }

    public Percent? Moisture { get; private set; }

    /// <summary>How moisture was measured; a hand-held meter is not ISO 6673.</summary>
    public string? MoistureMethod { get; private set; }

    public WaterActivity? WaterActivity { get; private set; }

    /// <summary>Free-flow bulk density (ISO 6669), grams per litre.</summary>
    public int? DensityGramsPerLitre { get; private set; }

    /// <summary>Full defects of category 1 under the habit of <see cref="Fractions"/>; null when not counted.</summary>
    public FullDefects? Category1 { get; private set; }

    /// <summary>Full defects of category 2 under the habit of <see cref="Fractions"/>; null when not counted.</summary>
    public FullDefects? Category2 { get; private set; }

    /// <summary>
    /// Full defects in 300 g by the method of the exporting country (New York/Brazil for arabica, Vietnam or Indonesia
    /// for robusta), which the export targets are held against; null when not counted so.
    /// </summary>
    public FullDefects? ExportDefects { get; private set; }

    /// <summary>The key of the defect scheme counted by, in its revision; null when only full defects were stated.</summary>
    public string? Scheme { get; private set; }

    public DefectFractions Fractions { get; private set; }

    public IReadOnlyList<DefectCount> Defects => _defects;

    /// <summary>Shares per screen and pan; empty when not sieved.</summary>
    public IReadOnlyList<ScreenShare> Screens => _screens;

    /// <summary>The screen that it was sold as, 16 for "screen 16 up"; null where nothing was said.</summary>
    public int? StatedScreen { get; private set; }

    /// <summary>Of the green beans, in the grader's word: blue-green.</summary>
    public string? Colour { get; private set; }

    /// <summary>In the grader's word; null when it was not smelled.</summary>
    public string? Odour { get; private set; }

    /// <summary>Whether it smells of something that is not coffee; null when it was not smelled.</summary>
    public bool? HasForeignOdour { get; private set; }

    /// <summary>Pale, unripe beans seen after roasting; null when none was roasted.</summary>
    public int? Quakers { get; private set; }

    /// <summary>Grams roasted to look for quakers.</summary>
    public Weight? RoastedWeight { get; private set; }

    /// <summary>Quakers in 100 g of roasted coffee; null when none was roasted.</summary>
    public decimal? QuakersIn100Grams => Quakers is { } beans && RoastedWeight is { } roasted ? beans * 100m / roasted.Grams : null;

    /// <summary>The class of the scheme, in words, as it was found; null when beans were not counted by kind.</summary>
    public string? QualityClass { get; private set; }

    /// <summary>Every published limit as it was held against the grade when it was last written down.</summary>
    public IReadOnlyList<GradeLimit> Limits => _limits;

    public string? Note { get; private set; }

    /// <summary>Why it no longer counts; null while it does.</summary>
    public string? WithdrawnBecause { get; private set; }

    public Id<Person>? WithdrawnBy { get; private set; }

    public DateTimeOffset? WithdrawnAt { get; private set; }

    public bool IsWithdrawn => WithdrawnAt is not null;

    /// <summary>
    /// Puts right when, how much and what was noted. Whoever corrects what was found measures, counts, sieves and roasts
    /// anew: full defects follow from the weight searched.
    /// </summary>
    public void Correct(DateOnly gradedOn, Weight sampleWeight, string? note)
    {
        Rule.Require(sampleWeight > Weight.Zero, "The graded sample must weigh more than 0 g.", nameof(SampleWeight));
        GradedOn = gradedOn;
        SampleWeight = sampleWeight;
        Note = Rule.OptionalText(note, "The note", 2000, nameof(Note));
    }

    /// <summary>A moisture of 0 % means missing and is refused.</summary>
    public GreenGrade Measure(Percent? moisture, string? method, WaterActivity? waterActivity, int? densityGramsPerLitre)
    {
        Rule.Require(moisture is null || moisture.Value.Points is > 0m and <= 60m, "Moisture lies above 0 % and at most 60 %; leave it empty if it was not measured.", nameof(Moisture));
        Rule.Require(waterActivity is null || waterActivity.Value.Ratio is > 0m and <= 1m, "Water activity lies above 0 and at most 1; leave it empty if it was not measured.", nameof(WaterActivity));
        Rule.Require(densityGramsPerLitre is null or (>= 300 and <= 1200), "Bulk density lies between 300 and 1,200 g/L.", nameof(DensityGramsPerLitre));
        Moisture = moisture;
        MoistureMethod = Rule.OptionalText(method, "The method", 100, nameof(MoistureMethod));
        WaterActivity = waterActivity;
        DensityGramsPerLitre = densityGramsPerLitre;
        return this;
    }

    /// <summary>Beans counted by kind; full defects follow.</summary>
    public GreenGrade CountDefects(DefectScheme scheme, IReadOnlyDictionary<string, int> beans, DefectFractions fractions)
    {
        var tally = DefectTally.Of(scheme, beans, SampleWeight.Grams);
        Scheme = scheme.Key;
        Fractions = fractions;
        Category1 = scheme.IsExportMethod ? null : tally.Category1(fractions);
        Category2 = scheme.IsExportMethod ? null : tally.Category2(fractions);
        ExportDefects = scheme.IsExportMethod ? tally.Total(fractions) : ExportDefects;
        _defects.RemoveAll(count => beans.GetValueOrDefault(count.Kind) == 0);
        foreach (var (kind, counted) in beans.Where(count => count.Value > 0))
        {
            if (_defects.Find(count => count.Kind == kind) is { } known)
            {
                known.Recount(counted);
            }
            else
            {
                _defects.Add(new DefectCount(kind, counted));
            }
        }

        return this;
    }

    /// <summary>Full defects as somebody else counted them, without the kinds.</summary>
    public GreenGrade StateDefects(FullDefects? category1, FullDefects? category2)
    {
        Scheme = null;
        _defects.Clear();
        Category1 = category1;
        Category2 = category2;
        return this;
    }

    /// <summary>What the exporting country's method counts in 300 g, as the shipper or the grader states it.</summary>
    public GreenGrade StateExportDefects(FullDefects? in300Grams)
    {
        ExportDefects = in300Grams;
        return this;
    }

    /// <summary>What eye and nose find before anything is counted.</summary>
    public GreenGrade Look(string? colour, string? odour, bool? hasForeignOdour)
    {
        Colour = Rule.OptionalText(colour, "The colour", 60, nameof(Colour));
        Odour = Rule.OptionalText(odour, "The odour", 100, nameof(Odour));
        HasForeignOdour = hasForeignOdour;
        return this;
    }

    /// <summary>Shares per screen; screen 0 is the pan. They add up to 100 % with at most 0.5 % lost.</summary>
    public GreenGrade Sieve(IReadOnlyDictionary<int, Percent> shares, int? statedScreen = null)
    {
        ArgumentNullException.ThrowIfNull(shares);
        Rule.Require(statedScreen is null or (>= ScreenShare.Smallest and <= ScreenShare.Largest), "Screens run from 8 to 20.", nameof(StatedScreen));
        StatedScreen = statedScreen;
        Rule.Require(shares.Keys.All(screen => screen is ScreenShare.Pan or (>= ScreenShare.Smallest and <= ScreenShare.Largest)), "Screens run from 8 to 20, and the pan.", nameof(Screens));
        Rule.Require(shares.Values.All(share => share.Points is >= 0m and <= 100m), "A share lies between 0 and 100 %.", nameof(Screens));
        var sum = shares.Values.Sum(share => share.Points);
        Rule.Require(shares.Count == 0 || sum is >= 99.5m and <= 100.5m, $"The screens add up to {sum:0.##} %: they must add up to 100 %, within 0.5.", nameof(Screens));
        _screens.RemoveAll(share => !shares.ContainsKey(share.Screen));
        foreach (var (screen, retained) in shares)
        {
            if (_screens.Find(share => share.Screen == screen) is { } known)
            {
                known.Sieve(retained);
            }
            else
            {
                _screens.Add(new ScreenShare(screen, retained));
            }
        }

        _screens.Sort((one, other) => other.Screen.CompareTo(one.Screen));
        return this;
    }

    public GreenGrade Roast(int? quakers, Weight? roasted)
    {
        Rule.Require(quakers is null or (>= 0 and <= 1000), "Quakers are counted from 0 to 1,000.", nameof(Quakers));
        Quakers = quakers;
        RoastedWeight = quakers is null ? null : roasted ?? UsualRoast;
        return this;
    }

    /// <summary>
    /// Holds what was found against the class limits of its scheme and the published limits for the species, and keeps the
    /// answers. To be called when everything is written.
    /// </summary>
    /// <param name="varieties">Of the lot; they tell the species.</param>
    /// <param name="standards">The schemes and limits of the house; the newest limits are taken.</param>
    public GreenGrade Judge(string? varieties, GradingStandards standards)
    {
        ArgumentNullException.ThrowIfNull(standards);
        QualityClass = Verdict(standards)?.ToString();
        var checks = standards.Limits(varieties).SelectMany(limits => limits.Check(this).Select(check => (limits.Title, check))).ToList();
        _limits.RemoveAll(limit => limit.Position > checks.Count);
        foreach (var (position, (name, check)) in checks.Index())
        {
            if (_limits.Find(limit => limit.Position == position + 1) is { } known)
            {
                known.Hold(name, check);
            }
            else
            {
                _limits.Add(new GradeLimit(position + 1, name, check));
            }
        }

        return this;
    }

    /// <summary>Takes it out of everything that is counted; it stays with who, when and why.</summary>
    /// <exception cref="RuleBrokenException">It was withdrawn before, or no reason is given.</exception>
    public void Withdraw(string? reason, Id<Person> by, DateTimeOffset at)
    {
        Rule.Require(!IsWithdrawn, "This grade was already withdrawn.", nameof(WithdrawnBecause));
        WithdrawnBecause = Rule.Text(reason, "The reason for withdrawing", 500, nameof(WithdrawnBecause));
        (WithdrawnBy, WithdrawnAt) = (by, at);
    }

    /// <summary>The class of its scheme with the reasons; null when beans were not counted by kind.</summary>
    public ClassVerdict? Verdict(GradingStandards standards) => standards?.Find(Scheme) is { } scheme && Tally(standards) is { } tally
        ? ClassVerdict.Of(scheme, tally, Fractions, QuakersIn100Grams)
        : null;

    /// <summary>Both habits of counting side by side; null when beans were not counted by kind.</summary>
    public DefectTally? Tally(GradingStandards standards) => standards?.Find(Scheme) is { } scheme
        ? DefectTally.Of(scheme, _defects.ToDictionary(count => count.Kind, count => count.Beans), SampleWeight.Grams)
        : null;

    /// <summary>The share of the mass kept by this screen and all larger ones; null when not sieved.</summary>
    public Percent? RetainedFrom(int screen) => _screens.Count == 0
        ? null
        : Percent.Of(_screens.Where(share => share.Screen >= screen).Sum(share => share.Retained.Points));
}
