using GreenLedger.Domain.Papers;

namespace GreenLedger.Domain.Shipments;

/// <summary>How far a document of a shipment is.</summary>
public enum DocumentState
{
    Needed = 0,
    Asked = 1,
    Received = 2,

    /// <summary>Somebody said why this shipment does without it.</summary>
    NotNeeded = 3,
}

public static class DocumentStates
{
    public static string Word(this DocumentState state) => state switch
    {
        DocumentState.Needed => "needed",
        DocumentState.Asked => "asked for",
        DocumentState.Received => "received",
        DocumentState.NotNeeded => "not needed",
        _ => throw new ArgumentOutOfRangeException(nameof(state)),
    };
}

/// <summary>One line of a shipment's checklist of documents.</summary>
public sealed class ShipmentDocument
{
    private ShipmentDocument() => Name = "";

    internal ShipmentDocument(string name, int position, Id<DocumentRule>? ruleId)
        : this()
    {
        Id = Id<ShipmentDocument>.New();
        Name = Rule.Text(name, "The name of the document", 80, nameof(Name));
        (Position, RuleId) = (position, ruleId);
    }

    public Id<ShipmentDocument> Id { get; private set; }

    /// <summary>As the rule called it when it was listed.</summary>
    public string Name { get; private set; }

    public int Position { get; private set; }

    /// <summary>The rule of the house that asks for it; null where somebody added it to this shipment.</summary>
    public Id<DocumentRule>? RuleId { get; private set; }

    public DocumentState State { get; private set; }

    /// <summary>The day it was asked for or received.</summary>
    public DateOnly? On { get; private set; }

    /// <summary>Why it is not needed.</summary>
    public string? Reason { get; private set; }

    /// <summary>The file, among the attachments of the shipment.</summary>
    public Id<Attachment>? AttachmentId { get; private set; }

    /// <summary>Neither received nor said to be not needed.</summary>
    public bool IsMissing => State is DocumentState.Needed or DocumentState.Asked;

    /// <summary>Nobody did anything about it yet.</summary>
    internal bool IsUntouched => State == DocumentState.Needed && AttachmentId is null;

    internal void Stand(DocumentState state, DateOnly? on, string? reason)
    {
        Rule.Require(Enum.IsDefined(state), "Say how far the document is: needed, asked for, received or not needed.", nameof(State));
        Rule.Require(state is DocumentState.Needed or DocumentState.NotNeeded || on is not null, "On which day?", nameof(On));
        Reason = state == DocumentState.NotNeeded ? Rule.Text(reason, "The reason why it is not needed", 300, nameof(Reason)) : null;
        (State, On) = (state, state is DocumentState.Asked or DocumentState.Received ? on : null);
    }

    internal void Attach(Id<Attachment> attachment) => AttachmentId = attachment;
}
