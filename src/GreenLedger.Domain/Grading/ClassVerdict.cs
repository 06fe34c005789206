using System.Globalization;

namespace GreenLedger.Domain.Grading;

/// <summary>The class of a scheme that a sample belongs to.</summary>
/// <param name="Name">The best class whose limits hold.</param>
/// <param name="IsProvisional">Its quakers are limited and were not counted.</param>
/// <param name="Reasons">Why it is not in the best class, in words: <c>6 of category 2, at most 5</c>.</param>
public sealed record ClassVerdict(string Name, bool IsProvisional, IReadOnlyList<string> Reasons)
{
    /// <summary>As it is stored and shown: <c>specialty, quakers not counted yet</c>.</summary>
    public override string ToString() => IsProvisional ? Name + ", quakers not counted yet" : Name;

    /// <param name="tally">Full defects in the scheme's own sample weight.</param>
    /// <param name="fractions">The habit that is held against the limits.</param>
    /// <param name="quakersIn100Grams">Null where none were roasted for.</param>
    public static ClassVerdict Of(DefectScheme scheme, DefectTally tally, DefectFractions fractions, decimal? quakersIn100Grams)
    {
        ArgumentNullException.ThrowIfNull(scheme);
        ArgumentNullException.ThrowIfNull(tally);
        var found = (First: tally.Category1(fractions).Count, Second: tally.Category2(fractions).Count);
        var best = scheme.Classes.First(one => !Broken(one).Any());
        return new ClassVerdict(best.Name, best.QuakersIn100Grams is not null && quakersIn100Grams is null, [.. Broken(scheme.Classes[0])]);

        IEnumerable<string> Broken(QualityClass limits)
        {
            foreach (var (what, count, most) in new[]
            {
                ("of category 1", found.First, limits.Category1),
                ("of category 2", found.Second, limits.Category2),
                ("full defects", found.First + found.Second, limits.Total),
                ("quakers in 100 g", quakersIn100Grams ?? 0m, limits.QuakersIn100Grams),
            })
            {
                if (count > most)
                {
                    yield return string.Create(CultureInfo.InvariantCulture, $"{count:0.##} {what}, at most {most:0.##}");
                }
            }
        }
    }
}
