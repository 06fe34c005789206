namespace GreenLedger.Domain.Cupping;

/// <summary>How an attribute of a form is marked.</summary>
public enum MarkedBy
{
    /// <summary>One mark on a scale with steps.</summary>
    Scale = 0,

    /// <summary>Cups that are good, out of the cups poured; worth 10 × good ÷ cups points.</summary>
    Cups = 1,
}

/// <summary>One line of a form. Lowest, highest and step are in points; for cups they are 0, 10 and 0.</summary>
public sealed record FormLine(string Key, string Name, MarkedBy MarkedBy, decimal Lowest, decimal Highest, decimal Step)
{
    /// <summary>A cup-counted attribute is worth this many points when every cup is good.</summary>
    public const decimal PointsPerCups = 10m;

    public static FormLine Scale(string key, string name, decimal lowest, decimal highest, decimal step) =>
        new(key, name, MarkedBy.Scale, lowest, highest, step);

    public static FormLine Cups(string key, string name) => new(key, name, MarkedBy.Cups, 0m, PointsPerCups, 0m);

    /// <summary>True where the points are a mark that a cupper can set: in range and on a step.</summary>
    public bool IsMark(decimal points) =>
        points >= Lowest && points <= Highest && (Step == 0m || (points - Lowest) % Step == 0m);
}

/// <summary>Points taken off for every cup that shows the defect.</summary>
public sealed record FormDeduction(string Key, string Name, decimal PointsPerCup);

/// <summary>A name for totals from this one up.</summary>
public sealed record FormBand(decimal Least, string Name, bool IsSpecialty);

/// <summary>
/// A form as data. Every published form so far is one formula:
/// total = slope × (sum of the scale marks) + sum of the cup-counted attributes + intercept − (points per cup × cups of
/// each deduction), rounded half up to <see cref="RoundTo"/> (0: not rounded).
/// </summary>
public sealed record FormRules(
    IReadOnlyList<FormLine> Attributes,
    IReadOnlyList<FormDeduction> Deductions,
    IReadOnlyList<FormBand> Bands,
    IReadOnlyList<int> CupCounts,
    decimal Slope,
    decimal Intercept,
    decimal RoundTo,
    bool DeductionsPerFiveCups)
{
    /// <summary>The cups that the protocol asks for; the form's own default.</summary>
    public const int UsualCups = 5;

    public IEnumerable<FormLine> Scales => Attributes.Where(attribute => attribute.MarkedBy == MarkedBy.Scale);

    public IEnumerable<FormLine> CupCounted => Attributes.Where(attribute => attribute.MarkedBy == MarkedBy.Cups);

    /// <summary>Nothing is left out, and everything that is shown has a name.</summary>
    /// <exception cref="RuleBrokenException">A list or a line is missing, or a name is empty.</exception>
    internal void RequireWhole()
    {
        Rule.Require(Attributes is not null && Attributes.All(one => one is not null && IsName(one.Name)), "Send every attribute of the form, each with its name.", nameof(Attributes));
        Rule.Require(Deductions is not null && Deductions.All(one => one is not null && IsName(one.Key) && IsName(one.Name)), "Send the deductions of the form, each with its key and its name.", nameof(Deductions));
        Rule.Require(Bands is not null && Bands.All(one => one is not null && IsName(one.Name)), "Send the bands of the form, each with its name; none is an empty list.", nameof(Bands));
        Rule.Require(CupCounts is not null, "State between 1 and 10 cups a sample.", nameof(CupCounts));
    }

    private static bool IsName(string? name) => !string.IsNullOrWhiteSpace(name) && name.Length <= 80;

    /// <summary>The band of an unrounded total, from the highest down; null below all, or where the form has none.</summary>
    public FormBand? Band(decimal total) =>
        Bands.OrderByDescending(band => band.Least).FirstOrDefault(band => total >= band.Least);
}
