using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Shipments;

namespace GreenLedger.Domain.Arrivals;

/// <summary>One deadline held against the day on which the thing was done, as it stood when the claim was opened.</summary>
/// <param name="Days">Calendar days after the start, which is day 0.</param>
/// <param name="LastDay">Null while an event that starts it is not written down: until all are known nothing is late.</param>
/// <param name="On">The day on which it was weighed or claimed.</param>
/// <param name="From">What the days run from, in words; null for discharge.</param>
public sealed record ClaimTime(string What, int Days, DateOnly? Start, DateOnly? LastDay, DateOnly On, string? From = null)
{
    public bool IsLate() => LastDay < On;
}

/// <summary>The days that a contract gives for weighing and claims, counted from the event that it names (handbook, trade 4.1).</summary>
public static class ClaimTimes
{
    public const string Weighing = "Weighing";
    internal const string Quality = "Claim on quality";
    internal const string Other = "Other claims";

    /// <summary>What is known to have happened that starts days of claims.</summary>
    public static IReadOnlyDictionary<ClaimEvent, DateOnly> Happened(Shipment shipment)
    {
        ArgumentNullException.ThrowIfNull(shipment);
        var happened = new Dictionary<ClaimEvent, DateOnly>();
        if (shipment.DischargedOn is { } discharged)
        {
            happened[ClaimEvent.Discharge] = discharged;
        }

        if (shipment.ClearedOn is { } cleared)
        {
            happened[ClaimEvent.Clearance] = cleared;
        }

        if (shipment.AvailableOn is { } available)
        {
            happened[ClaimEvent.Availability] = available;
        }

        return happened;
    }

    /// <summary>Every deadline that the contract names.</summary>
    public static IReadOnlyList<ClaimDeadline> Deadlines(FormTerms form, Shipment shipment)
    {
        ArgumentNullException.ThrowIfNull(form);
        var happened = Happened(shipment);
        return [.. Rules(form).Select(rule => Safe(rule, happened))];
    }

    /// <summary>The deadlines that a claim on these grounds must keep: weighing was done on receipt, the claim is made on its own day.</summary>
    public static IReadOnlyList<ClaimTime> Of(FormTerms form, Shipment shipment, IReadOnlyList<ClaimGround> grounds, DateOnly receivedOn, DateOnly claimedOn) =>
        [.. Deadlines(form, shipment)
            .Where(deadline => deadline.Rule.What switch
            {
                Weighing => grounds.Contains(ClaimGround.Weight),
                Quality => grounds.Any(ground => ground.IsQuality()),
                _ => grounds.Any(ground => !ground.IsQuality()),
            })
            .Select(deadline => new ClaimTime(deadline.Rule.What, deadline.Rule.Days, deadline.IsFirm ? deadline.Start : null, deadline.IsFirm ? deadline.LastDay : null, deadline.Rule.What == Weighing ? receivedOn : claimedOn, deadline.Rule.IsFromDischarge ? null : deadline.Rule.From))];

    /// <summary>Goods cannot be weighed before they are discharged, so days from discharge are safe until their availability is written down.</summary>
    private static ClaimDeadline Safe(ClaimRule rule, IReadOnlyDictionary<ClaimEvent, DateOnly> happened)
    {
        var deadline = ClaimDeadline.Of(rule, happened);
        return deadline.Start is null && rule.Events.Contains(ClaimEvent.Availability)
            ? ClaimDeadline.Of(rule with { Events = [ClaimEvent.Discharge] }, happened) with { Rule = rule, IsFirm = false }
            : deadline;
    }

    private static IEnumerable<ClaimRule> Rules(FormTerms form)
    {
        foreach (var (what, days, events) in new[] { (Weighing, form.WeighWithinDays, Weigh(form)), (Quality, form.QualityClaimDays, Claim(form)), (Other, form.OtherClaimDays, [ClaimEvent.Discharge]) })
        {
            if (days is { } count)
            {
                yield return new ClaimRule(what, events, count);
            }
        }
    }

    private static ClaimEvent[] Weigh(FormTerms form) => [form.WeighFrom == WeighingStart.Availability ? ClaimEvent.Availability : ClaimEvent.Discharge];

    private static ClaimEvent[] Claim(FormTerms form) => form.QualityFromClearance ? [ClaimEvent.Discharge, ClaimEvent.Clearance] : [ClaimEvent.Discharge];
}
