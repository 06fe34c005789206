using System.Globalization;

namespace GreenLedger.Benchmarks.Summaries;

internal static class SummariesReport
{
    public static void Print(IReadOnlyDictionary<string, Findings> found)
    {
        var (ours, bare, office, summary) = (found["extract-ours"], found["extract-bare"], found["extract-office"], found["summary"]);
        Table.Print(
            string.Create(CultureInfo.InvariantCulture, $"### Extract: a workbook of {Sizes.Rows:N0} lots, {ours["bytes"] / 1024 / 1024:0.0} MB"),
            ["Work", "Time", "Ratio", "Peak memory"],
            [
                ["The bare streaming writer, its cells ready in memory", Table.Seconds(bare["seconds"]), "1.0 ×", Table.Megabytes(bare.PeakMegabytes)],
                ["GreenLedger: read from the ledger, written with formats, head and filters", Table.Seconds(ours["seconds"]), Table.Ratio(ours["seconds"], bare["seconds"]), Table.Megabytes(ours.PeakMegabytes)],
                ["LibreOffice, the same rows from CSV", Table.Seconds(office["seconds"]), Table.Ratio(office["seconds"], bare["seconds"]), Table.Megabytes(office["peak"])],
            ]);
        Table.Print(
            "### A purchase summary as a PDF",
            ["Lots", "Pages", "Time", "Peak memory"],
            [[summary["lots"].ToString("0", CultureInfo.InvariantCulture), summary["pages"].ToString("0", CultureInfo.InvariantCulture), Table.Seconds(summary["seconds"]), Table.Megabytes(summary.PeakMegabytes)]]);
    }
}
