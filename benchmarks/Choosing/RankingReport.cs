using System.Globalization;

namespace GreenLedger.Benchmarks.Choosing;

internal static class RankingReport
{
    public static void Print(IReadOnlyDictionary<string, Findings> found)
    {
        var (both, ours, sql, refit) = (found["ranking"], found["ranking-ours"], found["ranking-sql"], found["refit"]);
        Table.Print(
            string.Create(CultureInfo.InvariantCulture, $"### Ranking: {both["rows"]:N0} offers, {found["prepare-ranking"]["sheets"]:N0} sheets behind them; {both["ranked"]:N0} pass the gates, {both["front"]:N0} on the front; rows of both sides equal"),
            ["Gates, landed cost, weighted score, front", "Warm", "First run", "Peak memory"],
            [
                ["By hand in SQL, same file", Table.Seconds(both["sql"]), Table.Seconds(sql["cold"]), Table.Megabytes(sql.PeakMegabytes)],
                ["GreenLedger", Table.Seconds(both["ours"]), Table.Seconds(ours["cold"]), Table.Megabytes(ours["memory"])],
                ["Ratio", Table.Ratio(both["ours"], both["sql"]), Table.Ratio(ours["cold"], sql["cold"]), Table.Ratio(ours["memory"], sql.PeakMegabytes)],
            ]);
        Table.Print(
            "What the SQL does not do, timed apart:",
            ["Work", "Time", "Peak memory"],
            [
                [string.Create(CultureInfo.InvariantCulture, $"Refit of {refit["sessions"]:N0} sessions from all their sheets, read included"), Table.Seconds(refit["whole"]), Table.Megabytes(refit.PeakMegabytes)],
                ["… the fits alone", Table.Seconds(refit["fit"]), ""],
                [string.Create(CultureInfo.InvariantCulture, $"Chances: {ours["contenders"]:N0} contenders drawn"), Table.Seconds(ours["chances"]), Table.Megabytes(ours.PeakMegabytes)],
                [string.Create(CultureInfo.InvariantCulture, $"Regression of price on {ours["past"]:N0} past offers"), Table.Seconds(ours["regression"]), ""],
            ]);
    }
}
