using System.Globalization;

namespace GreenLedger.Domain.Cupping.LayingOut;

/// <summary>Random codes that say nothing about the coffee behind them, and nothing about its place either.</summary>
public static class BlindCodes
{
    private static readonly string[] ThreeDigits = Allowed(100, 999);
    private static readonly string[] FourDigits = Allowed(1000, 9999);

    /// <summary>
    /// As many different codes, none of those used recently. Three digits while at least half of the three-digit codes
    /// are free and enough for the session, four digits otherwise, so that a session has codes of one length.
    /// </summary>
    /// <param name="usedRecently">Codes of the house's last sessions, 20 by its own rule.</param>
    /// <param name="random">Must not be foreseeable: callers pass a cryptographic one.</param>
    /// <exception cref="RuleBrokenException">Not enough codes are free.</exception>
    public static IReadOnlyList<string> Draw(int count, IEnumerable<string> usedRecently, Random random)
    {
        ArgumentNullException.ThrowIfNull(random);
        ArgumentOutOfRangeException.ThrowIfNegative(count);
        var used = usedRecently.ToHashSet(StringComparer.Ordinal);
        var free = ThreeDigits.Where(code => !used.Contains(code)).ToArray();
        if (2 * free.Length < ThreeDigits.Length || free.Length < count)
        {
            free = [.. FourDigits.Where(code => !used.Contains(code))];
        }

        Rule.Require(free.Length >= count, $"Only {free.Length} blind codes are free and {count} are needed: put fewer samples in this session, or let fewer of the last sessions keep their codes.", nameof(count));
        random.Shuffle(free);
        return free[..count];
    }

    /// <summary>
    /// Whether a code reads as a rank, a series or a year, and so suggests something: it begins with 0 (001), ends in two
    /// zeros (100, 1200), repeats one digit (111), counts up or down (123, 321), or has four digits and begins with 19 or
    /// 20 (2026).
    /// </summary>
    public static bool ReadsAsRank(string code)
    {
        ArgumentException.ThrowIfNullOrEmpty(code);
        var steps = code.Zip(code.Skip(1), (digit, next) => next - digit).Distinct().ToList();
        return code[0] == '0'
            || code.EndsWith("00", StringComparison.Ordinal)
            || (steps.Count == 1 && Math.Abs(steps[0]) <= 1)
            || (code.Length == 4 && code[..2] is "19" or "20");
    }

    private static string[] Allowed(int from, int to) =>
        [.. Enumerable.Range(from, to - from + 1).Select(number => number.ToString(CultureInfo.InvariantCulture)).Where(code => !ReadsAsRank(code))];
}
