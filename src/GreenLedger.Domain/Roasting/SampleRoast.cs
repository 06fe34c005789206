using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;

namespace GreenLedger.Domain.Roasting;

/// <summary>
/// One batch of a sample, roasted to be cupped. What was measured is kept; the loss and the rest are worked out from it.
/// A value that was not measured is null, never zero.
/// </summary>
public sealed class SampleRoast
{
    private SampleRoast()
    {
    }

    /// <param name="roastedAt">When the batch left the roaster.</param>
    public SampleRoast(Sample sample, DateTimeOffset roastedAt, Id<Person>? by, RoastProtocol? protocol)
    {
        ArgumentNullException.ThrowIfNull(sample);
        Rule.Require(sample.IsReceived, $"Sample {sample.LabelCode} has not come yet: receive it first.", "Label");
        Rule.Require(roastedAt >= sample.HereSince, $"Sample {sample.LabelCode} came after that day: it cannot have been roasted before.", nameof(RoastedAt));
        Id = Id<SampleRoast>.New();
        SampleId = sample.Id;
        LotId = sample.LotId;
        RoastedAt = roastedAt;
        By = by;
        ProtocolId = protocol?.Id;
    }

    public Id<SampleRoast> Id { get; private set; }

    public int Version { get; private set; }

    public Id<Sample> SampleId { get; private set; }

    public Id<Lot> LotId { get; private set; }

    /// <summary>When the batch left the roaster; rest counts from here.</summary>
    public DateTimeOffset RoastedAt { get; private set; }

    public Id<Person>? By { get; private set; }

    /// <summary>The windows that it is held against.</summary>
    public Id<RoastProtocol>? ProtocolId { get; private set; }

    public Weight MassIn { get; private set; }

    public Weight? MassOut { get; private set; }

    /// <summary>From charging the batch to dropping it.</summary>
    public int? TotalSeconds { get; private set; }

    /// <summary>From charging to the first crack.</summary>
    public int? FirstCrackSeconds { get; private set; }

    /// <summary>The scale of both readings.</summary>
    public string? ColourScale { get; private set; }

    public ColourReading? WholeBean { get; private set; }

    public ColourReading? Ground { get; private set; }

    /// <summary>When it is or was to be cupped.</summary>
    public DateTimeOffset? CuppingAt { get; private set; }

    public string? Note { get; private set; }

    /// <summary>Why it no longer counts; null while it does.</summary>
    public string? WithdrawnBecause { get; private set; }

    public Id<Person>? WithdrawnBy { get; private set; }

    public DateTimeOffset? WithdrawnAt { get; private set; }

    public bool IsWithdrawn => WithdrawnAt is not null;

    /// <summary>The share of the mass lost in the roast; null while the roasted coffee was not weighed.</summary>
    public Percent? Loss => MassOut is { } left ? Percent.Of(100m * (MassIn.Grams - left.Grams) / MassIn.Grams) : null;

    /// <summary>From the end of the roast to the cupping; null while no time for it is given.</summary>
    public TimeSpan? Rest => CuppingAt - RoastedAt;

    public SampleRoast RoastedBy(Id<Person> person)
    {
        Rule.Require(person != default, "Choose who roasted it.", nameof(By));
        By = person;
        return this;
    }

    /// <exception cref="RuleBrokenException">More came out than went in, or a batch of nothing.</exception>
    public SampleRoast Weigh(Weight massIn, Weight? massOut)
    {
        Rule.Require(massIn > Weight.Zero && massIn.Grams <= 5_000m, "A batch of a sample weighs between 1 g and 5 kg.", nameof(MassIn));
        Rule.Require(massOut is null || (massOut > Weight.Zero && massOut < massIn), "Roasting takes mass away: less comes out than went in.", nameof(MassOut));
        (MassIn, MassOut) = (massIn, massOut);
        return this;
    }

    /// <exception cref="RuleBrokenException">The first crack lies after the end.</exception>
    public SampleRoast Time(int? totalSeconds, int? firstCrackSeconds)
    {
        Rule.Require(totalSeconds is null or (>= 30 and <= 3_600), "A sample roast takes between half a minute and an hour.", "Total");
        Rule.Require(firstCrackSeconds is null or > 0, "The first crack comes after the batch went in.", "FirstCrack");
        Rule.Require(firstCrackSeconds is null || totalSeconds is null || firstCrackSeconds < totalSeconds, "The first crack comes before the end of the roast.", "FirstCrack");
        (TotalSeconds, FirstCrackSeconds) = (totalSeconds, firstCrackSeconds);
        return this;
    }

    /// <exception cref="RuleBrokenException">A reading without its scale.</exception>
    public SampleRoast Read(string? scale, ColourReading? wholeBean, ColourReading? ground)
    {
        ColourScale = Rule.OptionalText(scale, "The scale", 60, nameof(ColourScale));
        Rule.Require((wholeBean is null && ground is null) || ColourScale is not null, "Name the scale of the colour: readings of two scales cannot be compared.", nameof(ColourScale));
        (WholeBean, Ground) = (wholeBean, ground);
        return this;
    }

    /// <exception cref="RuleBrokenException">It would be cupped before it is roasted.</exception>
    public SampleRoast CupAt(DateTimeOffset? at)
    {
        Rule.Require(at is null || at >= RoastedAt, "It can be cupped only after it was roasted.", nameof(CuppingAt));
        CuppingAt = at;
        return this;
    }

    /// <summary>Takes it out of everything that is counted; it stays with who, when and why.</summary>
    /// <exception cref="RuleBrokenException">It was withdrawn before, or no reason is given.</exception>
    public void Withdraw(string? reason, Id<Person> by, DateTimeOffset at)
    {
        Rule.Require(!IsWithdrawn, "This roast was already withdrawn.", nameof(WithdrawnBecause));
        WithdrawnBecause = Rule.Text(reason, "The reason for withdrawing", 500, nameof(WithdrawnBecause));
        (WithdrawnBy, WithdrawnAt) = (by, at);
    }

    public SampleRoast Remark(string? note)
    {
        Note = Rule.OptionalText(note, "The note", 2000, nameof(Note));
        return this;
    }
}
