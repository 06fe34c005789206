using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Origins;

namespace GreenLedger.Domain.Offers;

/// <summary>What the house is for a purchase under Regulation (EU) 2023/1115 (handbook, trade 7.2); the competent authority has the last word.</summary>
public enum DiligenceRole
{
    /// <summary>Places the coffee on the market first, or exports it: makes the statement.</summary>
    Operator = 0,

    /// <summary>Works on coffee that is covered already: keeps the supplier's reference.</summary>
    Downstream = 1,
}

/// <summary>What was entered about a lot.</summary>
public sealed record DiligenceFacts(
    DiligenceRole Role, DateOnly? ProducedFrom, DateOnly? ProducedUntil, string? Legality, string? Deforestation, string? Risk, string? StatementReference, string? VerificationNumber);

/// <summary>
/// What is held about where a lot was grown, for Regulation (EU) 2023/1115. It tells what is missing and decides nothing: it is not
/// legal advice, and the competent authority's word counts.
/// </summary>
public sealed class DueDiligence
{
    private readonly List<LotPlot> _plots = [];

    private DueDiligence()
    {
    }

    public DueDiligence(Id<Lot> lotId)
    {
        Id = Id<DueDiligence>.New();
        LotId = lotId;
    }

    public Id<DueDiligence> Id { get; private set; }

    public int Version { get; private set; }

    public Id<Lot> LotId { get; private set; }

    public DiligenceRole Role { get; private set; }

    /// <summary>Harvest, the first day; held and not part of the statement.</summary>
    public DateOnly? ProducedFrom { get; private set; }

    public DateOnly? ProducedUntil { get; private set; }

    /// <summary>What shows that it was grown by the law of the country.</summary>
    public string? Legality { get; private set; }

    /// <summary>What shows that the land was not deforested after 31 December 2020.</summary>
    public string? Deforestation { get; private set; }

    /// <summary>How the risk was judged and lessened; not needed for countries of low risk.</summary>
    public string? Risk { get; private set; }

    public string? StatementReference { get; private set; }

    public string? VerificationNumber { get; private set; }

    public IReadOnlyList<LotPlot> Plots => _plots;

    /// <exception cref="RuleBrokenException">The days stand in no order, or a number has not its published shape.</exception>
    public void State(DiligenceFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        Rule.Require(Enum.IsDefined(facts.Role), "Choose operator or downstream.", nameof(Role));
        Rule.Require(facts.ProducedUntil is null || facts.ProducedFrom is null || facts.ProducedUntil >= facts.ProducedFrom, "The harvest cannot end before it begins.", nameof(ProducedUntil));
        var reference = Rule.OptionalText(facts.StatementReference, "The reference number", 14, nameof(StatementReference))?.ToUpperInvariant();
        Rule.Require(reference is null || reference.All(char.IsAsciiLetterOrDigit), "A reference number has letters and digits only, at most 14.", nameof(StatementReference));
        var verification = Rule.OptionalText(facts.VerificationNumber, "The verification number", 35, nameof(VerificationNumber));
        Rule.Require(verification is null or { Length: >= 5 }, "A verification number has 5 to 35 characters.", nameof(VerificationNumber));
        (Role, ProducedFrom, ProducedUntil) = (facts.Role, facts.ProducedFrom, facts.ProducedUntil);
        Legality = Rule.OptionalText(facts.Legality, "The evidence of legality", 2000, nameof(Legality));
        Deforestation = Rule.OptionalText(facts.Deforestation, "The evidence about deforestation", 2000, nameof(Deforestation));
        Risk = Rule.OptionalText(facts.Risk, "The judgement of risk", 2000, nameof(Risk));
        (StatementReference, VerificationNumber) = (reference, verification);
    }

    /// <summary>Says which plots the lot was grown on: all of them, since one that fails fails the lot.</summary>
    public void GrewOn(IReadOnlyCollection<Id<Plot>> plots)
    {
        ArgumentNullException.ThrowIfNull(plots);
        _plots.RemoveAll(known => !plots.Contains(known.PlotId));
        _plots.AddRange(plots.Distinct().Where(id => _plots.TrueForAll(known => known.PlotId != id)).Select(id => new LotPlot(id)));
    }

    /// <summary>What is still missing before a statement can stand, in sentences (Articles 9 to 11; handbook, trade 7.3).</summary>
    /// <param name="lot">The lot.</param>
    /// <param name="hasSupplier">Whether its supplier is known.</param>
    /// <param name="isLowRisk">Whether its country of production is of low risk.</param>
    public IReadOnlyList<string> Missing(Lot lot, bool hasSupplier, bool isLowRisk)
    {
        ArgumentNullException.ThrowIfNull(lot);
        (bool IsMissing, string What)[] asked = Role == DiligenceRole.Downstream
            ? [(StatementReference is null, "the reference number of the supplier’s statement"), (!hasSupplier, "the supplier")]
            :
            [
                (_plots.Count == 0, "the plots that it was grown on, all of them"),
                (ProducedFrom is null && lot.CropYear is null, "when it was produced: the harvest’s days, or the crop year"),
                (lot.NetWeight is null || lot.NetWeight == Weight.Zero, "the net weight"),
                (lot.CountryCode is null, "the country of production"),
                (!hasSupplier, "the supplier"),
                (Legality is null, "evidence that it was grown by the law of the country"),
                (Deforestation is null, "evidence that the land was not deforested after 31 December 2020"),
                (!isLowRisk && Risk is null, "the judgement of risk and what lessened it"),
                (StatementReference is null, "the reference number of your statement"),
            ];
        return [.. asked.Where(one => one.IsMissing).Select(one => one.What)];
    }
}

/// <summary>A plot that a lot was grown on.</summary>
public sealed class LotPlot
{
    private LotPlot()
    {
    }

    internal LotPlot(Id<Plot> plotId)
    {
        Id = Id<LotPlot>.New();
        PlotId = plotId;
    }

    public Id<LotPlot> Id { get; private set; }

    public Id<Plot> PlotId { get; private set; }
}
