using System.Diagnostics;
using System.Globalization;
using CsvHelper;
using GreenLedger.Benchmarks.Choosing;
using GreenLedger.Data;
using GreenLedger.Data.Cupping;
using GreenLedger.Data.Offers;
using GreenLedger.Data.Summaries;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Web.Summaries;
using SpreadCheetah;

namespace GreenLedger.Benchmarks.Summaries;

/// <summary>
/// The extract of many lots as a workbook, on the way of its page, beside the bare streaming writer that it is written with (the same
/// cells, ready in memory) and beside LibreOffice turning the same rows from CSV into a workbook.
/// </summary>
internal static class ExtractBenchmark
{
    /// <summary>A ledger of many lots, and its extract as CSV for the peers.</summary>
    public static async Task<Dictionary<string, double>> PrepareAsync(string ledger, string csv)
    {
        await using var db = BigLedger.Open(ledger);
        await LedgerDatabase.PrepareAsync(db);
        var suppliers = Enumerable.Range(1, 20).Select(number => new Supplier($"Supplier {number}", SupplierKind.Exporter, null, "en")).ToList();
        db.AddRange(suppliers);
        await db.SaveChangesAsync();
        await using (var transaction = await db.Database.BeginTransactionAsync())
        {
            using var insert = new BulkInsert<Lot>(db);
            await insert.InsertAsync(Enumerable.Range(1, Sizes.Rows).Select(number => LotOf(number, suppliers)), default);
            await transaction.CommitAsync();
        }

        await WriteAsync(db, csv, asWorkbook: false);
        return new() { ["bytes"] = new FileInfo(csv).Length };
    }

    public static async Task<Dictionary<string, double>> OursAsync(string ledger, string file)
    {
        var runs = new List<double>();
        for (var run = 0; run <= Sizes.Repeats; run++)
        {
            await using var db = BigLedger.Open(ledger);
            var (seconds, _) = await Timing.OfAsync(() => WriteAsync(db, file, asWorkbook: true));
            runs.Add(seconds);
        }

        return new() { ["seconds"] = Timing.Median(runs.Skip(1)), ["bytes"] = new FileInfo(file).Length };
    }

    public static async Task<Dictionary<string, double>> BareAsync(string csv, string file)
    {
        var rows = Cells(csv);
        var runs = new List<double>();
        for (var run = 0; run <= Sizes.Repeats; run++)
        {
            var (seconds, _) = await Timing.OfAsync(async () => await WriteBareAsync(rows, file));
            runs.Add(seconds);
        }

        return new() { ["seconds"] = Timing.Median(runs.Skip(1)), ["bytes"] = new FileInfo(file).Length };
    }

    /// <summary>Its start is in it each time, as for whoever converts one file. Its peak memory is that of its largest process.</summary>
    public static async Task<Dictionary<string, double>> OfficeAsync(string csv, string folder)
    {
        var (runs, peak) = (new List<double>(), 0d);
        for (var run = 0; run <= Sizes.Repeats; run++)
        {
            var (seconds, megabytes) = await Timing.OfAsync(() => ConvertAsync(csv, folder));
            runs.Add(seconds);
            peak = Math.Max(peak, megabytes);
        }

        return new() { ["seconds"] = Timing.Median(runs.Skip(1)), ["peak"] = peak };
    }

    private static async Task<int> WriteAsync(LedgerContext db, string file, bool asWorkbook)
    {
        var extract = new ExtractFile(ExtractTables.Named("lots"), new ExtractFilter(), asWorkbook);
        await using var written = await extract.WriteAsync(new ExtractQuery(db), Seal.None, default);
        await using var kept = File.Create(file);
        await written.CopyToAsync(kept);
        return 0;
    }

    private static async Task<int> WriteBareAsync(List<DataCell[]> rows, string file)
    {
        await using var stream = File.Create(file);
        await using var workbook = await Spreadsheet.CreateNewAsync(stream);
        await workbook.StartWorksheetAsync("Lots");
        foreach (var row in rows)
        {
            await workbook.AddRowAsync(row);
        }

        await workbook.FinishAsync();
        return 0;
    }

    private static List<DataCell[]> Cells(string csv)
    {
        var rows = new List<DataCell[]>();
        using var reader = CsvReader.FromText(File.ReadAllText(csv), CsvReaderOptions.Default with { HasHeader = false });
        while (reader.Read())
        {
            rows.Add([.. Enumerable.Range(0, reader.FieldCount).Select(reader.GetString).Select(CellOf)]);
        }

        return rows;
    }

    private static DataCell CellOf(string text) => text.Length == 0 ? default
        : decimal.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) ? new DataCell(number) : new DataCell(text);

    private static async Task<double> ConvertAsync(string csv, string folder)
    {
        var start = new ProcessStartInfo("soffice", [$"-env:UserInstallation=file://{folder}/profile", "--headless", "--convert-to", "xlsx", "--outdir", folder, csv]) { RedirectStandardOutput = true, RedirectStandardError = true };
        using var office = Process.Start(start) ?? throw new InvalidOperationException("LibreOffice (soffice) is not installed.");
        var peak = 0d;
        while (!office.HasExited)
        {
            peak = Math.Max(peak, Process.GetProcessesByName("soffice.bin").Select(PeakOf).DefaultIfEmpty().Max());
            await Task.Delay(50);
        }

        return office.ExitCode == 0 ? peak : throw new InvalidOperationException(await office.StandardError.ReadToEndAsync());
    }

    /// <summary>0 for a process that has just ended.</summary>
    private static double PeakOf(Process process)
    {
        try
        {
            return Memory.PeakMegabytes(process.Id);
        }
        catch (Exception gone) when (gone is IOException or InvalidOperationException or ArgumentException)
        {
            return 0;
        }
    }

    private static Lot LotOf(int number, List<Supplier> suppliers)
    {
        var lot = new Lot(string.Create(CultureInfo.InvariantCulture, $"L-{number:000000}"), $"Quay lot {number}, hand-picked", suppliers[number % suppliers.Count].Id);
        lot.Grow("CO", "Huila", null, "Bourbon, Caturra", 1500 + (number % 400), 1900);
        lot.Process(null, "washed");
        lot.Prepare("2025/26", "A", "16", Percent.Of(10.8m));
        lot.Pack(new Packing(10 + (number % 300), Weight.FromKilograms(69), null));
        lot.Certify(["Organic"]);
        return lot;
    }
}
