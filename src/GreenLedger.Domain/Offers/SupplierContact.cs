using System.Net.Mail;

namespace GreenLedger.Domain.Offers;

/// <summary>What a contact of a supplier is sent.</summary>
[Flags]
public enum Receives
{
    Nothing = 0,

    /// <summary>What we found in their samples.</summary>
    Feedback = 1,
    ArrivalReports = 2,
    ContractPapers = 4,
    Claims = 8,
}

public static class ReceivesWords
{
    /// <summary>Each kind on its own.</summary>
    public static IReadOnlyList<Receives> Kinds { get; } = [Receives.Feedback, Receives.ArrivalReports, Receives.ContractPapers, Receives.Claims];

    public static string Word(this Receives kind) => kind switch
    {
        Receives.Feedback => "feedback",
        Receives.ArrivalReports => "arrival reports",
        Receives.ContractPapers => "contract papers",
        Receives.Claims => "claims",
        _ => throw new ArgumentOutOfRangeException(nameof(kind)),
    };

    /// <summary>All of it in words: <c>feedback, claims</c>.</summary>
    public static string Words(this Receives receives) =>
        receives == Receives.Nothing ? "nothing" : string.Join(", ", Kinds.Where(kind => receives.HasFlag(kind)).Select(Word));
}

/// <summary>Somebody at a supplier: in which language to write, and what to send.</summary>
public sealed class SupplierContact
{
    private SupplierContact() => Name = Email = Language = "";

    /// <exception cref="RuleBrokenException">The name is missing, or address or language cannot be used.</exception>
    public SupplierContact(Id<Supplier> supplierId, string? name, string? email, string? language, Receives receives)
        : this()
    {
        Id = Id<SupplierContact>.New();
        SupplierId = supplierId;
        Describe(name, email, language, receives);
    }

    /// <summary>The languages that letters are written in, ISO 639-1.</summary>
    public static IReadOnlyList<string> Languages { get; } = ["en", "es", "pt", "fr"];

    public Id<SupplierContact> Id { get; private set; }

    public int Version { get; private set; }

    public Id<Supplier> SupplierId { get; private set; }

    public string Name { get; private set; }

    public string Email { get; private set; }

    /// <summary>ISO 639-1: <c>es</c>.</summary>
    public string Language { get; private set; }

    public Receives Receives { get; private set; }

    /// <summary>False once the person has left: kept, and sent nothing.</summary>
    public bool IsActive { get; private set; } = true;

    /// <exception cref="RuleBrokenException">The name is missing, or address or language cannot be used.</exception>
    public void Describe(string? name, string? email, string? language, Receives receives)
    {
        var address = Rule.Text(email, "The e-mail address", field: nameof(Email));
        Rule.Require(MailAddress.TryCreate(address, out var read) && read.Address == address, "This is not an e-mail address: it needs a name, an @ and a domain.", nameof(Email));
        Rule.Require(language is not null && Languages.Contains(language), "Choose the language: English, Spanish, Portuguese or French.", nameof(Language));
        Rule.Require((receives & ~(Receives.Feedback | Receives.ArrivalReports | Receives.ContractPapers | Receives.Claims)) == 0, "Choose what this contact is sent.", nameof(Receives));
        (Name, Email, Language, Receives) = (Rule.Text(name, "The name of the contact", field: nameof(Name)), address, language, receives);
    }

    public void Leave() => IsActive = false;

    public void Return() => IsActive = true;
}
