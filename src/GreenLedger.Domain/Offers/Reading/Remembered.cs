namespace GreenLedger.Domain.Offers.Reading;

/// <summary>
/// What was read from a text before, since the texts of a column recur: a list of a hundred thousand rows names a few
/// processes and crop years. It remembers a fixed number of texts, whatever the list holds.
/// </summary>
internal sealed class Remembered<T>(Func<string, T> read)
{
    private const int Most = 4096;

    private readonly Dictionary<string, T> _known = [];

    public T Of(string text)
    {
        if (!_known.TryGetValue(text, out var known))
        {
            known = read(text);
            if (_known.Count < Most)
            {
                _known.Add(text, known);
            }
        }

        return known;
    }
}
