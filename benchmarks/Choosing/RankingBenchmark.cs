using System.Diagnostics;
using GreenLedger.Data;
using GreenLedger.Data.Choosing;
using GreenLedger.Data.Pricing;
using GreenLedger.Domain;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Benchmarks.Choosing;

/// <summary>Ranks the big ledger by the ledger's own query and by hand-written SQL, and holds the rows against each other.</summary>
internal static class RankingBenchmark
{
    /// <summary>A first run of each side warms it up; then they take turns.</summary>
    public static async Task<Dictionary<string, double>> CompareAsync(string file)
    {
        await using var db = BigLedger.Open(file);
        await db.Database.OpenConnectionAsync();
        var connection = (SqliteConnection)db.Database.GetDbConnection();
        var terms = await TermsAsync(db);
        var shortlist = await RankAsync(db, terms);
        var equal = Compare(Rows(shortlist), RankingSql.Rank(connection, terms, Ways.On));
        var (ours, sql) = (new List<double>(), new List<double>());
        for (var run = 0; run < Sizes.Repeats; run++)
        {
            GC.Collect();
            ours.Add((await Timing.OfAsync(() => RankAsync(db, terms))).Seconds);
            GC.Collect();
            sql.Add(Timing.Of(() => RankingSql.Rank(connection, terms, Ways.On)).Seconds);
        }

        return new()
        {
            ["ours"] = Timing.Median(ours),
            ["sql"] = Timing.Median(sql),
            ["rows"] = equal,
            ["ranked"] = shortlist.Ranked.Count,
            ["front"] = shortlist.Front.Count,
        };
    }

    /// <summary>One ranking from a cold start, for its memory; then chances and regression, which the SQL does not do.</summary>
    public static async Task<Dictionary<string, double>> OursAloneAsync(string file)
    {
        await using var db = BigLedger.Open(file);
        var terms = await TermsAsync(db);
        var (cold, _) = await Timing.OfAsync(() => RankAsync(db, terms));
        var peak = Memory.PeakMegabytes();
        var costs = await new LandedCostsQuery(db).FindAsync(Ways.On, default);
        var offers = await new CandidateQuery(db, new LandedCostsQuery(db)).ListAsync(terms, costs!, new ShortlistFilter(), default);
        var (regression, _) = Timing.Of(() => PriceModel.Of(offers.Past, terms.LeastOffersPerGroup));
        var shortlist = Shortlist.Rank(offers.Candidates, terms, Currency.Eur);
        var (chances, contenders) = await Timing.OfAsync(() => DrawAsync(db, shortlist));
        return new() { ["cold"] = cold, ["memory"] = peak, ["chances"] = chances, ["contenders"] = contenders, ["regression"] = regression, ["past"] = offers.Past.Count };
    }

    public static Dictionary<string, double> SqlAlone(string file)
    {
        using var db = BigLedger.Open(file);
        db.Database.OpenConnection();
        var terms = TermsAsync(db).GetAwaiter().GetResult();
        var (cold, _) = Timing.Of(() => RankingSql.Rank((SqliteConnection)db.Database.GetDbConnection(), terms, Ways.On));
        return new() { ["cold"] = cold };
    }

    /// <summary>Every session's joint fit again from its sheets, read a hundred sessions at a time.</summary>
    public static async Task<Dictionary<string, double>> RefitAsync(string file)
    {
        await using var db = BigLedger.Open(file);
        var ids = await db.CuppingSessions.OrderBy(session => session.Id).Select(session => session.Id).ToListAsync();
        var expected = ExpectedErrors.Of(Score.Of(1m), Score.Of(0.5m));
        var (watch, fit, sheets, results) = (Stopwatch.StartNew(), 0.0, 0, 0);
        foreach (var part in ids.Chunk(100))
        {
            var sessions = await db.CuppingSessions.Where(session => part.Contains(session.Id)).Include(session => session.Form)
                .Include(session => session.Samples).Include(session => session.Sheets).AsSplitQuery().AsNoTracking().ToListAsync();
            var (seconds, fitted) = Timing.Of(() => sessions.Sum(session => PanelResult.Of(session, expected).Samples.Count));
            fit += seconds;
            results += fitted;
            sheets += sessions.Sum(session => session.Sheets.Count);
        }

        return new() { ["whole"] = watch.Elapsed.TotalSeconds, ["fit"] = fit, ["sheets"] = sheets, ["sessions"] = ids.Count, ["results"] = results };
    }

