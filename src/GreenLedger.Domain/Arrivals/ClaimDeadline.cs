using GreenLedger.Domain.Contracts;

namespace GreenLedger.Domain.Arrivals;

/// <summary>What starts the days in which a claim may be made.</summary>
public enum ClaimEvent
{
    /// <summary>The last of the goods left the ship.</summary>
    Discharge = 0,

    /// <summary>Every authority cleared them.</summary>
    Clearance = 1,

    /// <summary>They could be weighed and sampled.</summary>
    Availability = 2,

    /// <summary>The last day of the contract's shipment period, for goods that were not shipped.</summary>
    EndOfShipment = 3,
}

public static class ClaimEvents
{
    public static string Word(this ClaimEvent happened) => happened switch
    {
        ClaimEvent.Discharge => "discharge",
        ClaimEvent.Clearance => "clearance",
        ClaimEvent.Availability => WeighingStart.Availability.Word(),
        ClaimEvent.EndOfShipment => "the end of the shipment period",
        _ => throw new ArgumentOutOfRangeException(nameof(happened)),
    };
}

/// <summary>
/// How long after which event something may be done, as the contract or the standard form that it refers to says: calendar days,
/// the day of the event being day 0 (handbook, trade 4.1). Where several events are named, the latest counts.
/// </summary>
/// <param name="What">What must be done in that time: weigh, claim on quality.</param>
/// <param name="Events">What starts it; the latest of several.</param>
/// <param name="Days">Calendar days after the event.</param>
public sealed record ClaimRule(string What, IReadOnlyList<ClaimEvent> Events, int Days)
{
    /// <summary>What the days run from, in words.</summary>
    public string From => string.Join(" or ", Events.Select(one => one.Word())) + (Events.Count > 1 ? ", whichever is later" : "");

    public bool IsFromDischarge => Events is [ClaimEvent.Discharge];

    /// <summary>
    /// European Standard Contract for Coffee, edition of 2018, by handbook, trade 4.1: an example to start a house's own rules
    /// from, since what holds is what the contract says.
    /// </summary>
    public static IReadOnlyList<ClaimRule> European { get; } =
    [
        new("Weighing", [ClaimEvent.Discharge], 21),
        new("Claim on quality", [ClaimEvent.Discharge], 28),
        new("Other claims", [ClaimEvent.Discharge], 45),
    ];

    /// <summary>Contract of the Green Coffee Association, by handbook, trade 4.1.</summary>
    public static IReadOnlyList<ClaimRule> NorthAmerican { get; } =
    [
        new("Weighing", [ClaimEvent.Availability], 15),
        new("Claim on quality", [ClaimEvent.Discharge, ClaimEvent.Clearance], 15),
    ];
}

/// <summary>The last day of something that must be done in time.</summary>
/// <param name="Rule">What the contract says.</param>
/// <param name="Start">The day of the event that counts; null while none of its events has happened.</param>
/// <param name="LastDay">Null with the start.</param>
/// <param name="IsFirm">Whether every event of the rule has happened: until then a later one may still move the last day back, so it is the safe one.</param>
public sealed record ClaimDeadline(ClaimRule Rule, DateOnly? Start, DateOnly? LastDay, bool IsFirm)
{
    /// <param name="happened">The days of the events that are known.</param>
    /// <exception cref="RuleBrokenException">The days are out of range.</exception>
    public static ClaimDeadline Of(ClaimRule rule, IReadOnlyDictionary<ClaimEvent, DateOnly> happened)
    {
        ArgumentNullException.ThrowIfNull(rule);
        ArgumentNullException.ThrowIfNull(happened);
        Domain.Rule.Require(rule.Days is >= 0 and <= 3660, "A claim is made within 0 to 3,660 calendar days.", nameof(rule.Days));
        var known = rule.Events.Where(happened.ContainsKey).Select(one => happened[one]).ToList();
        return known.Count == 0
            ? new ClaimDeadline(rule, null, null, false)
            : new ClaimDeadline(rule, known.Max(), known.Max().AddDays(rule.Days), known.Count == rule.Events.Count);
    }

    /// <summary>Calendar days left after this day; below zero when it is too late, null while the time has not started.</summary>
    public int? DaysLeft(DateOnly on) => LastDay?.DayNumber - on.DayNumber;

    public bool IsPast(DateOnly on) => LastDay < on;
}
