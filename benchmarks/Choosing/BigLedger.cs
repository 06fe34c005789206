using System.Globalization;
using System.Text.Json;
using GreenLedger.Data;
using GreenLedger.Data.Offers;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Benchmarks.Choosing;

/// <summary>
/// A ledger far larger than any house's: many offers, two sessions behind each, five sheets in each session. Facts are
/// made by the domain's own methods and written past the change tracker. One that is there already is taken again.
/// </summary>
internal sealed class BigLedger
{
    private const int TableSize = 50;
    private const int Cuppers = 5;
    private readonly Random _random = new(41);
    private readonly LedgerContext _db;
    private readonly List<Lot> _lots = [];
    private readonly List<Sample> _samples = [];

    private BigLedger(LedgerContext db) => _db = db;

    public static async Task<Dictionary<string, double>> FillAsync(string file)
    {
        await using var db = Open(file);
        if (File.Exists(file))
        {
            return new() { ["seconds"] = 0, ["sheets"] = await db.ScoreSheets.CountAsync() };
        }

        await LedgerDatabase.PrepareAsync(db);
        var (seconds, sheets) = await Timing.OfAsync(() => new BigLedger(db).FillAsync());
        await db.Database.ExecuteSqlRawAsync("ANALYZE");
        await db.Database.ExecuteSqlRawAsync("PRAGMA wal_checkpoint(TRUNCATE)");
        return new() { ["seconds"] = seconds, ["sheets"] = sheets };
    }

    public static SqliteLedgerContext Open(string file)
    {
        var options = new DbContextOptionsBuilder<SqliteLedgerContext>();
        SqliteLedgerContext.Configure(options, file);
        return new SqliteLedgerContext(options.Options);
    }

    private async Task<int> FillAsync()
    {
        var people = Enumerable.Range(1, Cuppers).Select(number => new Person($"Cupper {number}", Role.Cupper)).ToList();
        var suppliers = Enumerable.Range(1, 20).Select(number => new Supplier($"Supplier {number}", SupplierKind.Exporter, null, "en")).ToList();
        _db.Add(new House("Bench house", Currency.Eur));
        _db.AddRange(people);
        _db.AddRange(suppliers);
        _db.AddRange(Ways.Routes());
        _db.AddRange(Ways.Figures());
        await _db.SaveChangesAsync();
        _db.ChangeTracker.Clear();
        await using var transaction = await _db.Database.BeginTransactionAsync();
        await OffersAsync(suppliers);
        await SamplesAsync();
        var sheets = await SessionsAsync(people);
        await transaction.CommitAsync();
        return sheets;
    }

    private async Task OffersAsync(List<Supplier> suppliers)
    {
        var methods = await _db.ProcessMethods.AsNoTracking().OrderBy(method => method.Name).ToListAsync();
        var offers = new List<Offer>();
        for (var number = 0; number < Sizes.Offers; number++)
        {
            var way = Ways.All[number % Ways.All.Count];
            var supplier = suppliers[number % suppliers.Count];
            var lot = new Lot(string.Create(CultureInfo.InvariantCulture, $"B{number:000000}"), $"Lot {number}", supplier.Id);
            lot.Grow(way.Country, null, null, "Bourbon", 1500, null);
            lot.Process(methods[_random.Next(methods.Count)].Id, null);
            lot.Prepare(_random.Next(4) == 0 ? "2024/25" : "2025/26", "A", null, null);
            var packing = new Packing(_random.Next(5, 320), Weight.FromKilograms(way.BagKg), null);
            lot.Pack(packing);
            var offer = new Offer(
                supplier.Id, lot, packing, way.Ask(_random), new Terms(way.Delivery, way.Place, Ways.On.AddDays(30)), OfferState.OnOffer, Ways.On.AddDays(-20));
            _lots.Add(lot);
            offers.Add(offer);
        }

        await InsertAsync(_lots);
        await InsertAsync(offers);
    }

    private async Task InsertAsync<T>(IEnumerable<T> rows)
        where T : class
    {
        using var table = new BulkInsert<T>(_db);
        await table.InsertAsync(rows, default);
    }

    private async Task SamplesAsync()
    {
        var grades = new List<GreenGrade>();
        for (var number = 0; number < _lots.Count * Sizes.SheetsPerOffer / Cuppers; number++)
        {
            var lot = _lots[number % _lots.Count];
            var sample = new Sample(lot.Id, SampleKind.Offer, string.Create(CultureInfo.InvariantCulture, $"S{number:000000}"), Ways.On.AddDays(-15), Weight.FromGrams(350m));
            _samples.Add(sample);
            if (number < _lots.Count)
            {
                grades.Add(Grade(sample));
            }
        }

        await InsertAsync(_samples);
        await InsertAsync(grades);
    }

