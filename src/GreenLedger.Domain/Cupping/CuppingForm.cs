namespace GreenLedger.Domain.Cupping;

/// <summary>
/// A published form in one edition and one revision of its numbers. Scores are comparable only within one form, so a
/// change of any number is a new form with a new identity; the earlier one stays with its sessions.
/// </summary>
public sealed class CuppingForm
{
    /// <summary>The 100-point form of 2004 as published.</summary>
    public static readonly Id<CuppingForm> HundredPointId = Id<CuppingForm>.Parse("01000000-2004-7000-8000-000000000100", null);

    /// <summary>The affective form of SCA-104 (2024) with the constants of the handbook.</summary>
    public static readonly Id<CuppingForm> AffectiveId = Id<CuppingForm>.Parse("01000000-2024-7000-8000-000000000104", null);

    private CuppingForm()
    {
        Code = "";
        Name = "";
        Edition = "";
        Rules = HundredPointRules();
    }

    private CuppingForm(Id<CuppingForm> id, string code, string name, string edition, int revision, FormRules rules)
    {
        Id = id;
        Code = code;
        Name = name;
        Edition = edition;
        Revision = revision;
        Rules = rules;
    }

    public Id<CuppingForm> Id { get; private set; }

    /// <summary>The word for the form in files and in the API: <c>100-point</c>, <c>affective</c>.</summary>
    public string Code { get; private set; }

    public string Name { get; private set; }

    /// <summary>The year of the published text.</summary>
    public string Edition { get; private set; }

    /// <summary>1 as delivered; each change of a number by the house counts one up.</summary>
    public int Revision { get; private set; }

    public FormRules Rules { get; private set; }

    /// <summary>Why the house changed the numbers; null for a form as delivered.</summary>
    public string? Reason { get; private set; }

    /// <summary>Ten attributes, quarter points, taint 2 and fault 4 a cup; handbook quality.md section 1.1.</summary>
    public static CuppingForm HundredPoint() =>
        new(HundredPointId, "100-point", "100-point form", "2004", 1, HundredPointRules());

    /// <summary>
    /// Eight sections of nine points; handbook quality.md section 1.2. Slope and intercept follow from published
    /// points (58, 79, 100); rounding and the deductions of 2 and 4 are from memory, which is why they are form data.
    /// </summary>
    public static CuppingForm Affective() =>
        new(AffectiveId, "affective", "Affective form (SCA-104)", "2024", 1, AffectiveRules());

    /// <summary>The forms delivered with the ledger.</summary>
    public static IReadOnlyList<CuppingForm> Published() => [HundredPoint(), Affective()];

    /// <summary>The same form with other numbers: a new form, because its scores are other scores.</summary>
    /// <exception cref="RuleBrokenException">The numbers contradict each other, or no reason is given.</exception>
    public CuppingForm Revise(FormRules rules, string reason)
    {
        ArgumentNullException.ThrowIfNull(rules);
        rules.RequireWhole();
        Rule.Require(rules.Attributes.Select(a => a.Key).SequenceEqual(Rules.Attributes.Select(a => a.Key)), "A revision keeps the attributes of its form.", nameof(Rules));
        Rule.Require(rules.Scales.All(a => a.Lowest >= 0m && a.Lowest < a.Highest && a.Highest <= 100m && a.Step > 0m && a.Step * 100m % 1m == 0m), "Each attribute needs a lowest mark below its highest and a step of at least 0.01.", nameof(Rules));
        Rule.Require(rules.Slope > 0m && rules.RoundTo is >= 0m and <= 1m, "The slope lies above 0, the rounding between 0 and 1.", nameof(Rules));
        Rule.Require(rules.Deductions.All(d => d.PointsPerCup is >= 0m and <= 10m), "A deduction lies between 0 and 10 points a cup.", nameof(Rules));
        Rule.Require(rules.CupCounts.Count > 0 && rules.CupCounts.All(cups => cups is >= 1 and <= 10), "State between 1 and 10 cups a sample.", nameof(Rules));
        var best = rules.Scales.Sum(a => a.Highest) * rules.Slope + rules.Intercept + rules.CupCounted.Sum(a => a.Highest);
        Rule.Require(best <= 100m, $"With these numbers a form could give {best:0.##} points: no form gives more than 100.", nameof(Rules));
        return new CuppingForm(Id<CuppingForm>.New(), Code, Name, Edition, Revision + 1, rules)
        {
            Reason = Rule.Text(reason, "The reason for the change", 500, nameof(Reason)),
        };
    }

    public override string ToString() => Revision == 1 ? $"{Name}, {Edition}" : $"{Name}, {Edition}, revision {Revision}";

    private static FormRules HundredPointRules() => new(
        [
            FormLine.Scale("fragrance-aroma", "Fragrance/aroma", 6m, 10m, 0.25m),
            FormLine.Scale("flavor", "Flavor", 6m, 10m, 0.25m),
            FormLine.Scale("aftertaste", "Aftertaste", 6m, 10m, 0.25m),
            FormLine.Scale("acidity", "Acidity", 6m, 10m, 0.25m),
            FormLine.Scale("body", "Body", 6m, 10m, 0.25m),
            FormLine.Scale("balance", "Balance", 6m, 10m, 0.25m),
            FormLine.Cups("uniformity", "Uniformity"),
            FormLine.Cups("clean-cup", "Clean cup"),
            FormLine.Cups("sweetness", "Sweetness"),
            FormLine.Scale("overall", "Overall", 6m, 10m, 0.25m),
        ],
        [new("taint", "Taint", 2m), new("fault", "Fault", 4m)],
        [new(90m, "outstanding", true), new(85m, "excellent", true), new(80m, "very good", true)],
        [5, 4, 3],
        Slope: 1m,
        Intercept: 0m,
        RoundTo: 0m,
        DeductionsPerFiveCups: false);

    private static FormRules AffectiveRules() => new(
        [
            FormLine.Scale("fragrance", "Fragrance", 1m, 9m, 1m),
            FormLine.Scale("aroma", "Aroma", 1m, 9m, 1m),
            FormLine.Scale("flavor", "Flavor", 1m, 9m, 1m),
            FormLine.Scale("aftertaste", "Aftertaste", 1m, 9m, 1m),
            FormLine.Scale("acidity", "Acidity", 1m, 9m, 1m),
            FormLine.Scale("sweetness", "Sweetness", 1m, 9m, 1m),
            FormLine.Scale("mouthfeel", "Mouthfeel", 1m, 9m, 1m),
            FormLine.Scale("overall", "Overall", 1m, 9m, 1m),
        ],
        [new("non-uniform", "Non-uniform", 2m), new("defective", "Defective", 4m)],
        [],
        [5],
        Slope: 0.65625m,
        Intercept: 52.75m,
        RoundTo: 0.25m,
        DeductionsPerFiveCups: false);
}
