namespace GreenLedger.Domain.Grading;

/// <summary>What becomes of a part of a full defect. Both are common practice; neither is in a published rule.</summary>
public enum DefectFractions
{
    /// <summary>Dropped for each kind: 9 broken at 5 a full defect are 1.</summary>
    Dropped = 0,

    /// <summary>Kept and summed: 9 broken at 5 a full defect are 1.8.</summary>
    Kept = 1,
}

/// <summary>
/// Beans counted, turned into full defects in both habits (handbook quality.md section 2.1): counts are first scaled
/// to the scheme's sample weight, then divided by the beans that make one full defect.
/// </summary>
public sealed record DefectTally(
    FullDefects Category1Dropped, FullDefects Category1Kept, FullDefects Category2Dropped, FullDefects Category2Kept)
{
    /// <summary>
    /// Category 1 beans that the dropping habit does not show (4 severely insect-damaged beans at 5 a full defect).
    /// </summary>
    public bool HidesCategory1 => Category1Dropped == default && Category1Kept != default;

    public FullDefects Category1(DefectFractions fractions) =>
        fractions == DefectFractions.Kept ? Category1Kept : Category1Dropped;

    public FullDefects Category2(DefectFractions fractions) =>
        fractions == DefectFractions.Kept ? Category2Kept : Category2Dropped;

    /// <summary>Full defects of both categories together.</summary>
    public FullDefects Total(DefectFractions fractions) => FullDefects.Of(Category1(fractions).Count + Category2(fractions).Count);

    /// <param name="beans">Beans counted for each kind's code; a kind left out counts none.</param>
    /// <param name="sampleGrams">Grams of green coffee that were searched.</param>
    /// <exception cref="RuleBrokenException">A kind is unknown, a count is negative, or the sample weighs nothing.</exception>
    public static DefectTally Of(DefectScheme scheme, IReadOnlyDictionary<string, int> beans, decimal sampleGrams)
    {
        ArgumentNullException.ThrowIfNull(scheme);
        ArgumentNullException.ThrowIfNull(beans);
        Rule.Require(sampleGrams > 0m, "The graded sample must weigh more than 0 g.", "SampleWeight");
        var unknown = beans.Keys.FirstOrDefault(code => scheme.Kinds.All(kind => kind.Code != code));
        Rule.Require(unknown is null, $"The defect table {scheme.Name} has no kind '{unknown}'.", "Beans");
        Rule.Require(beans.Values.All(count => count >= 0), "A count of beans cannot be negative.", "Beans");
        return new DefectTally(Sum(1, false), Sum(1, true), Sum(2, false), Sum(2, true));

        FullDefects Sum(int category, bool kept) => FullDefects.Of(scheme.Kinds
            .Where(kind => kind.Category == category)
            .Select(kind => FullOf(scheme, kind, beans.GetValueOrDefault(kind.Code), sampleGrams))
            .Sum(full => kept ? full : Math.Floor(full)));
    }

    /// <summary>What these beans of one kind make in full defects, its fraction kept.</summary>
    /// <param name="sampleGrams">Grams of green coffee that were searched, above 0.</param>
    public static decimal FullOf(DefectScheme scheme, DefectKind kind, int beans, decimal sampleGrams)
    {
        ArgumentNullException.ThrowIfNull(scheme);
        ArgumentNullException.ThrowIfNull(kind);
        return beans * scheme.SampleGrams / sampleGrams / kind.BeansPerFullDefect;
    }
}
