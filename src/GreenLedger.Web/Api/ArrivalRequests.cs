using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Web.Api;

/// <summary>One cupper's score of a coffee.</summary>
internal sealed record CupperScoreRequest(string Cupper, decimal Score);

/// <summary>What was measured on a sample; what is left out was not measured. Categories are full defects.</summary>
internal sealed record MeasuredRequest(
    decimal? MoisturePercent = null,
    decimal? WaterActivity = null,
    decimal? Category1 = null,
    decimal? Category2 = null,
    decimal? RetainedPercent = null)
{
    /// <param name="screen">The screen that the retained share belongs to.</param>
    public GreenGrade Grade(int? screen)
    {
        var grade = new GreenGrade(default, default, DateOnly.MinValue, null, GreenGrade.UsualSample)
            .Measure(Percent(MoisturePercent), null, WaterActivity is { } activity ? Domain.Measures.WaterActivity.Of(activity) : null, null)
            .StateDefects(Defects(Category1), Defects(Category2));
        Rule.Require(RetainedPercent is null || screen is not null, "Name the screen in the limits: a share is retained by a screen.", "Screen");
        return RetainedPercent is { } retained && screen is { } sieve
            ? grade.Sieve(new Dictionary<int, Percent> { [sieve] = Domain.Measures.Percent.Of(retained), [ScreenShare.Pan] = Domain.Measures.Percent.Of(100m - retained) }, sieve)
            : grade;
    }

    private static Percent? Percent(decimal? points) => points is { } value ? Domain.Measures.Percent.Of(value) : null;

    private static FullDefects? Defects(decimal? count) => count is { } value ? FullDefects.Of(value) : null;
}

/// <summary>Limits of the contract or the house. Moisture is the export target of ICO Resolution 420 where nothing else is said.</summary>
internal sealed record LimitsRequest(
    decimal LowestMoisturePercent = 8m,
    decimal HighestMoisturePercent = 12.5m,
    decimal? WaterActivityBelow = null,
    decimal? Category1 = null,
    decimal? Category2 = null,
    int? Screen = null,
    decimal? LeastRetainedPercent = null)
{
    public PhysicalLimits Limits() => new("Agreed", LowestMoisturePercent, HighestMoisturePercent, WaterActivityBelow, Category1, Category2, null, LeastOnStatedScreen: LeastRetainedPercent);
}

