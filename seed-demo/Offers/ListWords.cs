namespace GreenLedger.SeedDemo.Offers;

/// <summary>What a seller calls the columns of its lists and what it writes into them, in its own language.</summary>
internal sealed class ListWords
{
    // Language | number | name | producer | country | region | variety | process | crop | grade | screen | altitude | bags
    // | bag weight | price | differential | month | score | certificates | available | place | valid | sold | unpriced | footer
    private const string Table = """
        en|Lot no|Lot name|Producer|Origin|Region|Variety|Process|Crop|Grade|Screen|Altitude|Bags|kg/bag|Price|Differential|Futures month|Cup score|Certificates|Available|Warehouse|valid until|sold|on request|Subject to unsold. Samples on request.
        es|Lote|Nombre del lote|Productor|Origen|Región|Variedad|Proceso|Cosecha|Preparación|Malla|Altura|Sacos|kg/saco|Precio|Diferencial|Mes de futuros|Puntaje|Certificación|Disponible|Lugar|válido hasta|vendido|a consultar|Sujeto a disponibilidad. Muestras a pedido.
        pt|Lote|Nome do lote|Produtor|Origem|Região|Variedade|Processo|Safra|Tipo|Peneira|Altitude|Sacas|kg/saca|Preço|Diferencial|Mês de referência|Pontuação|Certificação|Disponível|Local|válido até|vendido|a consultar|Sujeito a disponibilidade. Amostras a pedido.
        fr|Réf|Nom du lot|Producteur|Origine|Région|Variété|Procédé|Récolte|Grade|Crible|Altitude|Sacs|kg/sac|Prix|Différentiel|Échéance|Note|Certificats|Disponible|Lieu|valable jusqu'au|vendu|à convenir|Sauf vente. Échantillons sur demande.
        de|Lager-Nr|Bezeichnung|Produzent|Herkunft|Region|Varietät|Aufbereitung|Ernte|Sortierung|Sieb|Höhe|Säcke|kg/Sack|Preis|Differenz|Terminmonat|Punkte|Zertifikate|Verfügbar|Lagerort|gültig bis|verkauft|auf Anfrage|Zwischenverkauf vorbehalten. Muster auf Anfrage.
        """;

    // Language | our word = its word, …
    private const string Processes = """
        es|washed=lavado,red honey=honey rojo,black honey=honey negro,anaerobic washed=lavado anaeróbico,anaerobic natural=natural anaeróbico
        pt|washed=lavado,pulped natural=cereja descascado,anaerobic natural=natural anaeróbio
        fr|washed=lavé,natural=nature
        de|washed=gewaschen,natural=natur,wet-hulled=nass geschält,pulped natural=cereja descascado,anaerobic washed=anaerob gewaschen,anaerobic natural=anaerob natur
        """;

    private static readonly Dictionary<string, ListWords> ByLanguage = Lines(Table).ToDictionary(parts => parts[0], parts => new ListWords(parts));

    private readonly Dictionary<string, string> _processes;

    private ListWords(string[] parts)
    {
        (Ref, Name, Producer, Country, Region, Variety) = (parts[1], parts[2], parts[3], parts[4], parts[5], parts[6]);
        (Process, Crop, Grade, Screen, Altitude, Bags) = (parts[7], parts[8], parts[9], parts[10], parts[11], parts[12]);
        (BagWeight, Price, Differential, Month, Score, Certificates) = (parts[13], parts[14], parts[15], parts[16], parts[17], parts[18]);
        (Available, Place, ValidUntil, Sold, Unpriced, Footer) = (parts[19], parts[20], parts[21], parts[22], parts[23], parts[24]);
        _processes = Lines(Processes).Where(line => line[0] == parts[0]).SelectMany(line => line[1].Split(','))
            .Select(pair => pair.Split('=')).ToDictionary(pair => pair[0], pair => pair[1]);
    }

    public string Ref { get; }

    public string Name { get; }

    public string Producer { get; }

    public string Country { get; }

    public string Region { get; }

    public string Variety { get; }

    public string Process { get; }

    public string Crop { get; }

    public string Grade { get; }

    public string Screen { get; }

    public string Altitude { get; }

    public string Bags { get; }

    public string BagWeight { get; }

    public string Price { get; }

    public string Differential { get; }

    public string Month { get; }

    public string Score { get; }

    public string Certificates { get; }

    public string Available { get; }

    public string Place { get; }

    public string ValidUntil { get; }

    public string Sold { get; }

    public string Unpriced { get; }

    public string Footer { get; }

    public static ListWords Of(string language) => ByLanguage[language];

    public string ProcessWord(string process) => _processes.GetValueOrDefault(process, process);

    private static IEnumerable<string[]> Lines(string table) => table
        .Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Select(line => line.Split('|'));
}
