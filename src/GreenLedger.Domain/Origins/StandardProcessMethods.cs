namespace GreenLedger.Domain.Origins;

/// <summary>
/// The process methods that a new ledger begins with, with the words that lists in five languages use for them. Trade
/// words, from memory: the buyer edits and extends them.
/// </summary>
public static class StandardProcessMethods
{
    // Name | family | synonyms
    private const string Table = """
        washed|Washed|fully washed,wet process,wet processed,lavado,lavada,café lavado,húmedo,vía húmeda,via úmida,lavé,lavée,voie humide,gewaschen,nass aufbereitet,nassaufbereitung,FW,double washed,doble lavado,duplo lavado,double lavé,doppelt gewaschen,kenya process
        honey|Honey|miel,enmielado,semi lavado honey,miel process
        white honey|Honey|honey blanco,miel blanca,honey branco
        yellow honey|Honey|honey amarillo,miel amarilla,honey amarelo
        red honey|Honey|honey rojo,miel roja,honey vermelho
        black honey|Honey|honey negro,miel negra,honey preto
        pulped natural|Honey|cereja descascado,CD,despulpado,despulpado natural,descascado,semi dry,pulped
        natural|Natural|natural process,dry process,dry processed,unwashed,sun dried natural,seco,vía seca,via seca,nature,voie sèche,natur,naturbelassen,trocken aufbereitet,sonnengetrocknet
        anaerobic natural|Natural|natural anaerobic,natural anaeróbico,anaeróbico natural,natural anaeróbio,anaerobe natural,anaerob natur,nature anaérobie,anaerobic fermentation natural
        anaerobic washed|Washed|washed anaerobic,lavado anaeróbico,anaeróbico lavado,lavado anaeróbio,lavé anaérobie,anaerob gewaschen
        anaerobic honey|Honey|honey anaerobic,honey anaeróbico,honey anaeróbio,honey anaerob
        anaerobic|Other|anaerobic fermentation,anaeróbico,anaeróbica,fermentado anaeróbico,fermentação anaeróbica,anaeróbio,anaérobie,anaerob,anaerobe fermentation
        carbonic maceration|Other|maceración carbónica,maceração carbônica,macération carbonique,kohlensäuremazeration,CM
        wet-hulled|WetHulled|wet hulled,giling basah,nass geschält,nassgeschält,descascado húmedo,trillado húmedo,décortiqué humide,semi washed sumatra
        semi-washed|Other|semi washed,semilavado,semi lavado,semi lavé,halbgewaschen
        decaffeinated|Other|decaf,descafeinado,décaféiné,entkoffeiniert
        """;

    /// <summary>Fresh entities, washed first.</summary>
    public static IReadOnlyList<ProcessMethod> All() =>
        [.. Table.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Select(Read)];

    private static ProcessMethod Read(string line)
    {
        var parts = line.Split('|');
        return new ProcessMethod(parts[0], Enum.Parse<ProcessFamily>(parts[1]), parts[2].Split(','));
    }
}
