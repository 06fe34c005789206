using System.Globalization;

namespace GreenLedger.Benchmarks.Offers;

internal static class ImportReport
{
    public static void Print(IReadOnlyDictionary<string, Findings> found)
    {
        var (both, bare, stored) = (found["import-read"], found["import-bare"], found["import-stored"]);
        Table.Print(
            string.Create(CultureInfo.InvariantCulture, $"### Import: a workbook of {Sizes.Rows:N0} rows, {found["prepare-import"]["bytes"] / 1024 / 1024:0.0} MB"),
            ["Work", "Time", "Ratio", "Peak memory"],
            [
                ["The bare reader, every cell asked for", Table.Seconds(both["bare"]), Table.Ratio(1, 1), Table.Megabytes(bare.PeakMegabytes)],
                ["GreenLedger: rows read and judged", Table.Seconds(both["read"]), Table.Ratio(both["read"], both["bare"]), ""],
                ["GreenLedger: opened, read, judged and stored in an empty ledger", Table.Seconds(stored["stored"]), Table.Ratio(stored["stored"], both["bare"]), Table.Megabytes(stored.PeakMegabytes)],
            ]);
    }
}
