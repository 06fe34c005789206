using System.Globalization;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;

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
    DiligenceRole Role, DateOnly? ProducedFrom, DateOnly? ProducedUntil, string? Legality, string? Deforestation, string? Risk, string? StatementReference, string? VerificationNumber, DateOnly? PlacedOn = null)
{
    /// <summary>What all its plots gave in the days of the harvest, as whoever weighed it there says; null where nobody did.</summary>
    public Weight? Harvest { get; init; }

    /// <summary>In which form the harvest was weighed.</summary>
    public CoffeeForm HarvestForm { get; init; }
}

/// <summary>
/// What is held about where a lot was grown, for Regulation (EU) 2023/1115. It tells what is missing and decides nothing: it is not
/// legal advice, and the competent authority's word counts.
/// </summary>
public sealed class DueDiligence
{
    /// <summary>Room for a reference; longer than <see cref="PublishedReference"/>, which only warns.</summary>
    public const int MostReference = 60;

    /// <summary>The most characters that the system returns; no official pattern was found, so that more is doubted and taken (handbook, trade 7.3).</summary>
    private const int PublishedReference = 14;

    private readonly List<LotPlot> _plots = [];
    private readonly List<EvidenceFile> _files = [];

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

    /// <summary>What is doubtful about the reference's shape; null where nothing is.</summary>
    public string? ReferenceDoubt => StatementReference is { } reference && (reference.Length > PublishedReference || !reference.All(char.IsAsciiLetterOrDigit))
        ? string.Create(CultureInfo.InvariantCulture, $"The reference number {reference} has {reference.Length} characters{(reference.All(char.IsAsciiLetterOrDigit) ? "" : ", some of them neither letters nor digits")}: those that the EU’s system returns have letters and digits, at most {PublishedReference}. Compare it with the statement.")
        : null;

    public string? VerificationNumber { get; private set; }

    /// <summary>The day on which the coffee was placed on the market, where it is another one than the day it was received.</summary>
    public DateOnly? PlacedOn { get; private set; }

    /// <summary>What all its plots gave in the days of the harvest, in the form in which it was weighed; null where nobody said.</summary>
    public Weight? Harvest { get; private set; }

    /// <summary>The form in which the harvest was weighed: green, parchment or dried cherry.</summary>
    public CoffeeForm HarvestForm { get; private set; }

    public IReadOnlyList<LotPlot> Plots => _plots;

    /// <summary>Evidence that came as files.</summary>
    public IReadOnlyList<EvidenceFile> Files => _files;

    /// <exception cref="RuleBrokenException">The days stand in no order, or a number has not its published shape.</exception>
    public void State(DiligenceFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        Rule.Require(Enum.IsDefined(facts.Role), "Choose operator or downstream.", nameof(Role));
        Rule.Require(facts.ProducedUntil is null || facts.ProducedFrom is null || facts.ProducedUntil >= facts.ProducedFrom, "The harvest cannot end before it begins.", nameof(ProducedUntil));
        var reference = Rule.OptionalText(facts.StatementReference, "The reference number", MostReference, nameof(StatementReference))?.ToUpperInvariant();
        var verification = Rule.OptionalText(facts.VerificationNumber, "The verification number", 35, nameof(VerificationNumber));
        Rule.Require(verification is null or { Length: >= 5 }, "A verification number has 5 to 35 characters.", nameof(VerificationNumber));
        Rule.Day(facts.PlacedOn, nameof(PlacedOn));
        Rule.Require(facts.Harvest is null || facts.Harvest > Weight.Zero, "What the plots gave lies above zero; leave it empty where it is not known.", nameof(Harvest));
        Rule.Require(CoffeeForms.OfHarvest.Contains(facts.HarvestForm), "A harvest is weighed as green, parchment or dried cherry.", nameof(HarvestForm));
        (Role, ProducedFrom, ProducedUntil, PlacedOn) = (facts.Role, facts.ProducedFrom, facts.ProducedUntil, facts.PlacedOn);
        Legality = Rule.OptionalText(facts.Legality, "The evidence of legality", 2000, nameof(Legality));
        Deforestation = Rule.OptionalText(facts.Deforestation, "The evidence about deforestation", 2000, nameof(Deforestation));
        Risk = Rule.OptionalText(facts.Risk, "The judgement of risk", 2000, nameof(Risk));
        (StatementReference, VerificationNumber) = (reference, verification);
        (Harvest, HarvestForm) = (facts.Harvest, facts.HarvestForm);
    }

