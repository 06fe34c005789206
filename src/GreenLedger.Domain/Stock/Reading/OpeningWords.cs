using System.Text.RegularExpressions;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Stock.Reading;

/// <summary>What a column of a file of opening stock can hold.</summary>
public enum OpeningColumn
{
    Lot = 0,
    Name = 1,
    Supplier = 2,
    Country = 3,
    Crop = 4,
    Warehouse = 5,
    Bags = 6,
    Packed = 7,
    Weighed = 8,
    On = 9,
    Document = 10,
    Cost = 11,
    PerKilogram = 12,
    Currency = 13,
}

/// <summary>Usual headings of stock lists in English, Spanish, Portuguese, French and German, folded as <see cref="SearchText"/> folds.</summary>
public static partial class OpeningWords
{
    private static readonly Dictionary<OpeningColumn, string[]> Words = new()
    {
        [OpeningColumn.Lot] = ["lot", "lot ref", "lot reference", "lot no", "lot number", "reference", "ref", "lote", "referencia", "numero de lote", "numero de lot", "partie", "los", "losnummer", "partienummer"],
        [OpeningColumn.Name] = ["name", "lot name", "coffee", "description", "nombre", "cafe", "descripcion", "nome", "descricao", "nom", "designation", "bezeichnung", "kaffee"],
        [OpeningColumn.Supplier] = ["supplier", "seller", "exporter", "proveedor", "vendedor", "exportador", "fornecedor", "fournisseur", "vendeur", "lieferant", "verkaufer"],
        [OpeningColumn.Country] = ["country", "origin", "pais", "origen", "origem", "pays", "origine", "land", "herkunft", "ursprung"],
        [OpeningColumn.Crop] = ["crop", "crop year", "harvest", "cosecha", "safra", "colheita", "recolte", "ernte", "erntejahr"],
        [OpeningColumn.Warehouse] = ["warehouse", "place", "store", "almacen", "bodega", "armazem", "entrepot", "lager", "lagerort"],
        [OpeningColumn.Bags] = ["bags", "number of bags", "sacos", "bolsas", "sacas", "sacs", "sacke", "anzahl sacke"],
        [OpeningColumn.Packed] = ["packed", "as packed", "weight as packed", "net weight", "net", "peso neto", "neto", "peso liquido", "liquido", "poids net", "nettogewicht", "netto"],
        [OpeningColumn.Weighed] = ["weighed", "as weighed", "weight as weighed", "in stock", "stock", "weight", "kilograms", "kilos", "kg", "kgs", "peso", "peso pesado", "existencias", "estoque", "peso aferido", "poids", "poids pese", "en stock", "gewicht", "gewogen", "bestand"],
        [OpeningColumn.On] = ["day", "date", "on", "as of", "received", "fecha", "data", "datum", "stichtag"],
        [OpeningColumn.Document] = ["document", "invoice", "invoice no", "invoice number", "factura", "numero de factura", "fatura", "nota fiscal", "facture", "numero de facture", "rechnung", "rechnungsnummer"],
        [OpeningColumn.Cost] = ["cost", "value", "amount", "total cost", "costo", "coste", "valor", "importe", "custo", "cout", "valeur", "montant", "kosten", "wert", "betrag"],
        [OpeningColumn.PerKilogram] = ["cost per kg", "price per kg", "cost kg", "price kg", "per kg", "costo por kg", "precio por kg", "custo por kg", "preco por kg", "cout par kg", "prix par kg", "kosten pro kg", "preis pro kg", "kosten je kg", "preis je kg"],
        [OpeningColumn.Currency] = ["currency", "moneda", "divisa", "moeda", "devise", "monnaie", "wahrung"],
    };

    private static readonly Dictionary<string, OpeningColumn> Meanings = Words.SelectMany(pair => pair.Value.Select(word => (word, pair.Key))).ToDictionary(pair => pair.word, pair => pair.Key);

    /// <summary>The heading that an empty file of ours carries.</summary>
    public static string Heading(OpeningColumn column) => column switch
    {
        OpeningColumn.Lot => "Lot",
        OpeningColumn.Packed => "As packed (kg)",
        OpeningColumn.Weighed => "As weighed (kg)",
        OpeningColumn.On => "Day",
        OpeningColumn.Document => "Invoice",
        OpeningColumn.PerKilogram => "Cost per kg",
        _ => column.ToString(),
    };

    /// <summary>What a heading means; null for one that is none of the usual words.</summary>
    public static OpeningColumn? Meaning(string heading)
    {
        ArgumentNullException.ThrowIfNull(heading);
        return Meanings.TryGetValue(SearchText.Of(heading), out var whole) ? whole
            : Meanings.TryGetValue(SearchText.Of(Unit().Replace(heading, " ")), out var bare) ? bare
            : null;
    }

    [GeneratedRegex(@"\([^)]*\)|\[[^\]]*\]|\bkg\b", RegexOptions.IgnoreCase)]
    private static partial Regex Unit();
}
