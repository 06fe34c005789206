using System.Security.Cryptography;
using System.Text;
using GreenLedger.Domain.Offers;

namespace GreenLedger.Domain.Trace;

/// <summary>
/// By what names coffee is told to others: with a GS1 company prefix and an item number a lot is an LGTIN; else everything is an
/// address under the house's own web address, or a UUID where it has none. One row.
/// </summary>
public sealed class ExchangeNames
{
    /// <summary>Digits of a GTIN-13 without its check digit, or of a GTIN-14 without it and with its indicator (GS1 EPC Tag Data Standard, from memory).</summary>
    private const int GtinDigits = 13;

    /// <summary>Letters of a batch or lot number, GS1 application identifier 10 (from memory).</summary>
    private const int MostLotLetters = 20;

    public Id<ExchangeNames> Id { get; private set; } = Id<ExchangeNames>.New();

    public int Version { get; private set; }

    /// <summary>Without its last slash; null for none.</summary>
    public string? WebAddress { get; private set; }

    /// <summary>6 to 12 digits; null for none.</summary>
    public string? CompanyPrefix { get; private set; }

    /// <summary>Indicator and item reference of green coffee: with the prefix 13 digits.</summary>
    public string? ItemReference { get; private set; }

    /// <summary>The house's global location number, 13 digits, by which its papers are named; null for none.</summary>
    public string? Gln { get; private set; }

    /// <exception cref="RuleBrokenException">The address is none, prefix and item reference do not make 13 digits, or the location number is none.</exception>
    public void State(string? webAddress, string? companyPrefix, string? itemReference, string? gln = null)
    {
        var address = Rule.OptionalText(webAddress, "The web address", 200, nameof(WebAddress))?.TrimEnd('/');
        Rule.Require(
            address is null || (Uri.TryCreate(address, UriKind.Absolute, out var uri) && uri.Scheme is "https" or "http" && uri.Query.Length == 0 && uri.Fragment.Length == 0 && Uri.IsWellFormedUriString(address, UriKind.Absolute)),
            "Write the web address in full, such as https://trace.example.com.", nameof(WebAddress));
        var prefix = Digits(companyPrefix, "The company prefix", nameof(CompanyPrefix));
        var item = Digits(itemReference, "The item reference", nameof(ItemReference));
        Rule.Require(prefix is null or { Length: >= 6 and <= 12 }, "A GS1 company prefix has 6 to 12 digits.", nameof(CompanyPrefix));
        Rule.Require(prefix is null == item is null, "Company prefix and item reference stand together: give both or neither.", nameof(ItemReference));
        Rule.Require(prefix is null || prefix.Length + item!.Length == GtinDigits, "Company prefix and item reference make 13 digits together, the item reference begins with the indicator.", nameof(ItemReference));
        var location = Digits(gln, "The location number (GLN)", nameof(Gln));
        Rule.Require(location is null or { Length: 13 }, "A location number (GLN) has 13 digits.", nameof(Gln));
        Rule.Require(location is null || location[12] - '0' == CheckDigit(location[..12]), "The last digit of this location number (GLN) does not fit the others: compare it with GS1’s letter.", nameof(Gln));
        (WebAddress, CompanyPrefix, ItemReference, Gln) = (address, prefix, item, location);
    }

    /// <summary>The class of a lot: an LGTIN where the house has one and the reference fits into it, else by its identity.</summary>
    public string LotClass(Lot lot)
    {
        ArgumentNullException.ThrowIfNull(lot);
        return CompanyPrefix is { } prefix && lot.Ref.Length <= MostLotLetters && lot.Ref.All(letter => char.IsAsciiLetterOrDigit(letter) || letter is '-' or '.' or '_')
            ? $"urn:epc:class:lgtin:{prefix}.{ItemReference}.{lot.Ref}"
            : Of("lot", lot.Id.Value);
    }

    /// <summary>
    /// Of a bill of lading, by its number: under the house's location number as the CBV names papers of a system without GS1 identities (CBV 2.0,
    /// urn:epcglobal:cbv:bt, from memory), else below its web address, else a UUID of the number, the same in every house.
    /// </summary>
    public string BillOfLading(string number)
    {
        var paper = Uri.EscapeDataString(Rule.Text(number, "The bill of lading").ToUpperInvariant());
        return Gln is { } gln ? $"urn:epcglobal:cbv:bt:{gln}:{paper}" : WebAddress is { } address ? $"{address}/bol/{paper}" : Uuid(DerivedId($"bol/{paper}"));
    }

    /// <summary>Of a record, by its kind and identity.</summary>
    public string Of(string kind, Guid id) => WebAddress is { } address ? $"{address}/{kind}/{id}" : Uuid(id);

    /// <summary>Of something that has no identity of its own, such as a batch of a release; the same each time.</summary>
    public string Derived(string kind, Guid id) => WebAddress is { } address ? $"{address}/{kind}/{id}" : Uuid(DerivedId(kind, id));

    /// <summary>A UUID of version 8 (RFC 9562) of what is told of a record; the same each time.</summary>
    public static string EventId(string kind, Guid id) => Uuid(DerivedId(kind, id));

    private static string Uuid(Guid id) => $"urn:uuid:{id}";

    private static Guid DerivedId(string kind, Guid id) => DerivedId($"{kind}/{id}");

    private static Guid DerivedId(string name)
    {
        var bytes = SHA256.HashData(Encoding.UTF8.GetBytes(name))[..16];
        (bytes[6], bytes[8]) = ((byte)(0x80 | (bytes[6] & 0x0F)), (byte)(0x80 | (bytes[8] & 0x3F)));
        return new Guid(bytes, bigEndian: true);
    }

    /// <summary>GS1 General Specifications, check digit: weights 3 and 1 from the right, filled up to ten (from memory).</summary>
    private static int CheckDigit(string digits) => (10 - (digits.Reverse().Select((digit, at) => (digit - '0') * (at % 2 == 0 ? 3 : 1)).Sum() % 10)) % 10;

    private static string? Digits(string? text, string what, string field)
    {
        var digits = Rule.OptionalText(text, what, 13, field);
        Rule.Require(digits is null || digits.All(char.IsAsciiDigit), $"{what} has digits only.", field);
        return digits;
    }
}
