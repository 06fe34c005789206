using GreenLedger.Benchmarks.Choosing;
using GreenLedger.Benchmarks.Hosting;
using GreenLedger.Data;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Benchmarks.Cupping;

/// <summary>
/// Many cuppers at one table, each saving one change a second: how long a change takes until it is stored, and whether
/// everything that was acknowledged is there afterwards.
/// </summary>
internal static class TableBenchmark
{
    /// <summary>A server on which a database may be made, as the tests name it.</summary>
    public static string? Postgres { get; } = Environment.GetEnvironmentVariable("GREENLEDGER_TEST_POSTGRES");

    public static async Task<Dictionary<string, double>> OnSqliteAsync(string folder)
    {
        Directory.CreateDirectory(folder);
        return await RunAsync(
            () => BigLedger.Open(Path.Combine(folder, "ledger.db")), new Dictionary<string, string> { ["GreenLedger__Data"] = folder }, nodes: 1);
    }

    public static async Task<Dictionary<string, double>> OnPostgresAsync(string folder)
    {
        Directory.CreateDirectory(folder);
        var connection = $"{Postgres};Database=greenledger_table_{Environment.ProcessId}";
        await using var whole = OpenPostgres(connection);
        try
        {
            return await RunAsync(
                () => OpenPostgres(connection),
                new Dictionary<string, string> { ["GreenLedger__Data"] = folder, ["GreenLedger__Database"] = "postgres", ["ConnectionStrings__GreenLedger"] = connection },
                nodes: 2);
        }
        finally
        {
            await whole.Database.EnsureDeletedAsync();
        }
    }

    private static PostgresLedgerContext OpenPostgres(string connection)
    {
        var options = new DbContextOptionsBuilder<PostgresLedgerContext>();
        PostgresLedgerContext.Configure(options, connection);
        return new PostgresLedgerContext(options.Options);
    }

    private static async Task<Dictionary<string, double>> RunAsync(Func<LedgerContext> open, IReadOnlyDictionary<string, string> settings, int nodes)
    {
        FullTable table;
        await using (var db = open())
        {
            table = await FullTable.LayOutAsync(db, Sizes.Cuppers);
        }

        var (phones, memory) = await CupAsync(table, settings, nodes);
        await using var after = open();
        var missing = await MissingAsync(after, table, phones);
        var times = phones.SelectMany(phone => phone.Milliseconds).Order().ToArray();
        return new()
        {
            ["taken"] = times.Length,
            ["missing"] = missing,
            ["refused"] = phones.Sum(phone => phone.Refused),
            ["again"] = phones.Sum(phone => phone.Again),
            ["p50"] = At(times, 0.50),
            ["p99"] = At(times, 0.99),
            ["most"] = times[^1],
            ["memory"] = memory,
        };
    }

    private static async Task<(IReadOnlyList<Phone> Phones, double Memory)> CupAsync(FullTable table, IReadOnlyDictionary<string, string> settings, int count)
    {
        var nodes = new List<Node>();
        try
        {
            for (var number = 0; number < count; number++)
            {
                nodes.Add(await Node.StartAsync(settings));
            }

            using var connections = new SocketsHttpHandler();
            var clients = nodes.ConvertAll(node => new HttpClient(connections, disposeHandler: false) { BaseAddress = node.Address, Timeout = TimeSpan.FromSeconds(30) });
            var phones = Enumerable.Range(0, table.Cuppers.Count).Select(number => new Phone(clients, table, number)).ToList();
            await Task.WhenAll(phones.Select(phone => phone.CupAsync(TimeSpan.FromSeconds(Sizes.Seconds))));
            clients.ForEach(client => client.Dispose());
            return (phones, nodes.Sum(node => node.PeakMegabytes));
        }
        finally
        {
            foreach (var node in nodes)
            {
                await node.DisposeAsync();
            }
        }
    }

    /// <summary>Acknowledged changes that are not stored under their version, and sheets that do not say what was written last.</summary>
    private static async Task<int> MissingAsync(LedgerContext db, FullTable table, IReadOnlyList<Phone> phones)
    {
        var drafts = await db.SheetDrafts.AsNoTracking().Where(draft => draft.SessionId == table.Session).ToDictionaryAsync(draft => (draft.CupperId, draft.Code));
        var changes = await db.DraftChanges.AsNoTracking().ToDictionaryAsync(change => (change.DraftId, change.Key), change => change.LedTo);
        var missing = 0;
        for (var number = 0; number < phones.Count; number++)
        {
            foreach (var sheet in phones[number].Taken.GroupBy(one => one.Code))
            {
                if (!drafts.TryGetValue((table.Cuppers[number].Id, sheet.Key), out var draft))
                {
                    missing += sheet.Count();
                    continue;
                }

                missing += sheet.Count(one => !changes.TryGetValue((draft.Id, one.Key), out var version) || version != one.Version);
                missing += sheet.GroupBy(one => one.Field).Select(field => field.MaxBy(one => one.Version)!).Count(last => draft.Values.GetValueOrDefault(last.Field) != last.Value);
            }
        }

        return missing;
    }

    private static double At(double[] sorted, double share) => sorted[Math.Min(sorted.Length - 1, (int)(share * sorted.Length))];
}