    private static async Task<Shortlist> RankAsync(LedgerContext db, RuleTerms terms)
    {
        var costsQuery = new LandedCostsQuery(db);
        var costs = await costsQuery.FindAsync(Ways.On, default);
        var offers = await new CandidateQuery(db, costsQuery).ListAsync(terms, costs!, new ShortlistFilter(), default);
        return Shortlist.Rank(offers.Candidates, terms, costs!.House);
    }

    private static async Task<int> DrawAsync(LedgerContext db, Shortlist shortlist)
    {
        var errors = new Dictionary<Id<SampleResult>, SharedErrors>();
        await LoadAsync(db, shortlist.Leaders, errors);
        var contenders = shortlist.Contenders(errors);
        await LoadAsync(db, contenders.Entries, errors);
        shortlist.DrawChances(contenders, errors);
        return contenders.Entries.Count;
    }

    private static async Task LoadAsync(LedgerContext db, IEnumerable<ShortlistEntry> entries, Dictionary<Id<SampleResult>, SharedErrors> errors)
    {
        var wanted = entries.SelectMany(entry => entry.Candidate.Results).Select(result => result.ResultId).Where(id => !errors.ContainsKey(id)).ToList();
        foreach (var result in await db.SampleResults.AsNoTracking().Where(result => wanted.Contains(result.Id)).ToListAsync())
        {
            errors[result.Id] = SharedErrors.Of(result);
        }
    }

    private static List<RankedRow> Rows(Shortlist shortlist) =>
    [
        .. shortlist.Entries.Select(entry => new RankedRow(
            entry.Candidate.Ref, entry.FailedGates, (double)entry.Candidate.CostPerKilogram!.Value,
            entry.Standing == Standing.Ranked ? entry.Terms.Total : 0, entry.IsOnFront, entry.Rank)),
    ];

    /// <summary>
    /// Gates and fronts must be the same, costs and totals to the ninth decimal, and at each rank the same total: two
    /// lots whose totals differ by less than the twelfth decimal may change places. The number of rows held against
    /// each other.
    /// </summary>
    private static int Compare(List<RankedRow> ours, IReadOnlyList<RankedRow> sql)
    {
        var peer = sql.ToDictionary(row => row.Ref);
        var totals = sql.Where(row => row.Rank > 0).ToDictionary(row => row.Rank, row => row.Total);
        if (ours.Count != peer.Count || ours.Count(row => row.Rank > 0) != totals.Count)
        {
            throw new InvalidOperationException($"{ours.Count} rows here, {peer.Count} by SQL.");
        }

        foreach (var row in ours)
        {
            var other = peer[row.Ref];
            if (row.Failed != other.Failed || row.IsOnFront != other.IsOnFront || row.Rank > 0 != other.Rank > 0
                || Math.Abs(row.Cost - other.Cost) > 1e-9 || Math.Abs(row.Total - other.Total) > 1e-9
                || (row.Rank > 0 && Math.Abs(row.Total - totals[row.Rank]) > 1e-12))
            {
                throw new InvalidOperationException($"Not equal:\n{row}\n{other}");
            }
        }

        return ours.Count;
    }

    private static async Task<RuleTerms> TermsAsync(LedgerContext db)
    {
        var methods = await db.ProcessMethods.AsNoTracking().OrderBy(method => method.Name).ToListAsync();
        return new RuleTerms
        {
            FormId = CuppingForm.HundredPointId,
            Currency = Currency.Eur,
            Gates = new Gates
            {
                LeastScore = Score.Of(84m),
                LeastLowerBound = Score.Of(83m),
                HighestCostPerKilogram = 14m,
                LeastMoisture = Percent.Of(9m),
                HighestMoisture = Percent.Of(12.5m),
                HighestWaterActivity = WaterActivity.Of(0.64m),
                HighestCategory1 = FullDefects.Of(0m),
                HighestCategory2 = FullDefects.Of(5m),
                LeastQuantity = Weight.FromKilograms(600m),
                EarliestCropYear = "2025/26",
            },
            Weights = new Weights { Score = 60m, Cost = 30m, Process = 10m },
            Anchors = new Anchors { LowScore = Score.Of(80m), HighScore = Score.Of(90m), LowCost = 5m, HighCost = 15m },
            Processes = [.. methods.Select((method, at) => new ProcessChoice(method.Id, method.Name, at % 8 != 0, at % 5 / 4m))],
        };
    }
}