    /// <summary>Says which plots the lot was grown on: all of them, since one that fails fails the lot.</summary>
    public void GrewOn(IReadOnlyCollection<Id<Plot>> plots)
    {
        ArgumentNullException.ThrowIfNull(plots);
        _plots.RemoveAll(known => !plots.Contains(known.PlotId));
        _plots.AddRange(plots.Distinct().Where(id => _plots.TrueForAll(known => known.PlotId != id)).Select(id => new LotPlot(id)));
    }

    /// <summary>Takes a file of the lot as evidence.</summary>
    /// <exception cref="RuleBrokenException">It says of nothing, or is attached to something else.</exception>
    public void Take(EvidenceKind kind, Attachment file)
    {
        ArgumentNullException.ThrowIfNull(file);
        Rule.Require(Enum.IsDefined(kind), "Say what the file shows: legality, deforestation or risk.", nameof(EvidenceFile.Kind));
        Rule.Require(file is { About: PapersOf.Lot, IsRemoved: false } && file.AboutId == LotId.Value, "This file is not attached to this lot.", nameof(Files));
        _files.Add(new EvidenceFile(kind, file.Id));
    }

    /// <summary>The last day on which its files are kept; null while the coffee is not placed on the market.</summary>
    /// <param name="receivedOn">The last day on which some of it was received; null while nothing came.</param>
    /// <param name="habits">For how many years the house keeps evidence.</param>
    public DateOnly? KeptUntil(DateOnly? receivedOn, DiligenceHabits habits)
    {
        ArgumentNullException.ThrowIfNull(habits);
        return (PlacedOn ?? receivedOn) is { } placed ? habits.KeptUntil(placed) : null;
    }

    /// <summary>Whether a person may take back a file of evidence as attached by mistake: who attached it, on that day.</summary>
    /// <param name="file">The file.</param>
    /// <param name="by">Who wants to.</param>
    /// <param name="today">By the house's clocks.</param>
    /// <param name="zone">Whose clocks the house reads.</param>
    public bool MayTakeBack(Attachment file, Id<Person> by, DateOnly today, ClockZone zone)
    {
        ArgumentNullException.ThrowIfNull(file);
        ArgumentNullException.ThrowIfNull(zone);
        return _files.Exists(one => one.AttachmentId == file.Id && !one.IsMistaken) && file.By == by && zone.Day(file.At) == today;
    }

    /// <summary>Takes a file back that was attached by mistake: it is evidence no more, and the reason stays (docs/decisions/0015).</summary>
    /// <exception cref="RuleBrokenException">Somebody else attached it, or on another day, or nobody says why.</exception>
    public void TakeBack(Attachment file, string? because, Id<Person> by, DateTimeOffset at, ClockZone zone)
    {
        ArgumentNullException.ThrowIfNull(file);
        ArgumentNullException.ThrowIfNull(zone);
        Rule.Require(MayTakeBack(file, by, zone.Day(at), zone), "Only the person who attached a file takes it back as a mistake, and only on the same day.", nameof(Files));
        _files.Find(one => one.AttachmentId == file.Id)!.TakeBack(because, at);
    }

    /// <exception cref="RuleBrokenException">The file is evidence and the years of keeping are not over.</exception>
    public void LetGo(Id<Attachment> file, DateOnly? receivedOn, DiligenceHabits habits, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(habits);
        if (_files.Find(one => one.AttachmentId == file && !one.IsMistaken) is { } evidence && KeptUntil(receivedOn, habits) is { } until)
        {
            Rule.Require(
                today > until,
                string.Create(CultureInfo.InvariantCulture, $"This file is evidence {evidence.Kind.Word()} under Regulation (EU) 2023/1115 and is kept until {until:d MMMM yyyy}, {habits.KeepYears} years after the coffee was placed on the market: it can be removed after that day."));
        }
    }

    /// <summary>What is still open before a statement can stand. It looks at the plots together, which takes its time where there are many.</summary>
    public OpenPoints Open(DiligenceCase about)
    {
        ArgumentNullException.ThrowIfNull(about);
        return new OpenPoints(Missing(about), OpenPoints.DoubtsOf(this, about));
    }

    /// <summary>What is still missing before a statement can stand.</summary>
    public IReadOnlyList<string> Missing(DiligenceCase about)
    {
        ArgumentNullException.ThrowIfNull(about);
        return OpenPoints.MissingOf(this, about);
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
