using GreenLedger.Domain.Offers;

namespace GreenLedger.Documents.Offers;

/// <summary>
/// Gives out one string for text that recurs down a column ("washed", "Colombia"), so that a long list does not hold it a
/// hundred thousand times. It remembers a fixed number of texts, whatever the file holds.
/// </summary>
internal sealed class RecurringText
{
    private const int Remembered = 4096;

    private readonly string?[] _texts = new string?[Remembered];
    private readonly (double Number, Cell Cell)[] _numbers = new (double, Cell)[Remembered];

    public string Of(string text)
    {
        ref var known = ref _texts[string.GetHashCode(text) & (Remembered - 1)];
        if (known != text)
        {
            known = text;
        }

        return known;
    }

    /// <summary>The cell of a number: to print one takes longer than to find it again.</summary>
    public Cell Of(double number)
    {
        ref var known = ref _numbers[HashCode.Combine(number) & (Remembered - 1)];
        if (known.Cell.Number is null || known.Number != number)
        {
            known = (number, Cell.Of((decimal)number));
        }

        return known.Cell;
    }
}
