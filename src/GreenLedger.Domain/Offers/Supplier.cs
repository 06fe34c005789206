namespace GreenLedger.Domain.Offers;

/// <summary>An exporter, an importer or a producer that sends offers.</summary>
public sealed class Supplier
{
    private Supplier()
    {
        Name = "";
        SearchText = "";
    }

    public Supplier(string name, SupplierKind kind, string? countryCode = null, string? language = null)
    {
        Id = Id<Supplier>.New();
        Name = "";
        SearchText = "";
        Describe(name, kind, countryCode, language, null);
    }

    public Id<Supplier> Id { get; private set; }

    public int Version { get; private set; }

    public string Name { get; private set; }

    public SupplierKind Kind { get; private set; }

    /// <summary>Where the supplier sits, ISO 3166-1 alpha-2.</summary>
    public string? CountryCode { get; private set; }

    /// <summary>The language of its lists and of letters to it, ISO 639-1: <c>es</c>.</summary>
    public string? Language { get; private set; }

    public string? Email { get; private set; }

    public string SearchText { get; private set; }

    public void Describe(string name, SupplierKind kind, string? countryCode, string? language, string? email)
    {
        Rule.Require(Enum.IsDefined(kind), "Choose what kind of supplier this is.", nameof(Kind));
        Name = Rule.Text(name, "The name of the supplier", field: nameof(Name));
        Kind = kind;
        CountryCode = Rule.OptionalText(countryCode, "The country", 2, nameof(CountryCode))?.ToUpperInvariant();
        Language = Rule.OptionalText(language, "The language", 2, nameof(Language))?.ToLowerInvariant();
        Email = Rule.OptionalText(email, "The e-mail address", field: nameof(Email));
        SearchText = Measures.SearchText.Of(Name, CountryCode);
    }
}
