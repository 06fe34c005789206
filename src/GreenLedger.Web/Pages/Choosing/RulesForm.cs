using System.ComponentModel.DataAnnotations;
using GreenLedger.Domain;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Origins;

namespace GreenLedger.Web.Pages.Choosing;

/// <summary>A rule set as it is written on the page: every gate and weight, empty where nothing is asked.</summary>
public sealed class RulesForm
{
    public int Version { get; set; }

    [Required(ErrorMessage = "Please name the rules.")]
    [Display(Name = "Name of the rules")]
    public string Name { get; set; } = "";

    [Display(Name = "Form")]
    public Id<CuppingForm> FormId { get; set; } = CuppingForm.HundredPointId;

    [Display(Name = "Several sessions of one lot")]
    public SessionRule Sessions { get; set; }

    [Display(Name = "Rank lots that only their seller scored")]
    public bool RanksStatedScores { get; set; }

    [Display(Name = "Doubt about a stated score, points")]
    public decimal StatedDoubt { get; set; } = 1.5m;

    [Display(Name = "Weight of score")]
    public decimal WeightScore { get; set; } = 60m;

    [Display(Name = "Score that counts 0")]
    public decimal LowScore { get; set; } = 80m;

    [Display(Name = "Score that counts 1")]
    public decimal HighScore { get; set; } = 90m;

    [Display(Name = "Weight of landed cost")]
    public decimal WeightCost { get; set; } = 40m;

    [Display(Name = "Cost a kg that counts 0")]
    public decimal HighCost { get; set; }

    [Display(Name = "Cost a kg that counts 1")]
    public decimal LowCost { get; set; }

    [Display(Name = "Cost per point is")]
    public CostPerPointRule CostPerPoint { get; set; }

    [Display(Name = "Base score")]
    public decimal BaseScore { get; set; } = 80m;

    [Display(Name = "Weight of cost per point")]
    public decimal WeightCostPerPoint { get; set; }

    [Display(Name = "Cost per point that counts 0")]
    public decimal HighCostPerPoint { get; set; }

    [Display(Name = "Cost per point that counts 1")]
    public decimal LowCostPerPoint { get; set; }

    [Display(Name = "Weight of process")]
    public decimal WeightProcess { get; set; }

    [Display(Name = "Any other process is allowed")]
    public bool OtherProcessesAllowed { get; set; } = true;

    public IList<ProcessForm> Processes { get; set; } = [];

    [Display(Name = "Least score")]
    public decimal? LeastScore { get; set; }

    [Display(Name = "Least lower bound of the score")]
    public decimal? LeastLowerBound { get; set; }

    [Display(Name = "Highest landed cost a kg")]
    public decimal? HighestCostPerKilogram { get; set; }

    [Display(Name = "Least quantity, kg")]
    public decimal? LeastQuantityKg { get; set; }

    [Display(Name = "Least moisture, %")]
    public decimal? LeastMoisture { get; set; }

    [Display(Name = "Highest moisture, %")]
    public decimal? HighestMoisture { get; set; }

    [Display(Name = "Highest water activity")]
    public decimal? HighestWaterActivity { get; set; }

    [Display(Name = "Most category 1 defects")]
    public decimal? HighestCategory1 { get; set; }

    [Display(Name = "Most category 2 defects")]
    public decimal? HighestCategory2 { get; set; }

    [Display(Name = "Most quakers")]
    public int? HighestQuakers { get; set; }

    [Display(Name = "Screen, 1/64 inch")]
    public int? Screen { get; set; }

    [Display(Name = "Least kept by that screen, %")]
    public decimal? LeastRetained { get; set; }

    [Display(Name = "Earliest crop year")]
    public string? EarliestCropYear { get; set; }

    [Display(Name = "Certificates")]
    public string? Certificates { get; set; }

    [Display(Name = "What was not measured fails its gate")]
    public bool MeasurementsRequired { get; set; }

    [Display(Name = "Past offers that a predicted price needs")]
    public int LeastOffersPerGroup { get; set; } = 3;

    public static RulesForm Of(BuyingRules rules, IReadOnlyList<ProcessMethod> methods)
    {
        var (terms, gates) = (rules.Terms, rules.Terms.Gates);
        return new RulesForm
        {
            Version = rules.Version,
            Name = rules.Name,
            FormId = terms.FormId,
            Sessions = terms.Sessions,
            RanksStatedScores = terms.RanksStatedScores,
            StatedDoubt = terms.StatedDoubt.Points,
            WeightScore = terms.Weights.Score,
            WeightCost = terms.Weights.Cost,
            WeightCostPerPoint = terms.Weights.CostPerPoint,
            WeightProcess = terms.Weights.Process,
            LowScore = terms.Anchors.LowScore.Points,
            HighScore = terms.Anchors.HighScore.Points,
            LowCost = terms.Anchors.LowCost,
            HighCost = terms.Anchors.HighCost,
            LowCostPerPoint = terms.Anchors.LowCostPerPoint,
            HighCostPerPoint = terms.Anchors.HighCostPerPoint,
            CostPerPoint = terms.CostPerPoint,
            BaseScore = terms.BaseScore.Points,
            OtherProcessesAllowed = terms.OtherProcessesAllowed,
            Processes = ProcessForm.AllOf(methods, terms),
            MeasurementsRequired = terms.MeasurementsRequired,
            LeastOffersPerGroup = terms.LeastOffersPerGroup,
            LeastScore = gates.LeastScore?.Points,
            LeastLowerBound = gates.LeastLowerBound?.Points,
            HighestCostPerKilogram = gates.HighestCostPerKilogram,
            LeastMoisture = gates.LeastMoisture?.Points,
            HighestMoisture = gates.HighestMoisture?.Points,
            HighestWaterActivity = gates.HighestWaterActivity?.Ratio,
            HighestCategory1 = gates.HighestCategory1?.Count,
            HighestCategory2 = gates.HighestCategory2?.Count,
            HighestQuakers = gates.HighestQuakers,
            Screen = gates.Screen,
            LeastRetained = gates.LeastRetained?.Points,
            LeastQuantityKg = gates.LeastQuantity?.Kilograms / 1.000000000m,
            EarliestCropYear = gates.EarliestCropYear,
            Certificates = string.Join(", ", gates.Certificates),
        };
    }

