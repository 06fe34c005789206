using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Data.Choosing;
using GreenLedger.Domain;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Choosing;

public sealed class EditRulesModel(LedgerContext db, TimeProvider clock) : FormPage
{
    [BindProperty]
    public RulesForm Input { get; set; } = new();

    [BindProperty(SupportsGet = true)]
    public Id<BuyingRules>? Id { get; set; }

    public IReadOnlyList<CuppingForm> Forms { get; private set; } = [];

    public Currency Currency { get; private set; }

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        if (Id is null)
        {
            return Page();
        }

        var rules = await db.BuyingRules.Whole().AsNoTracking().FirstOrDefaultAsync(set => set.Id == Id, cancellationToken);
        if (rules is null)
        {
            return NotFound();
        }

        Input = RulesForm.Of(rules);
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        var (by, at) = (User.Person(), clock.GetUtcNow());
        var rules = Id is null ? null : await db.BuyingRules.Whole().FirstOrDefaultAsync(set => set.Id == Id, cancellationToken);
        if (Id is not null && rules is null)
        {
            return NotFound();
        }

        var taken = await db.BuyingRules.AnyAsync(set => set.Name == Input.Name && set.Id != (Id ?? default), cancellationToken);
        Rule.Require(!taken, "There are rules of this name already: choose another.", nameof(BuyingRules.Name));
        var terms = Input.Terms(rules?.Terms, Currency);
        if (rules is null)
        {
            db.Add(new BuyingRules(Input.Name, terms, by, at));
        }
        else
        {
            OpenedOn(rules, Input.Version);
            rules.Edit(Input.Name, terms, by, at);
            db.AddRange(rules.Revisions.Where(revision => revision.Number == rules.Revision));
        }

