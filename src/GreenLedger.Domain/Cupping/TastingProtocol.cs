namespace GreenLedger.Domain.Cupping;

/// <summary>
/// One step at the table: when it begins, what is done, and which attributes are marked then (by the keys of the forms
/// that have them).
/// </summary>
/// <param name="AfterSeconds">Seconds after the pour; null for what is done before it.</param>
/// <param name="Caution">What can hurt at this step, in a sentence.</param>
public sealed record TastingStep(string Key, string Name, int? AfterSeconds, string Does, IReadOnlyList<string> Attributes, string? Caution = null);

/// <summary>The steps of a tasting in their order, as data with a revision.</summary>
public sealed class TastingProtocol
{
    public static readonly Id<TastingProtocol> UsualId = Id<TastingProtocol>.Parse("01000000-2015-7000-8000-000000000001", null);

    private TastingProtocol()
    {
        Name = "";
        Steps = [];
    }

    public Id<TastingProtocol> Id { get; private set; }

    public string Name { get; private set; }

    /// <summary>1 as delivered; each change by the house counts one up.</summary>
    public int Revision { get; private set; }

    public IReadOnlyList<TastingStep> Steps { get; private set; }

    /// <summary>Why the house changed the steps; null as delivered.</summary>
    public string? Reason { get; private set; }

    /// <summary>
    /// The order of handbook quality.md section 1.1: break at 4 minutes (usual of 3 to 5), taste from 8 minutes. The
    /// minutes after the break and the split of the later steps are from memory there, which is why they can be changed.
    /// </summary>
    public static TastingProtocol Usual() => new()
    {
        Id = UsualId,
        Name = "Cupping protocol",
        Revision = 1,
        Steps =
        [
            new("dry", "Dry grounds", null, "Smell the dry grounds within 15 minutes of grinding.", ["fragrance", "fragrance-aroma"],
                "Say before you begin if you have an allergy or must limit caffeine; you may leave out any cup without a reason."),
            new("pour", "Pour", 0, "Pour to the rim, straight on the grounds, and leave the crust alone.", [],
                "Water at 93 °C scalds: pour away from people and keep kettles off the edge; local rules decide."),
            new("break", "Break the crust", 240, "Stir three times with your nose close, and smell.", ["aroma", "fragrance-aroma"],
                "The cup is still scalding: keep your face above the rim, not in the steam."),
            new("skim", "Skim", 300, "Take off foam and floating grounds with two spoons.", []),
            new("hot", "Taste hot", 480, "Slurp, and spit into a cup of your own.", ["flavor", "aftertaste"],
                "Use a spoon of your own and rinse it in hot water between cups; stay away from the table when you are ill."),
            new("warm", "Taste warm", 720, "Taste again as it cools.", ["acidity", "body", "mouthfeel", "balance"]),
            new("cool", "Taste cool", 1200, "Go over every cup of each sample.", ["sweetness", "uniformity", "clean-cup"]),
            new("end", "Finish", 1800, "Give the overall mark, look over your marks, and hand in.", ["overall"],
                "Caffeine adds up even when you spit: drink water and take a break before the next flight."),
        ],
    };

    /// <summary>The same steps at other times: a new revision, so that earlier sessions keep theirs.</summary>
    /// <param name="afterSeconds">Seconds after the pour by the key of the step; steps not named keep their time.</param>
    /// <exception cref="RuleBrokenException">A step would come before the one that precedes it, or no reason is given.</exception>
    public TastingProtocol Retime(IReadOnlyDictionary<string, int> afterSeconds, string? reason)
    {
        ArgumentNullException.ThrowIfNull(afterSeconds);
        List<TastingStep> steps = [.. Steps.Select(step => step.AfterSeconds > 0 && afterSeconds.TryGetValue(step.Key, out var seconds) ? step with { AfterSeconds = seconds } : step)];
        var timed = steps.Where(step => step.AfterSeconds is not null).ToList();
        var early = timed.Zip(timed.Skip(1)).FirstOrDefault(pair => pair.Second.AfterSeconds <= pair.First.AfterSeconds).Second;
        Rule.Require(early is null, $"'{early?.Name}' has to come after the step before it.", early?.Key);
        Rule.Require(timed[^1].AfterSeconds <= 2 * 60 * 60, "The last step begins within two hours of the pour.", timed[^1].Key);
        return new TastingProtocol
        {
            Id = Id<TastingProtocol>.New(),
            Name = Name,
            Revision = Revision + 1,
            Steps = steps,
            Reason = Rule.Text(reason, "The reason for the change", 500, nameof(Reason)),
        };
    }
}
