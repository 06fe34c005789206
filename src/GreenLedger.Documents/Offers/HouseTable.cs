using GreenLedger.Domain;
using GreenLedger.Domain.Offers;

namespace GreenLedger.Documents.Offers;

/// <summary>
/// Reads a table that the house kept before its ledger (cupping results, stock, contracts), by the reader of offer lists: the
/// same workbooks and text tables, the same limits on hostile files.
/// </summary>
public static class HouseTable
{
    /// <summary>More rows than a house cups or buys in a lifetime; beyond it the file is something else.</summary>
    public const int MostRows = 20_000;

    /// <exception cref="RuleBrokenException">The file is empty, too large, of another kind, or damaged.</exception>
    public static IReadOnlyList<OfferLine> Read(byte[] file)
    {
        var lines = OfferWorkbook.Read(file).Take(MostRows + 1).ToList();
        Rule.Require(lines.Count <= MostRows, $"This file has more than {MostRows} rows: split it.", "File");
        return lines;
    }
}
