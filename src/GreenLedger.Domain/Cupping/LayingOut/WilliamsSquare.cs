namespace GreenLedger.Domain.Cupping.LayingOut;

/// <summary>
/// Serving orders that favour no sample: over the rows each sample stands equally often at each position, and each
/// follows each other one equally often (Williams 1949; handbook quality.md section 4.10).
/// </summary>
public static class WilliamsSquare
{
    /// <summary>
    /// Rows of the numbers 0 to samples − 1. An even number of samples needs as many rows (every position and every
    /// ordered pair of neighbours once), an odd one twice as many (each twice); one sample has one row.
    /// </summary>
    public static IReadOnlyList<IReadOnlyList<int>> Of(int samples)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(samples, 1);
        var first = Enumerable.Range(0, samples)
            .Select(place => place % 2 == 1 ? (place + 1) / 2 : (samples - place / 2) % samples).ToList();
        var rows = Enumerable.Range(0, samples)
            .Select(step => (IReadOnlyList<int>)[.. first.Select(sample => (sample + step) % samples)]).ToList();
        return samples == 1 || samples % 2 == 0 ? rows : [.. rows, .. rows.Select(row => (IReadOnlyList<int>)[.. row.Reverse()])];
    }
}
