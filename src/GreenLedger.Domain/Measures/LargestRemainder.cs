namespace GreenLedger.Domain.Measures;

/// <summary>
/// Splits whole units in proportion to shares so that the parts add up to the whole: each part is rounded down, and the
/// units left over go to the largest remainders, ties to the earlier share (handbook, trade 1.4).
/// </summary>
public static class LargestRemainder
{
    /// <summary>The parts in the order of the shares. Shares are zero or more and not all zero.</summary>
    public static IReadOnlyList<long> Split(long units, IReadOnlyList<decimal> shares)
    {
        var whole = shares.Sum();
        var exact = shares.Select(share => units * (share / whole)).ToArray();
        var parts = exact.Select(part => decimal.ToInt64(Math.Floor(part))).ToArray();
        var left = units - parts.Sum();
        var order = Enumerable.Range(0, parts.Length).OrderByDescending(i => exact[i] - parts[i]).ThenBy(i => i).ToArray();
        for (var k = 0; left > 0; k = (k + 1) % order.Length, left--)
        {
            parts[order[k]]++;
        }

        return parts;
    }
}
