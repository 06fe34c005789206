using System.Text.RegularExpressions;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Stock.Reading;

/// <summary>
/// Usual headings of contract lists in English, Spanish, Portuguese, French and German, folded as <see cref="SearchText"/>
/// folds, and what each column is for.
/// </summary>
public static partial class EarlierWords
{
    private static readonly Dictionary<EarlierColumn, string[]> Words = new()
    {
        [EarlierColumn.Contract] = ["contract", "contract no", "contract number", "contract ref", "contrato", "no contrato", "numero de contrato", "contrat", "numero de contrat", "kontrakt", "kontraktnummer", "vertrag", "vertragsnummer"],
        [EarlierColumn.Supplier] = ["supplier", "seller", "exporter", "proveedor", "vendedor", "exportador", "fornecedor", "fournisseur", "vendeur", "lieferant", "verkaufer"],
        [EarlierColumn.SignedOn] = ["contract date", "date of contract", "contract day", "signed on", "signed", "date", "fecha de contrato", "fecha del contrato", "fecha", "data do contrato", "data", "date du contrat", "vertragsdatum", "kontraktdatum", "datum"],
        [EarlierColumn.Lot] = ["lot", "lot ref", "lot reference", "lot no", "lot number", "reference", "ref", "lote", "referencia", "numero de lote", "numero de lot", "partie", "los", "losnummer", "partienummer"],
        [EarlierColumn.Name] = ["name", "lot name", "coffee", "description", "nombre", "cafe", "descripcion", "nome", "descricao", "nom", "designation", "bezeichnung", "kaffee"],
        [EarlierColumn.Country] = ["country", "origin", "pais", "origen", "origem", "pays", "origine", "land", "herkunft", "ursprung"],
        [EarlierColumn.Process] = ["process", "processing", "proceso", "beneficio", "processo", "processamento", "traitement", "procede", "aufbereitung"],
        [EarlierColumn.Crop] = ["crop", "crop year", "harvest", "cosecha", "safra", "colheita", "recolte", "ernte", "erntejahr"],
        [EarlierColumn.Bags] = ["bags", "number of bags", "sacos", "bolsas", "sacas", "sacs", "sacke", "anzahl sacke"],
        [EarlierColumn.BagWeight] = ["bag weight", "weight of a bag", "net weight of a bag", "per bag", "peso por saco", "peso del saco", "peso da saca", "poids du sac", "sackgewicht"],
        [EarlierColumn.Net] = ["net weight", "net", "quantity", "weight", "kilograms", "kilos", "contracted", "peso neto", "cantidad", "peso", "peso liquido", "quantidade", "poids net", "quantite", "poids", "nettogewicht", "menge", "gewicht"],
        [EarlierColumn.Incoterm] = ["incoterm", "incoterms", "delivery rule", "delivery", "terms", "condiciones", "condicoes", "lieferbedingung"],
        [EarlierColumn.Place] = ["place", "named place", "lugar", "local", "lieu", "ort"],
        [EarlierColumn.ShipFrom] = ["shipment from", "ship from", "shipping from", "embarque desde", "embarque de", "embarquement du", "verladung ab", "verschiffung ab"],
        [EarlierColumn.ShipUntil] = ["shipment until", "ship until", "shipment to", "shipment", "shipping until", "embarque hasta", "embarque", "embarque ate", "embarquement au", "embarquement", "verladung bis", "verschiffung bis", "verschiffung"],
        [EarlierColumn.Price] = ["price", "outright", "outright price", "precio", "preco", "prix", "preis"],
        [EarlierColumn.Currency] = ["currency", "moneda", "divisa", "moeda", "devise", "monnaie", "wahrung"],
        [EarlierColumn.Unit] = ["price unit", "unit", "per", "unidad", "unidade", "unite", "einheit", "preiseinheit"],
        [EarlierColumn.Month] = ["futures month", "month", "terminal", "mes", "mois", "monat", "terminmonat"],
        [EarlierColumn.Differential] = ["differential", "diff", "diferencial", "differentiel", "differenz", "differenzial"],
        [EarlierColumn.MarketLots] = ["lots to fix", "futures lots", "lots of the market", "lotes a fijar", "lotes a fixar", "lots a fixer", "zu fixierende lose"],
        [EarlierColumn.FixedLots] = ["lots fixed", "fixed lots", "lotes fijados", "lotes fixados", "lots fixes", "fixierte lose"],
        [EarlierColumn.FixedAt] = ["fixed at", "fixing level", "fijado a", "fijado en", "fixado a", "fixe a", "fixiert zu"],
        [EarlierColumn.FixedOn] = ["fixed on", "fixing date", "fijado el", "fixado em", "fixe le", "fixiert am"],
        [EarlierColumn.Call] = ["call", "fixed by", "fixing by", "fija", "fixa", "fixation par", "fixierung durch"],
        [EarlierColumn.Approval] = ["approval", "sample approval", "aprobacion", "aprovacao", "approbation", "freigabe", "musterfreigabe"],
        [EarlierColumn.ShippedBags] = ["bags shipped", "shipped bags", "sacos embarcados", "sacas embarcadas", "sacs embarques", "verschiffte sacke"],
        [EarlierColumn.Shipped] = ["shipped", "kilograms shipped", "on board", "embarcado", "a bordo", "embarque effectue", "verschifft", "an bord"],
        [EarlierColumn.ShippedOn] = ["shipped on", "on board date", "bill of lading date", "bl date", "embarcado el", "fecha de embarque", "embarcado em", "data de embarque", "embarque le", "verschifft am"],
        [EarlierColumn.PortOfLoading] = ["port of loading", "loading port", "puerto de carga", "porto de embarque", "port de chargement", "ladehafen"],
        [EarlierColumn.PortOfDestination] = ["port of destination", "destination", "destination port", "puerto de destino", "destino", "porto de destino", "port de destination", "bestimmungshafen", "zielhafen"],
        [EarlierColumn.BillOfLading] = ["bill of lading", "bl", "b l", "conocimiento de embarque", "conhecimento de embarque", "connaissement", "konnossement"],
        [EarlierColumn.PlannedArrival] = ["planned arrival", "expected arrival", "eta", "llegada prevista", "chegada prevista", "arrivee prevue", "geplante ankunft"],
        [EarlierColumn.ArrivedOn] = ["arrived on", "arrival", "arrived", "received on", "llegada", "llego el", "chegada", "recebido em", "arrivee", "arrive le", "ankunft", "angekommen am"],
        [EarlierColumn.ArrivedBags] = ["bags arrived", "bags received", "arrived bags", "sacos llegados", "sacos recibidos", "sacas recebidas", "sacs arrives", "sacs recus", "angekommene sacke", "erhaltene sacke"],
        [EarlierColumn.Received] = ["received", "landed weight", "kilograms received", "recibido", "recebido", "recu", "poids recu", "erhalten", "empfangen"],
        [EarlierColumn.LandedCost] = ["landed cost", "landed cost per kg", "cost per kg", "costo por kg", "costo puesto por kg", "custo por kg", "cout par kg", "cout rendu par kg", "kosten pro kg", "einstandspreis", "einstandspreis pro kg"],
        [EarlierColumn.LandedCurrency] = ["landed cost currency", "currency of landed cost", "cost currency", "moneda del costo", "moeda do custo", "devise du cout", "wahrung der kosten"],
        [EarlierColumn.Score] = ["score", "points", "cup score", "puntaje", "puntos", "taza", "pontuacao", "pontos", "note", "punkte"],
        [EarlierColumn.LeftBags] = ["bags left", "bags in stock", "sacos restantes", "sacas restantes", "sacs restants", "restliche sacke"],
        [EarlierColumn.Left] = ["left", "left in stock", "in stock", "stock", "existencias", "saldo", "estoque", "en stock", "restant", "bestand", "rest"],
        [EarlierColumn.Warehouse] = ["warehouse", "store", "almacen", "bodega", "armazem", "entrepot", "lager", "lagerort"],
    };