    public RuleTerms Terms(Currency currency, IReadOnlyList<ProcessMethod> methods) => new()
    {
        FormId = FormId,
        Currency = currency,
        Anchors = new Anchors
        {
            LowScore = Score.Of(LowScore),
            HighScore = Score.Of(HighScore),
            LowCost = LowCost,
            HighCost = HighCost,
            LowCostPerPoint = LowCostPerPoint,
            HighCostPerPoint = HighCostPerPoint,
        },
        Weights = new Weights { Score = WeightScore, Cost = WeightCost, CostPerPoint = WeightCostPerPoint, Process = WeightProcess },
        Processes = [.. Processes.Join(methods, choice => choice.MethodId, method => method.Id, (choice, method) => choice.Choice(method)).Where(Says)],
        OtherProcessesAllowed = OtherProcessesAllowed,
        CostPerPoint = CostPerPoint,
        BaseScore = Score.Of(BaseScore),
        Sessions = Sessions,
        RanksStatedScores = RanksStatedScores,
        StatedDoubt = Score.Of(StatedDoubt),
        MeasurementsRequired = MeasurementsRequired,
        LeastOffersPerGroup = LeastOffersPerGroup,
        Gates = Gates(),
    };

    /// <summary>A method that counts 0 and is treated as any other needs no word of its own.</summary>
    private bool Says(ProcessChoice choice) => choice.IsAllowed != OtherProcessesAllowed || choice.Preference > 0m;

    private Gates Gates() => new()
    {
        LeastScore = LeastScore is { } least ? Score.Of(least) : null,
        LeastLowerBound = LeastLowerBound is { } bound ? Score.Of(bound) : null,
        HighestCostPerKilogram = HighestCostPerKilogram,
        LeastMoisture = LeastMoisture is { } dry ? Percent.Of(dry) : null,
        HighestMoisture = HighestMoisture is { } wet ? Percent.Of(wet) : null,
        HighestWaterActivity = HighestWaterActivity is { } activity ? WaterActivity.Of(activity) : null,
        HighestCategory1 = HighestCategory1 is { } one ? FullDefects.Of(one) : null,
        HighestCategory2 = HighestCategory2 is { } two ? FullDefects.Of(two) : null,
        HighestQuakers = HighestQuakers,
        Screen = Screen,
        LeastRetained = LeastRetained is { } kept ? Percent.Of(kept) : null,
        LeastQuantity = LeastQuantityKg is { } quantity ? Weight.FromKilograms(quantity) : null,
        EarliestCropYear = ReadYear(EarliestCropYear),
        Certificates = [.. (Certificates ?? "").Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Select(name => name.ToLowerInvariant()).Distinct()],
    };

    /// <summary>Crop years are compared as they are labelled, so that a year that cannot be read would let old crops through.</summary>
    private static string? ReadYear(string? text)
    {
        var year = CropYear.Read(text);
        Rule.Require(year is not null || string.IsNullOrWhiteSpace(text), "Write the crop year as 2026/27 or 2026.", nameof(EarliestCropYear));
        return year;
    }

    /// <summary>What the rules say about one process method.</summary>
    public sealed class ProcessForm
    {
        public Id<ProcessMethod> MethodId { get; set; }

        public string Name { get; set; } = "";

        public bool IsAllowed { get; set; } = true;

        [Range(0, 1, ErrorMessage = "A preference lies from 0 to 1.")]
        [Display(Name = "Preference")]
        public decimal Preference { get; set; }

        public static IList<ProcessForm> AllOf(IReadOnlyList<ProcessMethod> methods, RuleTerms? terms)
        {
            var said = terms?.Processes.ToDictionary(choice => choice.MethodId) ?? [];
            return [.. methods.Select(method => new ProcessForm
            {
                MethodId = method.Id,
                Name = method.Name,
                IsAllowed = said.TryGetValue(method.Id, out var choice) ? choice.IsAllowed : terms?.OtherProcessesAllowed ?? true,
                Preference = choice?.Preference ?? 0m,
            })];
        }

        public ProcessChoice Choice(ProcessMethod method) => new(method.Id, method.Name, IsAllowed, Preference);
    }
}
