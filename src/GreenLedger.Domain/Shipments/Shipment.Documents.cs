using GreenLedger.Domain.Papers;

namespace GreenLedger.Domain.Shipments;

/// <summary>The checklist of documents that travel with it.</summary>
public sealed partial class Shipment
{
    private readonly List<ShipmentDocument> _documents = [];

    /// <summary>In the order of the house's list.</summary>
    public IReadOnlyList<ShipmentDocument> Documents => [.. _documents.OrderBy(document => document.Position).ThenBy(document => document.Name, StringComparer.Ordinal)];

    public int MissingDocuments => _documents.Count(document => document.IsMissing);

    /// <summary>
    /// Lists what the house asks for with these lots. What was done about a line stays; a line that no rule asks for any more
    /// goes only if nobody touched it.
    /// </summary>
    public void ListDocuments(IEnumerable<DocumentRule> rules, IReadOnlyCollection<DocumentCase> lots)
    {
        ArgumentNullException.ThrowIfNull(lots);
        var asked = rules.Where(rule => lots.Any(rule.Asks)).ToList();
        _documents.RemoveAll(document => document is { IsUntouched: true, RuleId: { } rule } && asked.TrueForAll(one => one.Id != rule));
        _documents.AddRange(asked.Where(rule => _documents.TrueForAll(document => document.RuleId != rule.Id))
            .Select(rule => new ShipmentDocument(rule.Name, rule.Position, rule.Id)));
    }

    /// <summary>Adds a line that no rule of the house asks for.</summary>
    /// <exception cref="RuleBrokenException">The name is missing, or stands in the checklist already.</exception>
    public ShipmentDocument AddDocument(string? name)
    {
        var document = new ShipmentDocument(name ?? "", _documents.Select(one => one.Position).DefaultIfEmpty().Max() + 10, null);
        Rule.Require(_documents.TrueForAll(one => !one.Name.Equals(document.Name, StringComparison.OrdinalIgnoreCase)), $"“{document.Name}” stands in the checklist already.", nameof(ShipmentDocument.Name));
        _documents.Add(document);
        return document;
    }

    /// <summary>Says how far a document is.</summary>
    /// <param name="id">The line of the checklist.</param>
    /// <param name="state">How far it is.</param>
    /// <param name="on">The day it was asked for or received.</param>
    /// <param name="reason">Why it is not needed.</param>
    /// <param name="attachment">The file, where one came; an earlier one stays among the attachments.</param>
    /// <exception cref="RuleBrokenException">There is no such line, a day or a reason is missing, or the file is on another record.</exception>
    public void Document(Id<ShipmentDocument> id, DocumentState state, DateOnly? on, string? reason, Attachment? attachment = null)
    {
        var document = _documents.Find(one => one.Id == id);
        Rule.Require(document is not null, $"Shipment {Ref} has no such document in its checklist.", nameof(Documents));
        Rule.Require(attachment is null || (attachment is { About: PapersOf.Shipment, IsRemoved: false } && attachment.AboutId == Id.Value), "This file is not attached to this shipment.", nameof(ShipmentDocument.AttachmentId));
        Rule.Require(attachment is null || state == DocumentState.Received, "A file came: say that the document is received, and when.", nameof(ShipmentDocument.State));
        document.Stand(state, on, reason);
        if (attachment is not null)
        {
            document.Attach(attachment.Id);
        }
    }
}