    private static readonly Dictionary<string, EarlierColumn> Meanings = Words.SelectMany(pair => pair.Value.Select(word => (word, pair.Key))).ToDictionary(pair => pair.word, pair => pair.Key);

    /// <summary>The heading that an empty file of ours carries, and what stands below it, with its unit.</summary>
    public static (string Heading, string Hint) Told(EarlierColumn column) => column switch
    {
        EarlierColumn.Contract => ("Contract", "The number of the contract; needed. One row for each lot of it: what its first row says of the contract need not stand in the others."),
        EarlierColumn.Supplier => ("Supplier", "Who sold; needed. A name that the ledger does not know becomes a supplier."),
        EarlierColumn.SignedOn => ("Contract date", "The day that it was agreed, 2026-03-31; needed."),
        EarlierColumn.Lot => ("Lot", "The reference of the lot. Left empty, the contract's number with the lot's place on it stands for it."),
        EarlierColumn.Name => ("Name", "How the coffee is called."),
        EarlierColumn.Country => ("Country", "Where it grew, by name or two letters."),
        EarlierColumn.Process => ("Process", "As the seller calls it: washed, natural."),
        EarlierColumn.Crop => ("Crop", "The crop year: 2025/26."),
        EarlierColumn.Bags => ("Bags", "Whole bags as contracted; needed."),
        EarlierColumn.BagWeight => ("Bag weight (kg)", "Net weight of a bag; or the net weight of all of them."),
        EarlierColumn.Net => ("Net weight (kg)", "Net weight of all bags, as contracted."),
        EarlierColumn.Incoterm => ("Incoterm", "The delivery rule, FOB or CIF, or spot; its place may follow it."),
        EarlierColumn.Place => ("Place", "The place of the delivery rule."),
        EarlierColumn.ShipFrom => ("Shipment from", "The first day or month of shipment; left empty, the day of the contract."),
        EarlierColumn.ShipUntil => ("Shipment until", "The last day or month of shipment; needed for what is open."),
        EarlierColumn.Price => ("Price", "An outright price; its currency and unit may follow it: 4.85 USD/lb. Of a past purchase it may be left empty where nobody knows it: no value is told then."),
        EarlierColumn.Currency => ("Currency", "Of the outright price: USD, EUR, or US cents."),
        EarlierColumn.Unit => ("Price unit", "What the outright price pays for: kg, lb, 46 kg, 50 kg, 60 kg, 100 lb or t."),
        EarlierColumn.Month => ("Futures month", "Where the price is to be fixed: KCH27."),
        EarlierColumn.Differential => ("Differential", "To the futures month, in US cents/lb for KC and USD/t for RC; below zero for a discount."),
        EarlierColumn.MarketLots => ("Lots to fix", "Lots of the market; left empty, the nearest whole number."),
        EarlierColumn.FixedLots => ("Lots fixed", "Lots of the market fixed so far, or all; several fixings one after the other: 2; 1."),
        EarlierColumn.FixedAt => ("Fixed at", "The level of each fixing, without the differential, in US cents/lb or USD/t: 281.40; 279.85."),
        EarlierColumn.FixedOn => ("Fixed on", "The day of each fixing; left empty, the day of the contract."),
        EarlierColumn.Call => ("Call", "Who decides when it is fixed: buyer or seller; left empty, the buyer."),
        EarlierColumn.Approval => ("Approval", "Yes where a sample has to be approved before shipment."),
        EarlierColumn.ShippedBags => ("Bags shipped", "Of an open contract: whole bags on board and not received yet."),
        EarlierColumn.Shipped => ("Shipped (kg)", "Net weight on board by the papers; left empty, the bags times their weight."),
        EarlierColumn.ShippedOn => ("Shipped on", "The day on board."),
        EarlierColumn.PortOfLoading => ("Port of loading", "By UN/LOCODE, such as BRSSZ for Santos; needed with bags shipped."),
        EarlierColumn.PortOfDestination => ("Port of destination", "Likewise, such as DEHAM for Hamburg."),
        EarlierColumn.BillOfLading => ("Bill of lading", "Its number; lots of one contract with the same one travel together."),
        EarlierColumn.PlannedArrival => ("Planned arrival", "The day that it is expected."),
        EarlierColumn.ArrivedOn => ("Arrived on", "The day that it was received. A contract whose lots have all arrived is a past purchase, closed; one without is open. Of one that has come in part, what came stands as a past purchase of its own, under its number with /1."),
        EarlierColumn.ArrivedBags => ("Bags arrived", "Where not all bags of the row have arrived: whole bags that have. The others stay open."),
        EarlierColumn.Received => ("Received (kg)", "As weighed on arrival; left empty, as contracted."),
        EarlierColumn.LandedCost => ("Landed cost per kg", "What a received kilogram had cost in the warehouse."),
        EarlierColumn.LandedCurrency => ("Landed cost currency", "Left empty, the house's own."),
        EarlierColumn.Score => ("Score", "Points, as you wrote them down then; shown with the contract, and nothing is decided by it."),
        EarlierColumn.LeftBags => ("Bags left", "Whole bags that still lie in the warehouse."),
        EarlierColumn.Left => ("Left in stock (kg)", "What still lies in the warehouse: it becomes opening stock with its landed cost."),
        EarlierColumn.Warehouse => ("Warehouse", "Where that lies."),
        _ => throw new ArgumentOutOfRangeException(nameof(column)),
    };

    /// <summary>What a heading means; null for one that is none of the usual words.</summary>
    public static EarlierColumn? Meaning(string heading)
    {
        ArgumentNullException.ThrowIfNull(heading);
        return Meanings.TryGetValue(SearchText.Of(heading), out var whole) ? whole
            : Meanings.TryGetValue(SearchText.Of(InBrackets().Replace(heading, " ")), out var bare) ? bare
            : null;
    }

    [GeneratedRegex(@"\([^)]*\)|\[[^\]]*\]|\bkg\b", RegexOptions.IgnoreCase)]
    private static partial Regex InBrackets();
}
