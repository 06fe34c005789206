namespace GreenLedger.Domain.Due;

/// <summary>What kind of thing is due; each has a page where it is done.</summary>
public enum DueKind
{
    /// <summary>Samples that wait at one step for the next.</summary>
    Sample = 0,

    /// <summary>An open cupping session.</summary>
    Session = 1,

    /// <summary>A pre-shipment sample to be approved or refused.</summary>
    Approval = 2,

    /// <summary>What is open of a price, before first notice.</summary>
    Fixing = 3,

    /// <summary>What a contract still has to ship.</summary>
    Shipment = 4,

    /// <summary>Documents of a shipment that are missing.</summary>
    Documents = 5,

    /// <summary>A lot on its way that is to be received.</summary>
    Receipt = 6,

    /// <summary>An arrival to be sampled and cupped beside the approved sample.</summary>
    Cupping = 7,

    /// <summary>The deadline of a claim.</summary>
    Claim = 8,

    /// <summary>The deadline for claiming what was not shipped.</summary>
    Missing = 9,

    /// <summary>A certificate that ends soon.</summary>
    Certificate = 10,

    /// <summary>A purpose whose stock and what is to come have fallen to the reorder point.</summary>
    Reorder = 11,

    /// <summary>What a lot's due diligence lacks before it is placed on the market.</summary>
    Diligence = 12,
}

public static class DueKinds
{
    public static string Word(this DueKind kind) => kind switch
    {
        DueKind.Sample => "samples",
        DueKind.Session => "session",
        DueKind.Approval => "approval",
        DueKind.Fixing => "fixing",
        DueKind.Shipment => "shipment",
        DueKind.Documents => "documents",
        DueKind.Receipt => "receipt",
        DueKind.Cupping => "arrival to cup",
        DueKind.Claim or DueKind.Missing => "deadline of a claim",
        DueKind.Certificate => "end of a certificate",
        DueKind.Reorder => "time to buy",
        DueKind.Diligence => "due diligence",
        _ => throw new ArgumentOutOfRangeException(nameof(kind)),
    };

    /// <summary>The area of docs/roles.md that its page stands in: who may not read that is not told of the line.</summary>
    public static string Area(this DueKind kind) => kind switch
    {
        DueKind.Sample => "Samples",
        DueKind.Certificate => "Certificates",
        DueKind.Reorder => "Stock",
        DueKind.Session => "Cupping",
        DueKind.Diligence => "Offers",
        DueKind.Approval or DueKind.Fixing => "Contracts",
        DueKind.Shipment or DueKind.Documents => "Shipments",
        _ => "Arrivals",
    };
}

/// <summary>One thing that is due: what, by whom and when.</summary>
/// <param name="Kind">Where it belongs.</param>
/// <param name="RecordId">The record whose page shows it: the session, contract, shipment, lot of a shipment or arrival; empty for samples, which are told by their step.</param>
/// <param name="What">In a few words: <c>approve or refuse the pre-shipment sample of P26-014</c>.</param>
/// <param name="By">Who has to do it: a person of the house, a role, or the seller.</param>
/// <param name="On">The day it is due.</param>
public sealed record DueLine(DueKind Kind, Guid RecordId, string What, string By, DateOnly On)
{
    /// <summary>The same for the same thing, however its words change: what a calendar knows it by.</summary>
    public string Key => $"{Kind.ToString().ToLowerInvariant()}-{RecordId:n}-{Part}".TrimEnd('-');

    /// <summary>Tells lines of one record apart: which claim, or at which step samples wait.</summary>
    public string Part { get; init; } = "";

    /// <summary>Calendar days left; below zero once the day is past.</summary>
    public int DaysLeft(DateOnly today) => On.DayNumber - today.DayNumber;

    public bool IsPast(DateOnly today) => On < today;
}
