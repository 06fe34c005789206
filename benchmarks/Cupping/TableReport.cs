using System.Globalization;

namespace GreenLedger.Benchmarks.Cupping;

internal static class TableReport
{
    public static void Print(IReadOnlyDictionary<string, Findings> found) => Table.Print(
        $"### {Sizes.Cuppers} cuppers, a change a second each for {Sizes.Seconds} s, from the press until it is stored",
        ["Ledger", "Changes taken", "Half within", "99 % within", "Longest", "Sent again", "Refused", "Acknowledged and missing", "Peak memory of the nodes"],
        found.Select(one => (IReadOnlyList<string>)
        [
            one.Key == "table-sqlite" ? "SQLite, one node" : "PostgreSQL, two nodes",
            Count(one.Value["taken"]), Milliseconds(one.Value["p50"]), Milliseconds(one.Value["p99"]), Milliseconds(one.Value["most"]),
            Count(one.Value["again"]), Count(one.Value["refused"]), Count(one.Value["missing"]), Table.Megabytes(one.Value["memory"]),
        ]));

    private static string Count(double count) => count.ToString("#,0", CultureInfo.InvariantCulture);

    private static string Milliseconds(double time) => time.ToString("#,0", CultureInfo.InvariantCulture) + " ms";
}
