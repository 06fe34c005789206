using ExcelDataReader;
using GreenLedger.Benchmarks.Choosing;
using GreenLedger.Data;
using GreenLedger.Data.Offers;
using GreenLedger.Documents.Offers;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Offers.Reading;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using GreenLedger.Web.Display;
using GreenLedger.Web.Offers;

namespace GreenLedger.Benchmarks.Offers;

/// <summary>
/// Loads the long list into an empty ledger on the way of the page (open, look, read and judge, store in one
/// transaction, kept on disk), and reads the same file with the bare reader that the ledger reads workbooks with.
/// </summary>
internal static class ImportBenchmark
{
    /// <summary>Both in one program, taking turns: the bare reader, and our reading with every row judged, without the ledger.</summary>
    public static async Task<Dictionary<string, double>> ReadAsync(string file)
    {
        var bytes = File.ReadAllBytes(file);
        var reference = Reference();
        var mapping = MappingProposal.Of(ListLook.Of(OfferWorkbook.Read(bytes), "list.xlsx"), reference);
        var (bare, ours) = (new Runs(), new Runs());
        for (var run = 0; run <= Sizes.Repeats; run++)
        {
            await bare.AddAsync(() => Task.FromResult(ReadBare(bytes)));
            Expect((await ours.AddAsync(() => Task.FromResult(ListReading.Of(OfferWorkbook.Read(bytes), mapping, reference)))).Rows.Count);
        }

        return new() { ["bare"] = bare.Seconds, ["bare-processor"] = bare.Processor, ["read"] = ours.Seconds, ["read-processor"] = ours.Processor };
    }

    public static Dictionary<string, double> Bare(string file)
    {
        var bytes = File.ReadAllBytes(file);
        return new() { ["cells"] = ReadBare(bytes) };
    }

    public static async Task<Dictionary<string, double>> StoreAsync(string file, string ledger)
    {
        var stored = new Runs();
        for (var run = 0; run <= Sizes.Repeats; run++)
        {
            // A ledger of its own each time: beside the file of the last run lies its log, while a pooled connection holds it.
            await using var db = BigLedger.Open(Path.ChangeExtension(ledger, $"{run}.db"));
            await LedgerDatabase.PrepareAsync(db);
            var buyer = new Person("Buyer", Role.Buyer);
            db.AddRange(new House("Bench house", Currency.Eur), buyer);
            await db.SaveChangesAsync();
            using var loading = new ListLoading(db, new ListStore(db), new HouseZone(db, TimeProvider.System), TimeProvider.System);
            await stored.AddAsync(() => LoadAsync(loading, file, buyer));
        }

        return new() { ["stored"] = stored.Seconds, ["stored-processor"] = stored.Processor };
    }

    private static async Task<int> LoadAsync(ListLoading loading, string path, Person buyer)
    {
        var file = new StoredFile("list.xlsx", "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet", await File.ReadAllBytesAsync(path), buyer.Id, DateTimeOffset.UtcNow);
        var list = await loading.OpenAsync(file, "Long Quay Traders", null, default);
        var (outcome, _) = await loading.StoreAsync(list, loading.Today, buyer.Id, default);
        Expect(outcome.Accepted.Count);
        return outcome.Accepted.Count;
    }

    /// <summary>Every cell is asked for, as whoever reads a list must.</summary>
    private static int ReadBare(byte[] bytes)
    {
        System.Text.Encoding.RegisterProvider(System.Text.CodePagesEncodingProvider.Instance);
        using var reader = ExcelReaderFactory.CreateOpenXmlReader(new MemoryStream(bytes, writable: false));
        var cells = 0;
        while (reader.Read())
        {
            for (var column = 0; column < reader.FieldCount; column++)
            {
                cells += reader.GetValue(column) is null ? 0 : 1;
            }
        }

        return cells;
    }

    private static ListReference Reference() => new(StandardCountries.All(), StandardProcessMethods.All(), new ListChecks(), DateOnly.FromDateTime(DateTime.UtcNow));

    private static void Expect(int rows)
    {
        if (rows != Sizes.Rows)
        {
            throw new InvalidOperationException($"{rows} of {Sizes.Rows} rows were taken.");
        }
    }

    /// <summary>Medians of all runs but the first, which warms up.</summary>
    private sealed class Runs
    {
        private readonly List<(double Seconds, double Processor)> _all = [];

        public double Seconds => Timing.Median(_all.Skip(1).Select(run => run.Seconds));

        public double Processor => Timing.Median(_all.Skip(1).Select(run => run.Processor));

        public async Task<T> AddAsync<T>(Func<Task<T>> work)
        {
            var (seconds, processor, result) = await Timing.MeasureAsync(work);
            _all.Add((seconds, processor));
            return result;
        }
    }
}
