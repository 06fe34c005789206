using GreenLedger.Documents.Offers;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;

namespace GreenLedger.Documents.Cupping;

/// <summary>
/// Reads past cupping results as they were received, by the reader of offer lists: the same workbooks and text tables,
/// the same limits on hostile files.
/// </summary>
public static class ResultWorkbook
{
    /// <summary>More rows than a house cups in a lifetime; beyond it the file is not one of results.</summary>
    public const int MostRows = 20_000;

    /// <exception cref="RuleBrokenException">The file is empty, too large, of another kind, or damaged.</exception>
    public static IReadOnlyList<OfferLine> Read(byte[] file)
    {
        var lines = OfferWorkbook.Read(file).Take(MostRows + 1).ToList();
        Rule.Require(lines.Count <= MostRows, $"This file has more than {MostRows} rows: split it.", "File");
        return lines;
    }
}
