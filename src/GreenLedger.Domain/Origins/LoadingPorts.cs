using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Origins;

/// <summary>
/// Ports of loading by UN/LOCODE and name (handbook, trade 5.2; names from memory of UN/LOCODE). The first two letters
/// are the country where the port lies, which for an inland origin is not the country of the coffee.
/// </summary>
public static class LoadingPorts
{
    private const string Table = """
        BRSSZ Santos|BRVIX Vitoria|BRRIO Rio de Janeiro|CMDLA Douala|COBUN Buenaventura|COCTG Cartagena|COSMR Santa Marta
        CRLIO Puerto Limon|CRMOB Moin|CIABJ Abidjan|ECGYE Guayaquil|SVAQJ Acajutla|DJJIB Djibouti|GTPRQ Puerto Quetzal
        GTSTC Santo Tomas de Castilla|GTPBR Puerto Barrios|HNPCR Puerto Cortes|INCOK Cochin|INMAA Chennai|INNSA Nhava Sheva
        IDBLW Belawan|IDSUB Surabaya|IDJKT Jakarta|KEMBA Mombasa|TZDAR Dar es Salaam|MXVER Veracruz|NICIO Corinto
        PAMIT Manzanillo|PABLB Balboa|PGLAE Lae|PECLL Callao|VNSGN Ho Chi Minh City|VNVUT Vung Tau|YEADE Aden|YEHOD Hodeidah
        """;

    private static readonly (string Code, string Name, string Folded)[] Ports =
    [
        .. Table.Split(['|', '\n'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
            .Select(entry => (entry[..5], entry[6..], SearchText.Of(entry[6..]))),
    ];

    /// <summary>The country in which the port of this name or code lies, or null when it is not a port of loading here.</summary>
    public static string? CountryOf(string? place)
    {
        var folded = SearchText.Of(place);
        return Ports.Where(port => port.Folded == folded || port.Code.Equals(place?.Replace(" ", "", StringComparison.Ordinal), StringComparison.OrdinalIgnoreCase))
            .Select(port => port.Code[..2]).FirstOrDefault();
    }

    /// <summary>The names, as a list's titles write them after a delivery rule.</summary>
    public static IEnumerable<string> Names => Ports.Select(port => port.Name);
}
