namespace GreenLedger.Domain.Samples;

/// <summary>
/// The short code on a sample's bag. It means nothing, so that nobody reads origin, supplier or price from it, and it
/// leaves out letters and digits that look alike (0 O, 1 I L, 5 S, 2 Z, 8 B).
/// </summary>
public static class LabelCode
{
    public const int Length = 5;
    private const string Letters = "ACDEFGHJKMNPQRTUVWXY34679";

    /// <summary>One code of 9,765,625; whoever stores it sees to it that it is not yet taken.</summary>
    public static string Draw(Random random)
    {
        ArgumentNullException.ThrowIfNull(random);
        return new string(random.GetItems<char>(Letters, Length));
    }
}
