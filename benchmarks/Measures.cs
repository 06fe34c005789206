using GreenLedger.Benchmarks.Choosing;
using GreenLedger.Benchmarks.Cupping;
using GreenLedger.Benchmarks.Hosting;
using GreenLedger.Benchmarks.Offers;
using GreenLedger.Benchmarks.Summaries;

namespace GreenLedger.Benchmarks;

/// <summary>The measurements by name.</summary>
internal static class Measures
{
    public static async Task RunAsync(string name, string scratch)
    {
        var ranking = Path.Combine(scratch, "ranking.db");
        var list = Path.Combine(scratch, "list.xlsx");
        Child.Tell(name switch
        {
            "prepare-ranking" => await BigLedger.FillAsync(ranking),
            "ranking" => await RankingBenchmark.CompareAsync(ranking),
            "ranking-ours" => await RankingBenchmark.OursAloneAsync(ranking),
            "ranking-sql" => RankingBenchmark.SqlAlone(ranking),
            "refit" => await RankingBenchmark.RefitAsync(ranking),
            "prepare-import" => await LongList.WriteAsync(list),
            "import-read" => await ImportBenchmark.ReadAsync(list),
            "import-bare" => ImportBenchmark.Bare(list),
            "import-stored" => await ImportBenchmark.StoreAsync(list, Path.Combine(scratch, "import.db")),
            "prepare-start" => await StartBenchmark.PrepareAsync(Path.Combine(scratch, "start")),
            "start" => await StartBenchmark.RunAsync(Path.Combine(scratch, "start")),
            "prepare-extract" => await ExtractBenchmark.PrepareAsync(Path.Combine(scratch, "extract.db"), Path.Combine(scratch, "lots.csv")),
            "extract-ours" => await ExtractBenchmark.OursAsync(Path.Combine(scratch, "extract.db"), Path.Combine(scratch, "ours.xlsx")),
            "extract-bare" => await ExtractBenchmark.BareAsync(Path.Combine(scratch, "lots.csv"), Path.Combine(scratch, "bare.xlsx")),
            "extract-office" => await ExtractBenchmark.OfficeAsync(Path.Combine(scratch, "lots.csv"), scratch),
            "summary" => await SummaryBenchmark.RunAsync(),
            "table-sqlite" => await TableBenchmark.OnSqliteAsync(Path.Combine(scratch, "table")),
            "table-postgres" => await TableBenchmark.OnPostgresAsync(Path.Combine(scratch, "nodes")),
            _ => throw new ArgumentException($"There is no measurement {name}.", nameof(name)),
        });
    }
}
