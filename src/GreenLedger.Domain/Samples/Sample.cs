using System.Globalization;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Samples;

/// <summary>
/// A bag of green coffee to be graded and cupped: asked for, on the way, received. What comes after that is told by the
/// records of the later rooms. Blind codes belong to the cupping session.
/// </summary>
public sealed class Sample
{
    private readonly List<SetBack> _setBacks = [];

    private Sample()
    {
        LabelCode = "";
    }

    private Sample(Id<Lot> lotId, SampleKind kind, string labelCode, string? note)
    {
        Rule.Require(lotId != default, "Choose the lot that this sample stands for.", nameof(LotId));
        Rule.Require(Enum.IsDefined(kind), "Choose the kind of sample.", nameof(Kind));
        Id = Id<Sample>.New();
        LotId = lotId;
        Kind = kind;
        LabelCode = Rule.Text(labelCode, "The label code", 20, nameof(LabelCode)).ToUpperInvariant();
        Note = Rule.OptionalText(note, "The note", 2000, nameof(Note));
    }

    /// <summary>A sample that came without having been asked for here.</summary>
    /// <exception cref="RuleBrokenException">The label code is empty or the weight is not above zero.</exception>
    public Sample(Id<Lot> lotId, SampleKind kind, string labelCode, DateOnly receivedOn, Weight weight, string? note = null, ClockZone? zone = null)
        : this(lotId, kind, labelCode, note)
    {
        Take(receivedOn, weight, zone);
    }

    public Id<Sample> Id { get; private set; }

    public int Version { get; private set; }

    public Id<Lot> LotId { get; private set; }

    public SampleKind Kind { get; private set; }

    /// <summary>Written on the bag; unique in the house.</summary>
    public string LabelCode { get; private set; }

    /// <summary>Null for a sample that came without having been asked for here.</summary>
    public DateOnly? AskedOn { get; private set; }

    public Id<Person>? AskedBy { get; private set; }

    /// <summary>Whom it was asked of.</summary>
    public Id<Supplier>? AskedOf { get; private set; }

    /// <summary>Green coffee asked for.</summary>
    public Weight? AskedWeight { get; private set; }

    /// <summary>The day it was handed to the courier; null while nobody said so.</summary>
    public DateOnly? SentOn { get; private set; }

    /// <summary>Who wrote down that it is on the way.</summary>
    public Id<Person>? SentBy { get; private set; }

    public string? Courier { get; private set; }

    public string? TrackingNumber { get; private set; }

    /// <summary>Null until the bag is here.</summary>
    public DateOnly? ReceivedOn { get; private set; }

    /// <summary>When the day of receipt began by the clocks of the house: a database compares later moments with it.</summary>
    public DateTimeOffset? HereSince { get; private set; }

    public Id<Person>? ReceivedBy { get; private set; }

    /// <summary>Green coffee received; null until the bag is here.</summary>
    public Weight? Weight { get; private set; }

    /// <summary>How the bag came: sound, torn, damp; null where nobody said so.</summary>
    public string? BagCondition { get; private set; }

    public string? Note { get; private set; }

    /// <summary>Green coffee left of it, as somebody weighed it last; null while nobody did.</summary>
    public Weight? Left { get; private set; }

    /// <summary>Why it was weighed, or where the rest went.</summary>
    public string? LeftBecause { get; private set; }

    public Id<Person>? LeftBy { get; private set; }

    public DateTimeOffset? LeftAt { get; private set; }

    /// <summary>Steps that were taken back, in that order.</summary>
    public IReadOnlyList<SetBack> SetBacks => _setBacks;

    public bool IsReceived => ReceivedOn is not null;

    /// <summary>The last of its own three steps that it has reached.</summary>
    public SampleStep Step => IsReceived ? SampleStep.Received : SentOn is not null ? SampleStep.OnTheWay : SampleStep.Asked;

    /// <summary>Asks for a sample, which gets its label code at once so that the sender can write it on the bag.</summary>
    /// <exception cref="RuleBrokenException">The weight asked for is not above zero.</exception>
    public static Sample Ask(
        Id<Lot> lotId, SampleKind kind, string labelCode, Id<Supplier>? of, Weight weight, DateOnly on, Id<Person> by, string? note = null)
    {
        RequireWeight(weight, nameof(AskedWeight));
        return new Sample(lotId, kind, labelCode, note) { AskedOn = on, AskedBy = by, AskedOf = of, AskedWeight = weight };
    }

    /// <summary>The sender has handed it to a courier.</summary>
    /// <exception cref="RuleBrokenException">It is here already, or was sent before it was asked for.</exception>
    public void Send(DateOnly on, string? courier, string? trackingNumber, Id<Person> by)
    {
        Rule.Require(!IsReceived, $"Sample {LabelCode} is here already: take the receipt back first if that was a mistake.", nameof(SentOn));
        Rule.Require(AskedOn is null || on >= AskedOn, $"It was asked for on {Day(AskedOn)}: it cannot have been sent before.", nameof(SentOn));
        (SentOn, SentBy) = (on, by);
        Courier = Rule.OptionalText(courier, "The courier", 80, nameof(Courier));
        TrackingNumber = Rule.OptionalText(trackingNumber, "The tracking number", 80, nameof(TrackingNumber));
    }