        await db.SaveChangesAsync(cancellationToken);
        Say($"The rules “{Input.Name}” are saved.");
        return RedirectToPage("/Choosing/Index", new { Rules = Input.Name });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        Forms = await db.CuppingForms.AsNoTracking().OrderBy(form => form.Name).ToListAsync(cancellationToken);
        Currency = (await db.Houses.AsNoTracking().SingleAsync(cancellationToken)).Currency;
    }

    public sealed class RulesForm
    {
        public int Version { get; set; }

        [Required(ErrorMessage = "Please name the rules.")]
        public string Name { get; set; } = "";

        [Display(Name = "Form")]
        public Id<CuppingForm> FormId { get; set; } = CuppingForm.HundredPointId;

        [Display(Name = "Weight of score")]
        public decimal WeightScore { get; set; } = 60m;

        [Display(Name = "Weight of landed cost")]
        public decimal WeightCost { get; set; } = 40m;

        [Display(Name = "Weight of cost per point")]
        public decimal WeightCostPerPoint { get; set; }

        [Display(Name = "Score that counts 0")]
        public decimal LowScore { get; set; } = 80m;

        [Display(Name = "Score that counts 1")]
        public decimal HighScore { get; set; } = 90m;

        [Display(Name = "Landed cost a kg that counts 1")]
        public decimal LowCost { get; set; } = 4m;

        [Display(Name = "Landed cost a kg that counts 0")]
        public decimal HighCost { get; set; } = 14m;

        [Display(Name = "Cost per point that counts 1")]
        public decimal LowCostPerPoint { get; set; } = 0.05m;

        [Display(Name = "Cost per point that counts 0")]
        public decimal HighCostPerPoint { get; set; } = 0.20m;

        [Display(Name = "Cost per point")]
        public CostPerPointRule CostPerPoint { get; set; }

        [Display(Name = "Several sessions of one lot")]
        public SessionRule Sessions { get; set; }

        [Display(Name = "Rank lots with only a stated score")]
        public bool RanksStatedScores { get; set; }

        [Display(Name = "Doubt about a stated score, points")]
        public decimal StatedDoubt { get; set; } = 1.5m;

        [Display(Name = "A fact not measured fails its gate")]
        public bool MeasurementsRequired { get; set; }

        [Display(Name = "Least score")]
        public decimal? LeastScore { get; set; }

        [Display(Name = "Least lower bound")]
        public decimal? LeastLowerBound { get; set; }

        [Display(Name = "Highest landed cost a kg")]
        public decimal? HighestCostPerKilogram { get; set; }

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

        [Display(Name = "Least quantity, kg")]
        public decimal? LeastQuantityKg { get; set; }

        [Display(Name = "Earliest crop year")]
        public string? EarliestCropYear { get; set; }

        [Display(Name = "Certificates")]
        public string? Certificates { get; set; }

        public static RulesForm Of(BuyingRules rules)
        {
            var (terms, gates) = (rules.Terms, rules.Terms.Gates);
            return new RulesForm
            {
                Version = rules.Version,
                Name = rules.Name,
                FormId = terms.FormId,
                WeightScore = terms.Weights.Score,
                WeightCost = terms.Weights.Cost,
                WeightCostPerPoint = terms.Weights.CostPerPoint,
                LowScore = terms.Anchors.LowScore.Points,
                HighScore = terms.Anchors.HighScore.Points,
                LowCost = terms.Anchors.LowCost,
                HighCost = terms.Anchors.HighCost,
                LowCostPerPoint = terms.Anchors.LowCostPerPoint,
                HighCostPerPoint = terms.Anchors.HighCostPerPoint,
                CostPerPoint = terms.CostPerPoint,
                Sessions = terms.Sessions,
                RanksStatedScores = terms.RanksStatedScores,
                StatedDoubt = terms.StatedDoubt.Points,
                MeasurementsRequired = terms.MeasurementsRequired,
                LeastScore = gates.LeastScore?.Points,
                LeastLowerBound = gates.LeastLowerBound?.Points,
                HighestCostPerKilogram = gates.HighestCostPerKilogram,
                LeastMoisture = gates.LeastMoisture?.Points,
                HighestMoisture = gates.HighestMoisture?.Points,
                HighestWaterActivity = gates.HighestWaterActivity?.Ratio,
                HighestCategory1 = gates.HighestCategory1?.Count,
                HighestCategory2 = gates.HighestCategory2?.Count,
                HighestQuakers = gates.HighestQuakers,
                LeastQuantityKg = gates.LeastQuantity?.Kilograms,
                EarliestCropYear = gates.EarliestCropYear,
                Certificates = string.Join(", ", gates.Certificates),
            };
        }

        /// <summary>What the form does not show stays as it was.</summary>
        public RuleTerms Terms(RuleTerms? before, Currency currency)
        {
            var anchors = new Anchors
            {
                LowScore = Score.Of(LowScore),
                HighScore = Score.Of(HighScore),
                LowCost = LowCost,
                HighCost = HighCost,
                LowCostPerPoint = LowCostPerPoint,
                HighCostPerPoint = HighCostPerPoint,
            };
            var start = before ?? new RuleTerms { FormId = FormId, Currency = currency, Anchors = anchors };
            return start with
            {
                FormId = FormId,
                Currency = currency,
                Anchors = anchors,
                Weights = start.Weights with { Score = WeightScore, Cost = WeightCost, CostPerPoint = WeightCostPerPoint },
                CostPerPoint = CostPerPoint,
                Sessions = Sessions,
                RanksStatedScores = RanksStatedScores,
                StatedDoubt = Score.Of(StatedDoubt),
                MeasurementsRequired = MeasurementsRequired,
                Gates = GatesFrom(start.Gates),
            };
        }

        private Gates GatesFrom(Gates before) => before with
        {
            LeastScore = LeastScore is { } least ? Score.Of(least) : null,
            LeastLowerBound = LeastLowerBound is { } bound ? Score.Of(bound) : null,
            HighestCostPerKilogram = HighestCostPerKilogram,
            LeastMoisture = LeastMoisture is { } dry ? Percent.Of(dry) : null,
            HighestMoisture = HighestMoisture is { } wet ? Percent.Of(wet) : null,
            HighestWaterActivity = HighestWaterActivity is { } activity ? WaterActivity.Of(activity) : null,
            HighestCategory1 = HighestCategory1 is { } one ? Domain.Grading.FullDefects.Of(one) : null,
            HighestCategory2 = HighestCategory2 is { } two ? Domain.Grading.FullDefects.Of(two) : null,
            HighestQuakers = HighestQuakers,
            LeastQuantity = LeastQuantityKg is { } quantity ? Weight.FromKilograms(quantity) : null,
            EarliestCropYear = string.IsNullOrWhiteSpace(EarliestCropYear) ? null : EarliestCropYear.Trim(),
            Certificates = [.. (Certificates ?? "").Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)],
        };
    }
}
