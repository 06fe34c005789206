namespace GreenLedger.Domain.Trace;

/// <summary>What an entry on a lot's way is about; each kind has a page where its record stands.</summary>
public enum WayEntryKind
{
    Decision = 0,
    Contract = 1,
    Fixing = 2,
    Approval = 3,
    Shipment = 4,
    Arrival = 5,
    Claim = 6,
    Stock = 7,
}

/// <summary>How an entry turned out, where it could turn out badly.</summary>
public enum WayOutcome
{
    /// <summary>Nothing to say of it.</summary>
    None = 0,
    Good = 1,

    /// <summary>Not settled yet.</summary>
    Open = 2,
    Bad = 3,
}

/// <summary>One thing that happened to a lot after it was decided on, in a sentence, with the record that tells the rest.</summary>
/// <param name="On">The day it happened.</param>
/// <param name="Kind">Where it belongs.</param>
/// <param name="RecordId">Of the decision, contract, shipment, arrival or claim; of the lot itself for its stock.</param>
/// <param name="What">In a sentence without its full stop.</param>
/// <param name="Outcome">How it turned out.</param>
/// <param name="Mark">The word of the outcome: <c>refused</c>, <c>3 days late</c>; null where there is none.</param>
public sealed record WayEntry(DateOnly On, WayEntryKind Kind, Guid RecordId, string What, WayOutcome Outcome = WayOutcome.None, string? Mark = null);
