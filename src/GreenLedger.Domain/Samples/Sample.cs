using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;

namespace GreenLedger.Domain.Samples;

/// <summary>A bag of green coffee received to be graded and cupped. Blind codes belong to the cupping session.</summary>
public sealed class Sample
{
    private Sample()
    {
        LabelCode = "";
    }

    /// <exception cref="RuleBrokenException">The label code is empty or the weight is not above zero.</exception>
    public Sample(Id<Lot> lotId, SampleKind kind, string labelCode, DateOnly receivedOn, Weight weight, string? note = null)
    {
        Rule.Require(lotId != default, "Choose the lot that this sample stands for.", nameof(LotId));
        Rule.Require(Enum.IsDefined(kind), "Choose the kind of sample.", nameof(Kind));
        Rule.Require(weight > Weight.Zero && weight.Grams <= 60_000m, "A sample weighs between 1 g and 60 kg.", nameof(Weight));
        Id = Id<Sample>.New();
        LotId = lotId;
        Kind = kind;
        LabelCode = Rule.Text(labelCode, "The label code", 20, nameof(LabelCode)).ToUpperInvariant();
        ReceivedOn = receivedOn;
        Weight = weight;
        Note = Rule.OptionalText(note, "The note", 2000, nameof(Note));
    }

    public Id<Sample> Id { get; private set; }

    public int Version { get; private set; }

    public Id<Lot> LotId { get; private set; }

    public SampleKind Kind { get; private set; }

    /// <summary>Written on the bag; unique in the house.</summary>
    public string LabelCode { get; private set; }

    public DateOnly ReceivedOn { get; private set; }

    /// <summary>Green coffee received.</summary>
    public Weight Weight { get; private set; }

    public string? Note { get; private set; }

    public void Correct(SampleKind kind, DateOnly receivedOn, Weight weight, string? note)
    {
        Rule.Require(Enum.IsDefined(kind), "Choose the kind of sample.", nameof(Kind));
        Rule.Require(weight > Weight.Zero && weight.Grams <= 60_000m, "A sample weighs between 1 g and 60 kg.", nameof(Weight));
        Kind = kind;
        ReceivedOn = receivedOn;
        Weight = weight;
        Note = Rule.OptionalText(note, "The note", 2000, nameof(Note));
    }
}
