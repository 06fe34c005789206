namespace GreenLedger.Benchmarks.Hosting;

internal static class StartReport
{
    public static void Print(IReadOnlyDictionary<string, Findings> found)
    {
        var start = found["start"];
        Table.Print(
            "### Start on a ledger that holds the demo, from the start of the process to the whole first page",
            ["Work", "Time", "Peak memory"],
            [
                ["Files seen for the first time", Table.Seconds(start["first"]), ""],
                ["Again", Table.Seconds(start["start"]), Table.Megabytes(start["memory"])],
                ["For comparison: the demo filled into an empty ledger", Table.Seconds(found["prepare-start"]["demo"]), Table.Megabytes(found["prepare-start"].PeakMegabytes)],
            ]);
    }
}
