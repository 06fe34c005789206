using System.Globalization;
using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Contracts;

/// <summary>The terms of a contract as they were first agreed or later amended. Once signed it never changes.</summary>
public sealed class ContractVersion
{
    private ContractVersion() => Terms = null!;

    internal ContractVersion(int number, ContractTerms terms, string? reason, Id<Person> by, DateTimeOffset at)
    {
        Id = Id<ContractVersion>.New();
        Number = number;
        Terms = terms.Checked();
        Reason = reason;
        WrittenBy = by;
        WrittenAt = at;
    }

    public Id<ContractVersion> Id { get; private set; }

    /// <summary>1 for the contract itself, then one for each amendment.</summary>
    public int Number { get; private set; }

    public ContractTerms Terms { get; private set; }

    /// <summary>Why the contract is amended; null for the first version.</summary>
    public string? Reason { get; private set; }

    public Id<Person> WrittenBy { get; private set; }

    public DateTimeOffset WrittenAt { get; private set; }

    /// <summary>The day that both sides had signed; null while it is a draft.</summary>
    public DateOnly? SignedOn { get; private set; }

    /// <summary>Who signed for the seller, where it was written down.</summary>
    public string? SignedForSeller { get; private set; }

    /// <summary>Who of the house entered the signatures.</summary>
    public Id<Person>? SignedBy { get; private set; }

    public DateTimeOffset? SignedAt { get; private set; }

    public bool IsSigned => SignedOn is not null;

    internal void Rewrite(ContractTerms terms, string? reason, Id<Person> by, DateTimeOffset at)
    {
        RequireUnsigned();
        (Terms, Reason, WrittenBy, WrittenAt) = (terms.Checked(), reason, by, at);
    }

    internal void Sign(DateOnly on, string? forSeller, Id<Person> by, DateTimeOffset at)
    {
        RequireUnsigned();
        SignedForSeller = Rule.OptionalText(forSeller, "The name of who signed for the seller", field: nameof(SignedForSeller));
        (SignedOn, SignedBy, SignedAt) = (on, by, at);
    }

    private void RequireUnsigned() => Rule.Require(
        !IsSigned,
        $"Version {Number.ToString(CultureInfo.InvariantCulture)} was signed on {SignedOn?.ToString("d MMM yyyy", CultureInfo.InvariantCulture)} and does not change: amend the contract instead.");
}