    /// <summary>The bag is here.</summary>
    /// <exception cref="RuleBrokenException">It is here already, weighs nothing, or came before it was asked for or sent.</exception>
    public void Receive(DateOnly on, Weight weight, string? bagCondition, Id<Person>? by, ClockZone? zone = null)
    {
        Rule.Require(!IsReceived, $"Sample {LabelCode} is here already, since {Day(ReceivedOn)}.", nameof(ReceivedOn));
        Take(on, weight, zone);
        ReceivedBy = by;
        BagCondition = Rule.OptionalText(bagCondition, "The condition of the bag", 200, nameof(BagCondition));
    }

    /// <summary>Says by whom and in what condition a bag that came unasked was received.</summary>
    public Sample ReceivedAs(string? bagCondition, Id<Person>? by)
    {
        BagCondition = Rule.OptionalText(bagCondition, "The condition of the bag", 200, nameof(BagCondition));
        ReceivedBy = by;
        return this;
    }

    /// <exception cref="RuleBrokenException">The weight is not above zero, or it came before it was asked for or sent.</exception>
    public void Correct(SampleKind kind, DateOnly receivedOn, Weight weight, string? note, ClockZone? zone = null)
    {
        Rule.Require(Enum.IsDefined(kind), "Choose the kind of sample.", nameof(Kind));
        Take(receivedOn, weight, zone);
        Kind = kind;
        Note = Rule.OptionalText(note, "The note", 2000, nameof(Note));
    }

    /// <summary>Corrects a sample that is not here yet.</summary>
    public void Correct(SampleKind kind, string? note)
    {
        Rule.Require(Enum.IsDefined(kind), "Choose the kind of sample.", nameof(Kind));
        Kind = kind;
        Note = Rule.OptionalText(note, "The note", 2000, nameof(Note));
    }

    /// <summary>Writes down what is left in the bag, 0 g where nothing was kept; roasts after that are taken off it.</summary>
    /// <exception cref="RuleBrokenException">It is not here, there is no reason, or more would be left than came.</exception>
    public void WeighLeft(Weight left, string? reason, Id<Person> by, DateTimeOffset at)
    {
        Rule.Require(IsReceived, $"Sample {LabelCode} has not come yet: receive it first.", nameof(Left));
        Rule.Require(left >= Measures.Weight.Zero && left <= Weight, string.Create(CultureInfo.InvariantCulture, $"Between 0 g and the {Weight!.Value.Grams:#,0.#} g that came can be left: correct the sample first if more came."), nameof(Left));
        (Left, LeftBecause) = (left, Rule.Text(reason, "The reason", 500, "Reason"));
        (LeftBy, LeftAt) = (by, at);
    }

    /// <summary>Takes the last step back, which stays on record with the reason.</summary>
    /// <param name="reason">Why it does not hold.</param>
    /// <param name="isUsed">True once the sample was graded, roasted or laid out for a cupping.</param>
    /// <param name="by">Who takes it back.</param>
    /// <param name="at">When.</param>
    /// <exception cref="RuleBrokenException">No reason, it is used already, or no earlier step is left.</exception>
    public void TakeBack(string reason, bool isUsed, Id<Person> by, DateTimeOffset at)
    {
        Rule.Require(!isUsed, $"Sample {LabelCode} was graded, roasted or laid out: it was here. Correct it, or withdraw what was found on it first.", "Reason");
        Rule.Require(Step != SampleStep.Asked && AskedOn is not null, "There is no earlier step to go back to: correct the sample instead.", "Reason");
        if (IsReceived)
        {
            _setBacks.Add(new SetBack(_setBacks.Count + 1, SampleStep.Received, ReceivedOn!.Value, ReceivedBy, Joined(string.Create(CultureInfo.InvariantCulture, $"{Weight!.Value.Grams:#,0.#} g"), BagCondition), reason, by, at));
            (ReceivedOn, HereSince, ReceivedBy, Weight, BagCondition) = (null, null, null, null, null);
            (Left, LeftBecause, LeftBy, LeftAt) = (null, null, null, null);
        }
        else
        {
            _setBacks.Add(new SetBack(_setBacks.Count + 1, SampleStep.OnTheWay, SentOn!.Value, SentBy, Joined(Courier, TrackingNumber), reason, by, at));
            (SentOn, SentBy, Courier, TrackingNumber) = (null, null, null, null);
        }
    }

    private void Take(DateOnly on, Weight weight, ClockZone? zone)
    {
        RequireWeight(weight, nameof(Weight));
        Rule.Require(AskedOn is null || on >= AskedOn, $"It was asked for on {Day(AskedOn)}: it cannot have come before.", nameof(ReceivedOn));
        Rule.Require(SentOn is null || on >= SentOn, $"It was sent on {Day(SentOn)}: it cannot have come before.", nameof(ReceivedOn));
        (ReceivedOn, Weight) = (on, weight);
        HereSince = (zone ?? ClockZone.Utc).Begins(on);
    }

    private static void RequireWeight(Weight weight, string field) =>
        Rule.Require(weight > Measures.Weight.Zero && weight.Grams <= 60_000m, "A sample weighs between 1 g and 60 kg.", field);

    private static string Day(DateOnly? day) => day?.ToString("d MMM yyyy", CultureInfo.InvariantCulture) ?? "";

    private static string Joined(params string?[] parts) => string.Join(", ", parts.Where(part => !string.IsNullOrEmpty(part)));
}
