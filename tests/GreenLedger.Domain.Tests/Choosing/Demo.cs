using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;

namespace GreenLedger.Domain.Tests.Choosing;

/// <summary>Lots and rules that every test of this room knows; a test changes only what it is about.</summary>
internal static class Demo
{
    public static readonly Id<ProcessMethod> Washed = Id<ProcessMethod>.New();
    public static readonly Id<ProcessMethod> Natural = Id<ProcessMethod>.New();
    public static readonly DateOnly Day = new(2026, 11, 20);

    /// <summary>Score and cost weigh 60 and 40; the anchors are the least and the best of the running example.</summary>
    public static RuleTerms Rules { get; } = new()
    {
        FormId = CuppingForm.HundredPointId,
        Currency = Currency.Usd,
        Anchors = new Anchors { LowScore = Score.Of(84m), HighScore = Score.Of(87.5m), LowCost = 6.90m, HighCost = 11.50m },
    };

    /// <summary>The running example of handbook quality.md section 5: score and cost in USD/kg.</summary>
    public static IReadOnlyList<Candidate> RunningExample { get; } =
    [
        Lot("A", 86.50m, 8.80m), Lot("B", 85.25m, 7.60m), Lot("C", 84.00m, 6.90m), Lot("D", 84.00m, 7.20m), Lot("E", 87.50m, 11.50m),
    ];

    public static Candidate Lot(string @ref, decimal score, decimal? cost, double error = 0.4, int? freedom = null) => new()
    {
        OfferId = Id<Offer>.New(),
        LotId = Id<Lot>.New(),
        Ref = @ref,
        Name = "Lot " + @ref,
        Origin = "CO",
        ProcessMethodId = Washed,
        Process = "washed",
        Quantity = Weight.FromKilograms(2100m),
        Results = [Result(score, error, freedom: freedom)],
        CostPerKilogram = cost,
        CostProblem = cost is null ? "There is no exchange rate." : null,
    };

    public static Candidate With(
        this Candidate lot,
        CupScore[]? results = null,
        Score? stated = null,
        Percent? moisture = null,
        WaterActivity? waterActivity = null,
        Id<ProcessMethod>? process = null,
        string? cropYear = null,
        IReadOnlyList<string>? certificates = null) => new()
        {
            OfferId = lot.OfferId,
            LotId = lot.LotId,
            Ref = lot.Ref,
            Name = lot.Name,
            Origin = lot.Origin,
            ProcessMethodId = process ?? lot.ProcessMethodId,
            Process = process == Natural ? "natural" : lot.Process,
            Quantity = lot.Quantity,
            CropYear = cropYear,
            Certificates = certificates ?? [],
            Results = results ?? lot.Results,
            StatedScore = stated,
            Moisture = moisture,
            WaterActivity = waterActivity,
            CostPerKilogram = lot.CostPerKilogram,
            CostProblem = lot.CostProblem,
        };

    public static CupScore Result(
        decimal score, double error, Id<CuppingSession>? session = null, int? freedom = null, Id<CuppingForm>? form = null, DateOnly? on = null, HoldsFor holdsFor = HoldsFor.TheseCuppers, double? any = null) => new(
        Id<SampleResult>.New(),
        session ?? Id<CuppingSession>.New(),
        1,
        form ?? CuppingForm.HundredPointId,
        on ?? Day,
        Score.Of(score),
        error,
        any ?? error,
        freedom,
        Score.Of(score - (decimal)(1.96 * error)),
        Score.Of(score + (decimal)(1.96 * error)),
        holdsFor);

    public static Shortlist Ranked(IReadOnlyList<Candidate> lots, RuleTerms? rules = null) =>
        Shortlist.Rank(lots, rules ?? Rules, Currency.Usd);

    public static string Order(this IEnumerable<ShortlistEntry> entries) => string.Join(" ", entries.Select(entry => entry.Candidate.Ref));
}
