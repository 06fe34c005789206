using GreenLedger.Domain.Papers;

namespace GreenLedger.Domain.Offers;

/// <summary>What a piece of evidence is about (Regulation (EU) 2023/1115, Articles 9 to 11).</summary>
public enum EvidenceKind
{
    /// <summary>Grown by the law of the country.</summary>
    Legality = 0,

    /// <summary>Not deforested.</summary>
    Deforestation = 1,

    /// <summary>The risk, and what lessened it.</summary>
    Risk = 2,
}

public static class EvidenceKinds
{
    /// <summary>As it is read after “evidence”: <c>of legality</c>.</summary>
    public static string Word(this EvidenceKind kind) => kind switch
    {
        EvidenceKind.Legality => "of legality",
        EvidenceKind.Deforestation => "about deforestation",
        EvidenceKind.Risk => "about the risk",
        _ => throw new ArgumentOutOfRangeException(nameof(kind)),
    };
}

/// <summary>A file of a lot that is evidence in its due diligence.</summary>
public sealed class EvidenceFile
{
    private EvidenceFile()
    {
    }

    internal EvidenceFile(EvidenceKind kind, Id<Attachment> attachmentId)
    {
        Id = Id<EvidenceFile>.New();
        (Kind, AttachmentId) = (kind, attachmentId);
    }

    public Id<EvidenceFile> Id { get; private set; }

    public EvidenceKind Kind { get; private set; }

    /// <summary>The file, which is attached to the lot.</summary>
    public Id<Attachment> AttachmentId { get; private set; }

    /// <summary>Why it was attached by mistake; null for what stands.</summary>
    public string? MistakenBecause { get; private set; }

    /// <summary>When whoever attached it took it back as a mistake; null for what stands.</summary>
    public DateTimeOffset? MistakenAt { get; private set; }

    public bool IsMistaken => MistakenAt is not null;

    internal void TakeBack(string? because, DateTimeOffset at) =>
        (MistakenBecause, MistakenAt) = (Rule.Text(because ?? "", "Why the file was attached by mistake", 500, nameof(MistakenBecause)), at);
}
