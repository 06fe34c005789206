using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Papers;

/// <summary>Whose data was erased.</summary>
public enum ErasedKind
{
    /// <summary>Somebody of the house.</summary>
    Person = 0,

    /// <summary>Somebody at a supplier.</summary>
    Contact = 1,
}

/// <summary>
/// Somebody's personal data were erased on request: a neutral designation stands in their place everywhere, and what they did stays.
/// It keeps who did it, when and why, and nothing of what was erased.
/// </summary>
public sealed class Erasure
{
    private Erasure() => Designation = Reason = "";

    /// <param name="kind">Whose data.</param>
    /// <param name="number">The running number of the designation.</param>
    /// <param name="subject">The row of the person or contact, which stays.</param>
    /// <param name="reason">Why, without the name.</param>
    /// <param name="by">Who erased.</param>
    /// <param name="at">When.</param>
    /// <exception cref="RuleBrokenException">There is no reason.</exception>
    public Erasure(ErasedKind kind, int number, Guid subject, string? reason, Id<Person> by, DateTimeOffset at)
        : this()
    {
        Id = Id<Erasure>.New();
        (Kind, SubjectId, By, At) = (kind, subject, by, at);
        Designation = DesignationOf(kind, number);
        Reason = Rule.Text(reason, "The reason", 500, nameof(Reason));
    }

    public Id<Erasure> Id { get; private set; }

    public ErasedKind Kind { get; private set; }

    /// <summary>What stands in place of the name: <c>Person 7</c>.</summary>
    public string Designation { get; private set; }

    public Guid SubjectId { get; private set; }

    public string Reason { get; private set; }

    /// <summary>Texts of the ledger that were changed.</summary>
    public int Texts { get; private set; }

    public Id<Person> By { get; private set; }

    public DateTimeOffset At { get; private set; }

    public static string DesignationOf(ErasedKind kind, int number) => FormattableString.Invariant($"{kind} {number}");

    /// <summary>In place of an e-mail address: nobody can have it (RFC 2606, the domain .invalid).</summary>
    public static string AddressOf(string designation) => designation.ToLowerInvariant().Replace(' ', '-') + "@erased.invalid";

    public void Count(int texts) => Texts = texts;
}
