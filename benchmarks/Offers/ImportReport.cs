using System.Globalization;

namespace GreenLedger.Benchmarks.Offers;

internal static class ImportReport
{
    public static void Print(IReadOnlyDictionary<string, Findings> found)
    {
        var (both, bare, stored) = (found["import-read"], found["import-bare"], found["import-stored"]);
        Table.Print(
            string.Create(CultureInfo.InvariantCulture, $"### Import: a workbook of {Sizes.Rows:N0} rows, {found["prepare-import"]["bytes"] / 1024 / 1024:0.0} MB"),
            ["Work", "Time", "Ratio", "Processor time", "Ratio", "Peak memory"],
            [
                ["The bare reader, every cell asked for", .. Beside(both, "bare"), Table.Megabytes(bare.PeakMegabytes)],
                ["GreenLedger: rows read and judged", .. Beside(both, "read"), ""],
                ["GreenLedger: opened, read, judged and stored in an empty ledger", .. Beside(stored, "stored"), Table.Megabytes(stored.PeakMegabytes)],
            ]);

        string[] Beside(Findings one, string name) =>
        [
            Table.Seconds(one[name]), Table.Ratio(one[name], both["bare"]),
            Table.Seconds(one[name + "-processor"]), Table.Ratio(one[name + "-processor"], both["bare-processor"]),
        ];
    }
}
