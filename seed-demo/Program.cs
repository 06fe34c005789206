using GreenLedger.Data;
using GreenLedger.SeedDemo;
using Microsoft.EntityFrameworkCore;

if (args is not ["--data", { Length: > 0 } folder])
{
    Console.Error.WriteLine("Name the data folder: dotnet run --project seed-demo -- --data FOLDER");
    return 1;
}

Directory.CreateDirectory(folder);
var options = new DbContextOptionsBuilder<SqliteLedgerContext>();
SqliteLedgerContext.Configure(options, Path.Combine(folder, "ledger.db"));
await using var db = new SqliteLedgerContext(options.Options);
var access = await DemoSeed.FillAsync(db, TimeProvider.System.GetUtcNow());
if (access.SignIns.Count == 0)
{
    Console.Error.WriteLine("This ledger holds something else than the demo: it was left as it is. Name an empty folder.");
    return 1;
}

foreach (var line in access.Lines)
{
    Console.WriteLine(line);
}

return 0;
