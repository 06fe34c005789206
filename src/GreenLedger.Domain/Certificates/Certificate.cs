using System.Globalization;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Certificates;

/// <summary>Whose certificate it is.</summary>
public enum CertificateHolder
{
    House = 0,
    Supplier = 1,
    Producer = 2,
}

/// <summary>Whether it counts; suspension and withdrawal are told by the scheme and written down by hand (handbook, trade 6.4).</summary>
public enum CertificateState
{
    Valid = 0,
    Suspended = 1,
    Withdrawn = 2,
}

/// <summary>What a certificate says.</summary>
/// <param name="Scheme">Its short name as lots claim it, such as organic or fairtrade; kept in lower case.</param>
/// <param name="SupplierId">Of a supplier's certificate.</param>
/// <param name="ProducerId">Of a producer's certificate.</param>
/// <param name="Scope">Products, sites, crops that it covers.</param>
/// <param name="IssuedBy">The certifier.</param>
public sealed record CertificateTerms(
    string? Scheme, CertificateHolder Holder, Id<Supplier>? SupplierId, Id<Producer>? ProducerId, string? Number, string? Scope, string? IssuedBy, DateOnly From, DateOnly Until);

/// <summary>A certificate of the house, a supplier or a producer: who may claim a scheme, from which day until which.</summary>
public sealed class Certificate
{
    private Certificate() => Scheme = Number = "";

    /// <exception cref="RuleBrokenException">Something is missing or cannot be.</exception>
    public Certificate(CertificateTerms terms)
        : this()
    {
        Id = Id<Certificate>.New();
        State(terms);
    }

    public Id<Certificate> Id { get; private set; }

    public int Version { get; private set; }

    /// <summary>As lots claim it: <c>organic</c>.</summary>
    public string Scheme { get; private set; }

    public CertificateHolder Holder { get; private set; }

    public Id<Supplier>? SupplierId { get; private set; }

    public Id<Producer>? ProducerId { get; private set; }

    public string Number { get; private set; }

    public string? Scope { get; private set; }

    public string? IssuedBy { get; private set; }

    /// <summary>The first day.</summary>
    public DateOnly From { get; private set; }

    /// <summary>The last day.</summary>
    public DateOnly Until { get; private set; }

    public CertificateState Standing { get; private set; }

    /// <summary>Why it is suspended or withdrawn, or counts again; null while it always counted.</summary>
    public string? StandingReason { get; private set; }

    public Id<Person>? StandingBy { get; private set; }

    public DateTimeOffset? StandingAt { get; private set; }

    /// <summary>Whether it runs on a day; whether it counts then is also a matter of <see cref="Standing"/>.</summary>
    public bool RunsOn(DateOnly day) => From <= day && day <= Until;

    /// <exception cref="RuleBrokenException">Something is missing or cannot be.</exception>
    public void State(CertificateTerms terms)
    {
        ArgumentNullException.ThrowIfNull(terms);
        Rule.Require(Enum.IsDefined(terms.Holder), "Choose whose certificate it is.", nameof(Holder));
        Rule.Require(terms.SupplierId is not null == (terms.Holder == CertificateHolder.Supplier), "Choose the supplier whose certificate it is.", nameof(SupplierId));
        Rule.Require(terms.ProducerId is not null == (terms.Holder == CertificateHolder.Producer), "Choose the producer whose certificate it is.", nameof(ProducerId));
        Rule.Day(terms.From, nameof(From));
        Rule.Day(terms.Until, nameof(Until));
        Rule.Require(terms.From <= terms.Until, "It cannot end before it begins: please check both days.", nameof(Until));
        Scheme = Rule.Text(terms.Scheme, "The scheme", 60, nameof(Scheme)).ToLowerInvariant();
        Number = Rule.Text(terms.Number, "The number", 80, nameof(Number));
        Scope = Rule.OptionalText(terms.Scope, "The scope", 500, nameof(Scope));
        IssuedBy = Rule.OptionalText(terms.IssuedBy, "The certifier", 120, nameof(IssuedBy));
        (Holder, SupplierId, ProducerId, From, Until) = (terms.Holder, terms.SupplierId, terms.ProducerId, terms.From, terms.Until);
    }

    /// <summary>Writes down that it is suspended, withdrawn, or counts again.</summary>
    /// <exception cref="RuleBrokenException">There is no reason, or nothing changes.</exception>
    public void Stand(CertificateState state, string? reason, Id<Person> by, DateTimeOffset at)
    {
        Rule.Require(Enum.IsDefined(state), "Choose whether it counts.", nameof(Standing));
        Rule.Require(state != Standing, $"It is {Standing.Word()} already.", nameof(Standing));
        StandingReason = Rule.Text(reason, "The reason", 500, nameof(StandingReason));
        (Standing, StandingBy, StandingAt) = (state, by, at);
    }
}

public static class CertificateWords
{
    /// <summary>As the screens write it.</summary>
    public static string Word(this CertificateState state) => state switch
    {
        CertificateState.Valid => "valid",
        CertificateState.Suspended => "suspended",
        CertificateState.Withdrawn => "withdrawn",
        _ => throw new ArgumentOutOfRangeException(nameof(state)),
    };

    /// <summary>As the screens write it.</summary>
    public static string Word(this CertificateHolder holder) => holder switch
    {
        CertificateHolder.House => "the house",
        CertificateHolder.Supplier => "supplier",
        CertificateHolder.Producer => "producer",
        _ => throw new ArgumentOutOfRangeException(nameof(holder)),
    };

    internal static string Day(DateOnly day) => day.ToString("d MMM yyyy", CultureInfo.InvariantCulture);
}
