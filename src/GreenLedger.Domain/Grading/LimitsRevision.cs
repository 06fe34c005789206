namespace GreenLedger.Domain.Grading;

/// <summary>Physical limits as they are stored: as published, or as the house changed them, with the reason.</summary>
public sealed class LimitsRevision
{
    private LimitsRevision()
    {
        Code = "";
        Limits = PhysicalLimits.WashedSpecialty;
    }

    private LimitsRevision(Id<LimitsRevision> id, PhysicalLimits limits, string? reason)
    {
        Id = id;
        Code = limits.Code;
        Revision = limits.Revision;
        Limits = limits;
        Reason = reason;
    }

    public Id<LimitsRevision> Id { get; private set; }

    public string Code { get; private set; }

    /// <summary>1 as published.</summary>
    public int Revision { get; private set; }

    public PhysicalLimits Limits { get; private set; }

    /// <summary>Why the house changed them; null as published.</summary>
    public string? Reason { get; private set; }

    /// <summary>The limits that come with the ledger.</summary>
    public static IEnumerable<LimitsRevision> Published() => PhysicalLimits.Published.Select(limits => new LimitsRevision(Id<LimitsRevision>.New(), limits, null));

    /// <exception cref="RuleBrokenException">A figure cannot be, or no reason is given.</exception>
    public LimitsRevision Revise(PhysicalLimits figures, string? reason) =>
        new(Id<LimitsRevision>.New(), Limits.Revise(figures), Rule.Text(reason, "The reason for the change", 500, nameof(Reason)));
}
