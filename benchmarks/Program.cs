using GreenLedger.Benchmarks;
using GreenLedger.Benchmarks.Arrivals;
using GreenLedger.Benchmarks.Choosing;
using GreenLedger.Benchmarks.Cupping;
using GreenLedger.Benchmarks.Hosting;
using GreenLedger.Benchmarks.Offers;
using GreenLedger.Benchmarks.Summaries;

// Every benchmark is a program of its own started by this one, so that its peak memory is its own.
var scratch = Sizes.Scratch;
Directory.CreateDirectory(scratch);
if (args is ["measure", var name])
{
    await Measures.RunAsync(name, scratch);
    return 0;
}

string[] asked = args.Length > 0 ? args : ["ranking", "import", "start", "table", "plan", "summaries", "verdict"];
Console.WriteLine(Machine.Words());
if (asked.Contains("ranking"))
{
    RankingReport.Print(await Child.RunAsync(["prepare-ranking", "ranking", "ranking-ours", "ranking-sql", "refit"]));
}

if (asked.Contains("import"))
{
    ImportReport.Print(await Child.RunAsync(["prepare-import", "import-read", "import-bare", "import-stored"]));
}

if (asked.Contains("start"))
{
    StartReport.Print(await Child.RunAsync(["prepare-start", "start"]));
}

if (asked.Contains("table"))
{
    TableReport.Print(await Child.RunAsync(TableBenchmark.Postgres is null ? ["table-sqlite"] : ["table-sqlite", "table-postgres"]));
}

if (asked.Contains("plan"))
{
    PlanBenchmark.Print();
}

if (asked.Contains("summaries"))
{
    SummariesReport.Print(await Child.RunAsync(["prepare-extract", "extract-ours", "extract-bare", "extract-office", "summary"]));
}

var keeps = !asked.Contains("verdict") || VerdictReport.Print();
if (Sizes.IsTemporary)
{
    Directory.Delete(scratch, recursive: true);
}

return keeps ? 0 : 1;
