using GreenLedger.Domain;
using GreenLedger.Domain.Offers;

namespace GreenLedger.Documents.Offers;

/// <summary>
/// The file of a list that is looked at first and read then. The reader goes through a whole sheet before it gives its
/// first row, so one that has given the beginning goes on from there where it can, instead of beginning anew.
/// </summary>
public sealed class ListFile : IDisposable
{
    private readonly byte[] _bytes;
    private IEnumerator<OfferLine>? _rest;

    private ListFile(byte[] bytes, ListHead head, IEnumerator<OfferLine>? rest) => (_bytes, Head, _rest) = (bytes, head, rest);

    /// <summary>The first rows of each visible sheet, and about how many rows there are in all.</summary>
    public ListHead Head { get; }

    /// <exception cref="RuleBrokenException">As <see cref="OfferWorkbook.Read"/> throws it.</exception>
    public static ListFile Open(byte[] bytes)
    {
        if (!OfferWorkbook.HasOneSheet(bytes))
        {
            return new ListFile(bytes, OfferWorkbook.Head(bytes), null);
        }

        var rows = 0;
        var rest = OfferWorkbook.Unpacked(bytes, count => rows += count).GetEnumerator();
        var lines = new List<OfferLine>();
        while (lines.Count < OfferWorkbook.HeadRows && rest.MoveNext())
        {
            lines.Add(rest.Current);
        }

        return new ListFile(bytes, new ListHead(lines, rows), rest);
    }

    /// <summary>All rows, as <see cref="OfferWorkbook.Read"/> gives them.</summary>
    public IEnumerable<OfferLine> Read()
    {
        if (_rest is not { } rest)
        {
            return OfferWorkbook.Read(_bytes);
        }

        _rest = null;
        return Head.Lines.Concat(ReadAhead.Of(Remaining(rest)));
    }

    public void Dispose()
    {
        _rest?.Dispose();
        _rest = null;
    }

    private static IEnumerable<OfferLine> Remaining(IEnumerator<OfferLine> rest)
    {
        using (rest)
        {
            while (rest.MoveNext())
            {
                yield return rest.Current;
            }
        }
    }
}
