using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Papers;

/// <summary>
/// A file that belongs to a lot, an offer, a sample, a contract, a shipment or an arrival: a photograph, a certificate, a laboratory's report. A removed
/// attachment can be put back, so its file stays in the ledger.
/// </summary>
public sealed class Attachment : IPaper
{
    private Attachment() => FileName = ContentType = Sha256 = "";

    /// <summary>Attaches the file and so keeps it.</summary>
    public Attachment(PapersOf about, Guid aboutId, StoredFile file, Id<Person> by, DateTimeOffset at)
    {
        Rule.Require(Enum.IsDefined(about) && aboutId != default, "Say what the file belongs to.", nameof(About));
        Id = Id<Attachment>.New();
        About = about;
        AboutId = aboutId;
        file.Keep();
        StoredFileId = file.Id;
        FileName = file.Name;
        ContentType = file.ContentType;
        SizeBytes = file.Size;
        Sha256 = file.Sha256;
        By = by;
        At = at;
    }

    public Id<Attachment> Id { get; private set; }

    public int Version { get; private set; }

    public PapersOf About { get; private set; }

    /// <summary>The identity of the lot, offer, sample, contract, shipment or arrival.</summary>
    public Guid AboutId { get; private set; }

    public Id<StoredFile> StoredFileId { get; private set; }

    public string FileName { get; private set; }

    public string ContentType { get; private set; }

    public long SizeBytes { get; private set; }

    /// <summary>Of the file, in lower-case hexadecimal.</summary>
    public string Sha256 { get; private set; }

    public Id<Person> By { get; private set; }

    public DateTimeOffset At { get; private set; }

    public Id<Person>? RemovedBy { get; private set; }

    public DateTimeOffset? RemovedAt { get; private set; }

    public bool IsRemoved => RemovedAt is not null;

    public void Remove(Id<Person> by, DateTimeOffset at)
    {
        Rule.Require(!IsRemoved, "This attachment is removed already.");
        RemovedBy = by;
        RemovedAt = at;
    }

    public void PutBack()
    {
        Rule.Require(IsRemoved, "This attachment stands already.");
        RemovedBy = null;
        RemovedAt = null;
    }
}
