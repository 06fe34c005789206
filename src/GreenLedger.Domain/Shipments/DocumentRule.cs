using GreenLedger.Domain.Offers;

namespace GreenLedger.Domain.Shipments;

/// <summary>What decides which documents a lot on a shipment needs.</summary>
/// <param name="Incoterm">The delivery rule of its contract.</param>
/// <param name="Origin">Country of origin, ISO 3166-1; null where nobody stated it.</param>
/// <param name="Destination">Country of the port of destination.</param>
/// <param name="Certificates">Short names of the schemes on its contract: organic.</param>
public sealed record DocumentCase(Incoterm Incoterm, string? Origin, string Destination, IReadOnlyCollection<string> Certificates);

/// <summary>
/// A document that the house asks for with a shipment, and with which ones: by delivery rule, origin, destination and
/// certificate. The list a new ledger begins with is <see cref="StandardDocuments"/>; the house edits it.
/// </summary>
public sealed class DocumentRule
{
    private DocumentRule() => Name = Incoterms = Origins = Destinations = "";

    /// <exception cref="RuleBrokenException">The name is missing, or a term or country cannot be read.</exception>
    public DocumentRule(string name, int position, string? incoterms = null, string? origins = null, string? destinations = null, string? certificate = null, string? note = null)
        : this()
    {
        Id = Id<DocumentRule>.New();
        Describe(name, position, note);
        Limit(incoterms, origins, destinations, certificate);
    }

    public Id<DocumentRule> Id { get; private set; }

    public int Version { get; private set; }

    /// <summary>What the document is called: bill of lading.</summary>
    public string Name { get; private set; }

    /// <summary>Where it stands in the checklist.</summary>
    public int Position { get; private set; }

    /// <summary>Delivery rules that ask for it, with spaces between; empty for all.</summary>
    public string Incoterms { get; private set; }

    /// <summary>Countries of origin by ISO 3166-1 that ask for it, with spaces between; empty for all.</summary>
    public string Origins { get; private set; }

    /// <summary>Countries of destination by ISO 3166-1 that ask for it, with spaces between; empty for all.</summary>
    public string Destinations { get; private set; }

    /// <summary>A scheme that the contract must name; null where it makes no difference.</summary>
    public string? Certificate { get; private set; }

    /// <summary>What to look at on it, and where the rule comes from.</summary>
    public string? Note { get; private set; }

    /// <summary>False once it was put away: new shipments do not ask for it.</summary>
    public bool IsInUse { get; private set; } = true;

    public void Describe(string name, int position, string? note)
    {
        Rule.Require(position is >= 0 and <= 999, "The place in the list lies between 0 and 999.", nameof(Position));
        Name = Rule.Text(name, "The name of the document", 80, nameof(Name));
        Position = position;
        Note = Rule.OptionalText(note, "The note", 500, nameof(Note));
    }

    /// <summary>Says with which shipments it is asked for.</summary>
    /// <exception cref="RuleBrokenException">A word is no delivery rule, or a code no country's.</exception>
    public void Limit(string? incoterms, string? origins, string? destinations, string? certificate)
    {
        var terms = Words(incoterms);
        foreach (var term in terms)
        {
            Rule.Require(Enum.TryParse<Incoterm>(term, ignoreCase: true, out var known) && Enum.IsDefined(known) && !char.IsAsciiDigit(term[0]), $"“{term}” is no delivery rule: write words such as FOB CIF, or nothing for all.", nameof(Incoterms));
        }

        Incoterms = string.Join(' ', terms);
        Origins = Countries(origins, nameof(Origins));
        Destinations = Countries(destinations, nameof(Destinations));
        Certificate = Rule.OptionalText(certificate, "The certificate", 40, nameof(Certificate))?.ToLowerInvariant();
    }

    public void PutAway() => IsInUse = false;

    public void TakeUp() => IsInUse = true;

    /// <summary>Whether a lot on a shipment needs this document.</summary>
    public bool Asks(DocumentCase shipped)
    {
        ArgumentNullException.ThrowIfNull(shipped);
        return IsInUse
            && (Incoterms.Length == 0 || Words(Incoterms).Contains(shipped.Incoterm.ToString(), StringComparer.OrdinalIgnoreCase))
            && (Origins.Length == 0 || (shipped.Origin is not null && Words(Origins).Contains(shipped.Origin)))
            && (Destinations.Length == 0 || Words(Destinations).Contains(shipped.Destination))
            && (Certificate is null || shipped.Certificates.Contains(Certificate));
    }

    private static string Countries(string? codes, string field)
    {
        var words = Words(codes);
        foreach (var code in words)
        {
            Rule.Require(code.Length == 2 && code.All(char.IsAsciiLetterUpper), $"“{code}” is no country code: write two letters for each, such as DE NL, or nothing for all.", field);
        }

        return string.Join(' ', words);
    }

    private static List<string> Words(string? text) =>
        [.. (text ?? "").Split([' ', ',', ';'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Select(word => word.ToUpperInvariant()).Distinct()];
}
