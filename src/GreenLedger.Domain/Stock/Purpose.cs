using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;

namespace GreenLedger.Domain.Stock;

/// <summary>What the buyer asks of the coffee for a purpose.</summary>
/// <param name="Process">Null where any process will do.</param>
/// <param name="LeastScore">Null where no score is asked for.</param>
/// <param name="Flavour">A family of the house's list of descriptors, or words of the buyer's own.</param>
/// <param name="WeeklyUse">Kilograms that the house means to roast of it in a week.</param>
/// <param name="Blend">The blend that it is a component of; null for a single origin.</param>
/// <param name="Share">Its share of that blend by green weight.</param>
public sealed record PurposeTerms(string Name, ProcessFamily? Process, Score? LeastScore, string? Flavour, Weight WeeklyUse, string? Blend = null, Percent? Share = null);

/// <summary>What the house buys green coffee for: a component of a blend, or a single origin. Lots serve it one after the other.</summary>
public sealed class Purpose
{
    private readonly List<PurposeLot> _lots = [];

    private Purpose() => Name = SearchText = "";

    /// <exception cref="RuleBrokenException">The name is missing or a figure is out of range.</exception>
    public Purpose(PurposeTerms terms)
        : this()
    {
        Id = Id<Purpose>.New();
        State(terms);
    }

    public Id<Purpose> Id { get; private set; }

    public int Version { get; private set; }

    public string Name { get; private set; }

    /// <summary>The name folded, so that no two purposes differ by a capital or an accent alone.</summary>
    public string SearchText { get; private set; }

    public ProcessFamily? Process { get; private set; }

    public Score? LeastScore { get; private set; }

    public string? Flavour { get; private set; }

    /// <summary>As the buyer means to use it; what is really used is read from releases.</summary>
    public Weight WeeklyUse { get; private set; }

    public string? Blend { get; private set; }

    public Percent? Share { get; private set; }

    /// <summary>What is put away is kept for old releases and no longer asked about.</summary>
    public bool IsInUse { get; private set; } = true;

    /// <summary>The lots that serve it.</summary>
    public IReadOnlyList<PurposeLot> Lots => _lots;

    /// <exception cref="RuleBrokenException">The name is missing or a figure is out of range.</exception>
    public void State(PurposeTerms terms)
    {
        ArgumentNullException.ThrowIfNull(terms);
        Rule.Require(terms.Process is null || Enum.IsDefined(terms.Process.Value), "Choose a process, or any.", nameof(Process));
        Rule.Require(terms.LeastScore is null or { Points: >= 0m and <= 100m }, "The least score lies between 0 and 100 points.", nameof(LeastScore));
        Rule.Require(terms.WeeklyUse >= Weight.Zero && terms.WeeklyUse.Kilograms <= 1_000_000m, "The use of a week lies between 0 and 1,000,000 kg.", nameof(WeeklyUse));
        Rule.Require(string.IsNullOrWhiteSpace(terms.Blend) == terms.Share is null, "A component of a blend has both the blend’s name and its share of it; a single origin has neither.", nameof(Share));
        Rule.Require(terms.Share is null or { Points: > 0m and <= 100m }, "The share of a blend lies above 0 and at most at 100 %.", nameof(Share));
        Name = Rule.Text(terms.Name, "The name of the purpose", 80, nameof(Name));
        SearchText = Measures.SearchText.Of(Name);
        Flavour = Rule.OptionalText(terms.Flavour, "The flavour family", 60, nameof(Flavour));
        Blend = Rule.OptionalText(terms.Blend, "The name of the blend", 80, nameof(Blend));
        (Process, LeastScore, WeeklyUse, Share) = (terms.Process, terms.LeastScore, terms.WeeklyUse, terms.Share);
    }

    /// <exception cref="RuleBrokenException">The lot serves it already.</exception>
    public void Serve(Id<Lot> lotId)
    {
        Rule.Require(!_lots.Exists(lot => lot.LotId == lotId), "This lot serves the purpose already.", nameof(PurposeLot.LotId));
        _lots.Add(new PurposeLot(lotId));
    }

    /// <summary>The lot serves something else from now on; its releases for this purpose stay what they were.</summary>
    public void Spare(Id<Lot> lotId) => _lots.RemoveAll(lot => lot.LotId == lotId);

    public void PutAway() => IsInUse = false;

    public void TakeUpAgain() => IsInUse = true;
}

/// <summary>A lot that serves a purpose.</summary>
public sealed class PurposeLot
{
    private PurposeLot()
    {
    }

    internal PurposeLot(Id<Lot> lotId)
    {
        Id = Id<PurposeLot>.New();
        LotId = lotId;
    }

    public Id<PurposeLot> Id { get; private set; }

    public Id<Lot> LotId { get; private set; }
}