/// <summary>
/// Two panels: the approved sample's sheets and the arrival's. The tolerance is how far below the arrival may cup, in points;
/// <c>betweenSessions</c> is one standard deviation of the difference between one coffee's levels in two sessions.
/// </summary>
internal sealed record VerdictRequest(
    IReadOnlyList<CupperScoreRequest> Approved,
    IReadOnlyList<CupperScoreRequest> Arrival,
    decimal Tolerance,
    bool InOneSession = false,
    IReadOnlyList<PanelSheetRequest>? Others = null,
    IReadOnlyList<CupperScoreRequest>? ReferenceWithApproved = null,
    IReadOnlyList<CupperScoreRequest>? ReferenceWithArrival = null,
    decimal? BetweenSessions = null,
    MeasuredRequest? ApprovedMeasured = null,
    MeasuredRequest? ArrivalMeasured = null,
    LimitsRequest? Limits = null)
{
    private const int MostSheets = 5000;

    public CupDifference Difference()
    {
        Require(Approved, nameof(Approved));
        Require(Arrival, nameof(Arrival));
        Rule.Require(BetweenSessions is null or (>= 0m and <= 10m), "What lies between sessions is 0 to 10 points.", nameof(BetweenSessions));
        if (InOneSession)
        {
            Rule.Require(ReferenceWithApproved is null && ReferenceWithArrival is null && BetweenSessions is null, "One session needs nothing to hold it together: leave out the reference and what lies between sessions.", nameof(InOneSession));
            return CupComparison.OneSession(Sheets([Approved, Arrival, .. OtherCoffees()]), 0, 1);
        }

        Rule.Require(Others is null, "Sheets of other coffees help in one session only.", nameof(Others));
        return CupComparison.TwoSessions(Panel(Approved, ReferenceWithApproved, nameof(ReferenceWithApproved)), Panel(Arrival, ReferenceWithArrival, nameof(ReferenceWithArrival)), (double?)BetweenSessions);
    }

    private IEnumerable<IReadOnlyList<CupperScoreRequest>> OtherCoffees()
    {
        var others = Others ?? [];
        Rule.Require(others.Count <= MostSheets, $"At most {MostSheets} sheets at once.", nameof(Others));
        Rule.Require(others.All(sheet => !string.IsNullOrWhiteSpace(sheet?.Sample)), "Each sheet names its sample.", nameof(Others));
        return others.GroupBy(sheet => sheet.Sample.Trim()).Select(sample => (IReadOnlyList<CupperScoreRequest>)[.. sample.Select(sheet => new CupperScoreRequest(sheet.Cupper, sheet.Score))]);
    }

    private static SessionPanel Panel(IReadOnlyList<CupperScoreRequest> coffee, IReadOnlyList<CupperScoreRequest>? reference, string field)
    {
        if (reference is null)
        {
            return new SessionPanel(Sheets([coffee]), 0);
        }

        Require(reference, field);
        return new SessionPanel(Sheets([coffee, reference]), 0, Reference: 1);
    }

    private static void Require(IReadOnlyList<CupperScoreRequest>? sheets, string field)
    {
        Rule.Require(sheets is { Count: > 0 }, "Send at least one sheet of each coffee.", field);
        Rule.Require(sheets.Count <= MostSheets, $"At most {MostSheets} sheets at once.", field);
    }

    /// <summary>Coffees and cuppers by number, each cupper by name across the coffees.</summary>
    private static List<PanelScore> Sheets(IReadOnlyList<IReadOnlyList<CupperScoreRequest>> coffees)
    {
        var all = coffees.SelectMany((sheets, coffee) => sheets.Select(sheet => (coffee, sheet))).ToList();
        Rule.Require(all.TrueForAll(one => !string.IsNullOrWhiteSpace(one.sheet?.Cupper)), "Each sheet names its cupper.", nameof(CupperScoreRequest.Cupper));
        Rule.Require(all.TrueForAll(one => one.sheet.Score is >= 0m and <= 100m), "A score lies between 0 and 100.", nameof(CupperScoreRequest.Score));
        var seats = all.Select(one => one.sheet.Cupper.Trim()).Distinct().Select((name, seat) => (name, seat)).ToDictionary(pair => pair.name, pair => pair.seat);
        return all.ConvertAll(one => new PanelScore(one.coffee, seats[one.sheet.Cupper.Trim()], (double)one.sheet.Score));
    }
}

/// <summary>How long after which event: the latest of the events counts.</summary>
internal sealed record DeadlineRequest(string What, IReadOnlyList<ClaimEvent> Events, int Days)
{
    public ClaimRule ClaimRule()
    {
        Rule.Require(Events is { Count: > 0 }, "Name the event that starts the days.", nameof(Events));
        return new ClaimRule(Rule.Text(What, "What the days are for", field: nameof(What)), Events, Days);
    }
}

/// <summary>Shipped and landed net weights with the contract's franchise and price; moistures, where both were measured, tell what drying explains.</summary>
internal sealed record WeightClaimRequest(
    decimal ShippedKg,
    decimal LandedKg,
    decimal FranchisePercent,
    PriceRequest Price,
    decimal? AgreedKg = null,
    decimal? TolerancePercent = null,
    decimal? MoistureShippedPercent = null,
    decimal? MoistureLandedPercent = null,
    IReadOnlyList<DeadlineRequest>? Deadlines = null,
    IReadOnlyDictionary<ClaimEvent, DateOnly>? Happened = null)
{
    private const decimal MostKilograms = 1_000_000_000m;

    public WeightVerdict Verdict()
    {
        Rule.Require(Price is not null, "Send the contract's price.", nameof(Price));
        return WeightVerdict.Of(
            Net(ShippedKg, nameof(ShippedKg)),
            Net(LandedKg, nameof(LandedKg)),
            Percent.Of(FranchisePercent),
            Price.Price(),
            AgreedKg is { } agreed ? AgreedQuantity.Of(Net(agreed, nameof(AgreedKg)), Percent.Of(TolerancePercent ?? 0m)) : null);
    }

    private static Weight Net(decimal kilograms, string field)
    {
        Rule.Require(kilograms is >= 0m and <= MostKilograms, "A net weight lies between 0 and 1,000,000,000 kg.", field);
        return Weight.FromKilograms(kilograms);
    }
}
