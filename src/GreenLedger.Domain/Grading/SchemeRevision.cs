namespace GreenLedger.Domain.Grading;

/// <summary>A defect scheme as it is stored: as published, or as the house changed it, with the reason.</summary>
public sealed class SchemeRevision
{
    private SchemeRevision()
    {
        Code = "";
        Scheme = DefectScheme.WashedArabica;
    }

    private SchemeRevision(Id<SchemeRevision> id, DefectScheme scheme, string? reason)
    {
        Id = id;
        Code = scheme.Code;
        Revision = scheme.Revision;
        Scheme = scheme;
        Reason = reason;
    }

    public Id<SchemeRevision> Id { get; private set; }

    public string Code { get; private set; }

    /// <summary>1 as published, or as the house added it.</summary>
    public int Revision { get; private set; }

    public DefectScheme Scheme { get; private set; }

    /// <summary>Why the house changed it; null as published.</summary>
    public string? Reason { get; private set; }

    /// <summary>The schemes that come with the ledger.</summary>
    public static IEnumerable<SchemeRevision> Published() => DefectScheme.Published.Select(scheme => new SchemeRevision(Id<SchemeRevision>.New(), scheme, null));

    /// <summary>A table of the house, with why it counts by one of its own.</summary>
    /// <exception cref="RuleBrokenException">There is no reason.</exception>
    public static SchemeRevision Add(DefectScheme scheme, string? reason)
    {
        ArgumentNullException.ThrowIfNull(scheme);
        return new(Id<SchemeRevision>.New(), scheme, Rule.Text(reason, "The reason for a table of your own", 500, nameof(Reason)));
    }

    /// <exception cref="RuleBrokenException">The numbers contradict each other, or no reason is given.</exception>
    public SchemeRevision Revise(decimal sampleGrams, IReadOnlyList<DefectKind> kinds, IReadOnlyList<QualityClass> classes, string? reason) =>
        new(Id<SchemeRevision>.New(), Scheme.Revise(sampleGrams, kinds, classes), Rule.Text(reason, "The reason for the change", 500, nameof(Reason)));
}