    private GreenGrade Grade(Sample sample)
    {
        var grade = new GreenGrade(sample.Id, sample.LotId, Ways.On.AddDays(-14), null, GreenGrade.UsualSample);
        grade.Measure(Percent.Of(9m + (_random.Next(40) / 10m)), null, WaterActivity.Of(0.48m + (_random.Next(180) / 1000m)), 690);
        grade.CountDefects(
            DefectScheme.WashedArabica, new Dictionary<string, int> { ["full-black"] = _random.Next(20) == 0 ? 1 : 0, ["broken"] = _random.Next(32) }, DefectFractions.Dropped);
        return grade;
    }

    private async Task<int> SessionsAsync(List<Person> people)
    {
        var form = await _db.CuppingForms.AsNoTracking().SingleAsync(found => found.Id == CuppingForm.HundredPointId);
        var quality = _lots.ToDictionary(lot => lot.Id, _ => 83.5 + (_random.NextDouble() * 3) + (_random.NextDouble() * 3));
        using var raw = new RawRows(_db);
        var sheets = 0;
        foreach (var (table, number) in _samples.Chunk(TableSize).Select((table, number) => (table, number)))
        {
            var session = new CuppingSession($"Table {number + 1}", Ways.On.AddDays(-10 + (number * 8 * TableSize / Math.Max(1, _samples.Count))), form, 5, people[0].Id);
            foreach (var sample in table)
            {
                session.Pour(sample, _random);
            }

            foreach (var (person, at) in people.Select((person, at) => (person, at)))
            {
                foreach (var poured in session.Samples)
                {
                    session.Submit(poured.Code, person, Marks(quality[poured.LotId] + ((at - 2) * 0.3)), DateTimeOffset.UnixEpoch);
                }
            }

            var result = session.Close(people[0].Id, DateTimeOffset.UnixEpoch, ExpectedErrors.Of(Score.Of(1m), Score.Of(0.5m)));
            await InsertAsync([session]);
            await InsertAsync(session.Sheets);
            await InsertAsync([result]);
            raw.Write(session, result);
            sheets += session.Sheets.Count;
        }

        return sheets;
    }

    /// <summary>Seven marks in quarters that come near to the points meant, and full marks where cups are counted.</summary>
    private SheetMarks Marks(double points)
    {
        var mean = (points - 30) / 7;
        return new SheetMarks(
            [.. Enumerable.Range(0, 7).Select(_ => Mark.Of((decimal)Math.Clamp(Math.Round((mean + ((_random.NextDouble() - 0.5) * 0.8)) * 4) / 4, 6, 10)))],
            [5, 5, 5], [0, 0]);
    }

    /// <summary>The rows whose tie to their whole is not a member of theirs.</summary>
    private sealed class RawRows(LedgerContext db) : IDisposable
    {
        private readonly RawInsert _samples = new(db, "SessionSamples", ["SessionId", "SampleId", "LotId", "Position", "Code", "Flight", "Repeat", "IsReference"]);

        private readonly RawInsert _results = new(db, "SampleResults",
        [
            "Id", "SessionId", "FormId", "HeldOn", "SampleId", "LotId", "Position", "HoldsFor", "ErrorFrom", "DegreesOfFreedom", "Cuppers", "Sheets",
            "Part", "OwnVariance", "Loadings", "LevelVariance", "PanelResultId", "AnyCupperErrorMillionths", "FittedMillionths", "HighMillionths",
            "LowMillionths", "PlainMeanMillionths", "StandardErrorMillionths", "TheseCuppersErrorMillionths",
        ]);

        public void Write(CuppingSession session, PanelResult panel)
        {
            foreach (var sample in session.Samples)
            {
                _samples.Write([session.Id.Value, sample.SampleId.Value, sample.LotId.Value, sample.Position, sample.Code, sample.Flight, sample.Repeat, sample.IsReference]);
            }

            foreach (var row in panel.Samples)
            {
                _results.Write(
                [
                    row.Id.Value, row.SessionId.Value, row.FormId.Value, row.HeldOn, row.SampleId.Value, row.LotId.Value, row.Position, (int)row.HoldsFor,
                    (int)row.ErrorFrom, row.DegreesOfFreedom, row.Cuppers, row.Sheets, row.Part, row.OwnVariance, JsonSerializer.Serialize(row.Loadings),
                    row.LevelVariance, panel.Id.Value, row.AnyCupperError.Millionths, row.Fitted.Millionths, row.High.Millionths, row.Low.Millionths,
                    row.PlainMean.Millionths, row.StandardError.Millionths, row.TheseCuppersError.Millionths,
                ]);
            }
        }

        public void Dispose()
        {
            _samples.Dispose();
            _results.Dispose();
        }
    }
}
