using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Origins;

/// <summary>
/// The origins that a new ledger begins with, to be edited by the buyer. Codes, crop years, harvests, bags and ports:
/// handbook, trade 5.2 (partly from memory, therefore data and not rules). Names in other languages: from memory.
/// </summary>
public static class StandardCountries
{
    // Code | name | ICO code | crop year starts | harvest from | harvest to | bag kg | ports | other names
    private const string Table = """
        BO|Bolivia|001|4|7|11|60||Bolivie,Bolivien
        BR|Brazil|002|4|5|9|60|BRSSZ BRVIX BRRIO|Brasil,Brésil,Brasilien
        BI|Burundi|027|4|3|7|60|KEMBA TZDAR|
        CM|Cameroon|020|10|10|1|60|CMDLA|Camerún,Camarões,Cameroun,Kamerun
        CO|Colombia|003|10|10|2|70|COBUN COCTG COSMR|Colômbia,Colombie,Kolumbien
        CR|Costa Rica|005|10|10|3|69|CRLIO CRMOB|
        CI|Côte d'Ivoire|024|10|11|4|60|CIABJ|Ivory Coast,Costa de Marfil,Costa do Marfim,Elfenbeinküste
        CD|DR Congo|004|10|||60|KEMBA TZDAR|Congo,Kongo,RD Congo,Congo DRC,DRC,Democratic Republic of the Congo
        EC|Ecuador|008|4|5|9|69|ECGYE|Equador,Équateur
        SV|El Salvador|009|10|10|3|69|SVAQJ|Salvador
        ET|Ethiopia|010|10|11|2|60|DJJIB|Etiopía,Etiópia,Éthiopie,Äthiopien,Aethiopien
        GT|Guatemala|011|10|11|4|69|GTPRQ GTSTC GTPBR|
        HN|Honduras|013|10|11|4|69|HNPCR|
        IN|India|014|10|11|3|60|INCOK INMAA INNSA|Índia,Inde,Indien
        ID|Indonesia|015|4|5|9|60|IDBLW IDSUB IDJKT|Indonésia,Indonésie,Indonesien,Sumatra,Java,Sulawesi,Bali,Flores
        KE|Kenya|037|10|11|2|60|KEMBA|Kenia,Quênia,Quénia
        MX|Mexico|016|10|11|3|69|MXVER|México,Mexique,Mexiko
        NI|Nicaragua|017|10|12|3|69|NICIO HNPCR|Nicarágua
        PA|Panama|029|10|12|3|60|PAMIT PABLB|Panamá
        PG|Papua New Guinea|166|4|4|9|60|PGLAE|PNG,Papúa Nueva Guinea,Papua-Nova Guiné,Papouasie-Nouvelle-Guinée,Papua-Neuguinea
        PE|Peru|030|4|3|9|69|PECLL|Perú,Pérou
        RW|Rwanda|028|4|3|7|60|KEMBA TZDAR|Ruanda
        TZ|Tanzania|033|7|7|12|60|TZDAR|Tanzania,Tanzânia,Tanzanie,Tansania
        UG|Uganda|035|10|10|2|60|KEMBA|Ouganda
        VN|Vietnam|145|10|10|1|60|VNSGN VNVUT|Viet Nam,Vietnã,Vietname
        YE|Yemen||10|10|1|60|YEADE YEHOD|Iêmen,Iémen,Yémen,Jemen
        US|USA (Hawaii)|||9|1|45.36||Hawaii,USA,United States,Estados Unidos,États-Unis
        LA|Laos||10|11|2|60||
        """;

    /// <summary>Read as of low risk in the published list (handbook, trade 5.2); those only inferred are left for the buyer to confirm.</summary>
    private static readonly string[] LowRisk = ["IN", "LA", "VN"];

    /// <summary>Fresh entities, in the order of the handbook's table.</summary>
    public static IReadOnlyList<Country> All() =>
        [.. Table.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Select(Read)];

    private static Country Read(string line)
    {
        var parts = line.Split('|');
        var country = new Country(parts[0], parts[1]);
        country.Rename(parts[1], parts[8].Split(','));
        country.StateHarvest(Month(parts[3]), Month(parts[4]), Month(parts[5]));
        country.StateTrade(parts[2], Weight.TryParse(parts[6], null, out var bag) ? bag : null, parts[7]);
        country.Judge(LowRisk.Contains(country.Code));
        return country;
    }

    private static int? Month(string text) => int.TryParse(text, out var month) ? month : null;
}
