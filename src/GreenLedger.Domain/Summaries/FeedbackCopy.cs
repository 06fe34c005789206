using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Summaries;

/// <summary>
/// What a supplier was told, kept as it left the house: the PDF that was taken or sent by mail. What is found later changes the next
/// report and not this one.
/// </summary>
public sealed class FeedbackCopy
{
    private FeedbackCopy() => Language = "";

    /// <param name="supplier">Who was told.</param>
    /// <param name="language">ISO 639-1: <c>es</c>.</param>
    /// <param name="lots">What it tells of.</param>
    /// <param name="file">The PDF, which is kept from now on.</param>
    /// <param name="isMailed">Sent by mail; else taken, to be handed over in another way.</param>
    /// <param name="by">Who took or sent it.</param>
    /// <param name="at">When.</param>
    public FeedbackCopy(Id<Supplier> supplier, string language, IEnumerable<Id<Lot>> lots, StoredFile file, bool isMailed, Id<Person> by, DateTimeOffset at)
        : this()
    {
        Id = Id<FeedbackCopy>.New();
        (SupplierId, Language, IsMailed, By, At) = (supplier, language, isMailed, by, at);
        LotIds = [.. lots.Select(lot => lot.Value).Distinct()];
        file.Keep();
        StoredFileId = file.Id;
    }

    public Id<FeedbackCopy> Id { get; private set; }

    public Id<Supplier> SupplierId { get; private set; }

    public string Language { get; private set; }

    /// <summary>The lots that it tells of.</summary>
    public IReadOnlyList<Guid> LotIds { get; private set; } = [];

    public Id<StoredFile> StoredFileId { get; private set; }

    /// <summary>Sent by mail; else taken as a PDF, to be handed over in another way.</summary>
    public bool IsMailed { get; private set; }

    public Id<Person> By { get; private set; }

    public DateTimeOffset At { get; private set; }
}
