using System.Globalization;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;

namespace GreenLedger.SeedDemo.Offers;

/// <summary>How a seller writes its prices.</summary>
internal sealed record Quoting(Currency Currency, PriceUnit Unit, FuturesMarket? Against)
{
    /// <summary>Reads <c>USD/lb</c>, <c>KC</c> or <c>RC</c>.</summary>
    public static Quoting Read(string text) => text switch
    {
        "KC" => new Quoting(Currency.Usd, PriceUnit.Pound, FuturesMarket.Arabica),
        "RC" => new Quoting(Currency.Usd, PriceUnit.Tonne, FuturesMarket.Robusta),
        _ => Outright(PricePerWeight.Parse("1 " + text, null)),
    };

    private static Quoting Outright(PricePerWeight one) => new(one.Currency, one.Unit, null);
}

/// <summary>An invented firm or co-operative that sends lists, with its habits.</summary>
/// <param name="Every">Days between two lists.</param>
/// <param name="NewLots">Lots that are new on a list in season.</param>
/// <param name="Prefix">Of its references.</param>
internal sealed record Seller(
    string Name,
    SupplierKind Kind,
    string Country,
    string Language,
    IReadOnlyList<string> Origins,
    Incoterm Delivery,
    string Place,
    Quoting Quoting,
    int Every,
    double NewLots,
    string Prefix)
{
    // Name | kind | country | language | origins | delivery | place | quoting | every | new lots | prefix
    private const string Table = """
        Serrado Azul Exportadora|Exporter|BR|pt|BR|Fob|Santos|KC|56|3.4|SAE
        Cooperativa Lagoa do Tiziu|Producer|BR|pt|BR|Fob|Santos|USD/lb|77|2.6|CLT
        Exportadora Páramo Callado|Exporter|CO|es|CO|Fob|Buenaventura|USD/lb|49|3.6|PC
        Asociación Quebrada Tinta|Producer|CO|es|CO|Fob|Cartagena|USD/lb|84|3.0|AQT
        Awdelo Highland Exports|Exporter|ET|en|ET|Fob|Djibouti|USD/lb|56|3.4|AH
        Mbirani Outturn Traders|Exporter|KE|en|KE|Fob|Mombasa|USD/50 kg|63|3.4|KE
        Exportadora Volcán Encapotado|Exporter|GT|es|GT|Fob|Puerto Quetzal|USD/46 kg|63|3.0|VE
        Beneficios Niebla de Enero|Exporter|HN|es|HN|Fob|Puerto Cortes|KC|70|2.8|NE
        Micro-beneficios Guarumo|Producer|CR|es|CR|Fob|Moin|USD/46 kg|77|2.8|MG
        Central Chacra Alta|Producer|PE|es|PE|Fob|Callao|KC|70|3.0|CCA
        Danau Tenang Kopi|Exporter|ID|en|ID|Fob|Belawan|USD/kg|70|2.6|DT
        Crête Sereine Export|Exporter|RW|fr|RW,BI|Fob|Dar es Salaam|USD/lb|70|2.8|MC
        Kyondwa Mountain Coffee|Exporter|UG|en|UG|Fob|Mombasa|USD/lb|77|2.4|KM
        Rama Seca Comercial|Exporter|NI|es|NI|Fob|Corinto|KC|84|2.4|RS
        Hacienda Cumbre Clara|Producer|SV|es|SV|Fob|Acajutla|USD/46 kg|91|2.4|HCC
        Kumbena Highlands Coffee|Exporter|PG|en|PG|Fob|Lae|USD/kg|84|2.2|KH
        Finca Piedra Lisa|Producer|PA|es|PA|Fca|Boquete|USD/kg|91|2.2|PL
        Đồi Sương Export|Exporter|VN|en|VN|Fob|Ho Chi Minh City|RC|84|2.2|DS
        Scheldekaai Spot|Importer|BE|en|ET,KE,CO,BR,GT,TZ,IN,RW|ExWarehouse|Antwerp|EUR/kg|56|4.0|SKS
        Elbsand Rohkaffee|Importer|DE|de|ET,BR,HN,PE,ID,NI,TZ,UG|ExWarehouse|Hamburg|EUR/kg|63|4.0|HH
        Tidewrack Green|Importer|GB|en|RW,BI,KE,CO,SV,PG|Dap|Antwerp|GBP/kg|70|3.0|TW
        """;

    public static IReadOnlyList<Seller> All { get; } =
    [
        .. Table.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Select(Read),
    ];

    private static Seller Read(string line)
    {
        var parts = line.Split('|');
        return new Seller(
            parts[0], Enum.Parse<SupplierKind>(parts[1]), parts[2], parts[3], parts[4].Split(','), Enum.Parse<Incoterm>(parts[5]),
            parts[6], Quoting.Read(parts[7]), int.Parse(parts[8], CultureInfo.InvariantCulture),
            double.Parse(parts[9], CultureInfo.InvariantCulture), parts[10]);
    }
}
