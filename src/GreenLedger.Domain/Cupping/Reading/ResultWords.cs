using System.Text.RegularExpressions;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Cupping.Reading;

/// <summary>
/// Usual headings of past results in English, Spanish, Portuguese, French and German, folded as
/// <see cref="SearchText"/> folds. A meaning is an attribute's or a deduction's key, or one of the words below.
/// </summary>
public static partial class ResultWords
{
    public const string Ignored = "";
    public const string Name = "name";
    public const string Cupper = "cupper";
    public const string Date = "date";
    public const string Total = "total";
    public const string Defects = "defects";
    public const string Descriptors = "descriptors";
    public const string Note = "note";
    public const string Moisture = "moisture";
    public const string WaterActivity = "water-activity";
    public const string Category1 = "category-1";
    public const string Category2 = "category-2";
    public const string Quakers = "quakers";

    private static readonly Dictionary<string, string[]> Words = new()
    {
        ["fragrance-aroma"] = ["fragrance aroma", "aroma fragrance", "dry aroma", "fragancia aroma", "aroma fragancia", "fragrancia aroma", "fragrance arome", "parfum arome", "duft aroma", "aroma duft", "geruch", "duft und aroma"],
        ["fragrance"] = ["fragrance", "dry fragrance", "fragancia", "fragrancia", "parfum", "duft"],
        ["aroma"] = ["aroma", "wet aroma", "arome", "aromas"],
        ["flavor"] = ["flavor", "flavour", "taste", "sabor", "saveur", "gout", "flaveur", "geschmack"],
        ["aftertaste"] = ["aftertaste", "after taste", "finish", "sabor residual", "postgusto", "posgusto", "regusto", "retrogusto", "resabio", "gusto residual", "finalizacao", "retrogosto", "gosto residual", "pos gosto", "arriere gout", "fin de bouche", "persistance", "nachgeschmack", "abgang"],
        ["acidity"] = ["acidity", "acid", "brightness", "acidez", "acidite", "saure", "saeure", "aciditat", "aciditaet"],
        ["body"] = ["body", "cuerpo", "corpo", "corps", "korper", "koerper"],
        ["mouthfeel"] = ["mouthfeel", "mouth feel", "sensacion en boca", "sensacion bucal", "textura", "sensacao na boca", "sensacao bucal", "texture", "sensation en bouche", "toucher en bouche", "mundgefuhl", "mundgefuehl"],
        ["balance"] = ["balance", "balanced", "equilibrio", "equilibre", "ausgewogenheit"],
        ["uniformity"] = ["uniformity", "uniform", "uniform cups", "uniformidad", "uniformidade", "uniformite", "gleichmassigkeit", "gleichmaessigkeit", "gleichformigkeit", "einheitlichkeit", "uniformitat"],
        ["clean-cup"] = ["clean cup", "clean", "cleanliness", "clean cups", "taza limpia", "limpieza", "limpieza de taza", "limpeza", "xicara limpa", "tasse propre", "proprete", "nettete", "saubere tasse", "sauberkeit", "reinheit"],
        ["sweetness"] = ["sweetness", "sweet", "sweet cups", "dulzor", "dulzura", "dulce", "docura", "douceur", "sucrosite", "susse", "suesse", "sussigkeit"],
        ["overall"] = ["overall", "overall impression", "cupper points", "cuppers points", "cupper s points", "cupper score", "cuppers score", "general", "impresion general", "impresion global", "puntaje catador", "puntaje del catador", "puntos catador", "puntos del catador", "apreciacion general", "impressao geral", "impressao global", "avaliacao global", "conceito final", "nota do provador", "note globale", "appreciation globale", "impression generale", "impression globale", "gesamteindruck", "eindruck gesamt"],
        ["taint"] = ["taint", "taints", "taint cups"],
        ["fault"] = ["fault", "faults", "fault cups"],
        ["non-uniform"] = ["non uniform", "nonuniform", "non uniform cups", "uneven cups", "tazas no uniformes", "no uniformes", "xicaras nao uniformes", "nao uniformes", "tasses non uniformes", "non uniformes", "ungleichmassige tassen"],
        ["defective"] = ["defective", "defective cups", "tazas defectuosas", "xicaras defeituosas", "tasses defectueuses", "defekte tassen"],
        [Defects] = ["defects", "defect", "defect points", "defects subtract", "deductions", "deduction", "penalty", "penalties", "taint fault", "taints faults", "taints and faults", "defectos", "puntos defectos", "descuento", "defeitos", "desconto", "defauts", "deduction defauts", "defekte", "fehler", "abzug", "abzuge", "abzuege", "fehlerabzug"],
        [Total] = ["total", "total score", "total points", "total cup points", "final", "final score", "score", "sca score", "scaa score", "cup score", "cupping score", "quality score", "points", "stated total", "puntaje", "puntaje total", "puntaje final", "puntuacion", "puntuacion total", "puntuacion final", "puntos", "puntos totales", "nota", "nota final", "nota total", "taza", "pontuacao", "pontuacao total", "pontuacao final", "pontos", "note", "note finale", "note totale", "score total", "score final", "points totaux", "gesamtpunkte", "gesamtpunktzahl", "gesamtnote", "gesamt", "punkte", "punktzahl", "endpunktzahl", "summe", "resultado", "resultat", "ergebnis"],
        [Name] = ["sample", "sample code", "sample id", "sample no", "sample number", "sample name", "label", "label code", "lot", "lot no", "lot number", "lot code", "lot id", "lot ref", "code", "ref", "reference", "id", "name", "coffee", "coffee name", "item", "muestra", "codigo", "codigo muestra", "codigo de muestra", "no muestra", "lote", "no lote", "codigo de lote", "referencia", "nombre", "cafe", "amostra", "codigo da amostra", "codigo do lote", "nome", "echantillon", "code echantillon", "lot numero", "numero de lot", "nom", "muster", "musternummer", "probe", "probennummer", "partie", "partienummer", "referenz", "bezeichnung", "kaffee", "farm", "farm name", "finca", "fazenda", "producer", "productor", "produtor"],
        [Cupper] = ["cupper", "cuppers", "cupper name", "taster", "grader", "q grader", "panel", "panelist", "judge", "catador", "catadora", "provador", "degustador", "degustateur", "testeur", "verkoster", "prufer", "juez", "jurado"],
        [Date] = ["date", "cupping date", "cupped on", "date cupped", "grading date", "session date", "fecha", "fecha de cata", "fecha cata", "data", "data da prova", "data da degustacao", "date de degustation", "datum", "verkostungsdatum", "cupping datum"],
        [Descriptors] = ["descriptors", "flavor notes", "flavour notes", "tasting notes", "cup notes", "cup profile", "descriptores", "notas de cata", "notas de taza", "perfil de taza", "descritores", "notas sensoriais", "perfil da bebida", "descripteurs", "notes de degustation", "profil tasse", "aromabeschreibung", "geschmacksnoten", "tassenprofil"],
        [Note] = ["notes", "comments", "comment", "remarks", "notas", "comentarios", "comentario", "observaciones", "observacoes", "commentaires", "remarques", "bemerkungen", "bemerkung", "notizen", "kommentar"],
        [Moisture] = ["moisture", "moisture content", "moisture percent", "humedad", "umidade", "humidade", "humidite", "taux d humidite", "feuchte", "feuchtigkeit", "wassergehalt", "restfeuchte"],
        [WaterActivity] = ["water activity", "aw", "actividad de agua", "actividad del agua", "atividade de agua", "activite de l eau", "wasseraktivitat", "wasseraktivitaet"],
        [Category1] = ["category 1 defects", "category one defects", "category 1", "cat 1", "cat 1 defects", "primary defects", "defectos categoria 1", "defectos primarios", "defeitos categoria 1", "defeitos primarios", "defauts primaires", "defauts categorie 1", "primardefekte", "defekte kategorie 1"],
        [Category2] = ["category 2 defects", "category two defects", "category 2", "cat 2", "cat 2 defects", "secondary defects", "defectos categoria 2", "defectos secundarios", "defeitos categoria 2", "defeitos secundarios", "defauts secondaires", "defauts categorie 2", "sekundardefekte", "defekte kategorie 2"],
        [Quakers] = ["quakers", "quaker"],
    };

    private static readonly Dictionary<string, string> Exact = Words
        .SelectMany(pair => pair.Value.Select(word => (word, pair.Key)))
        .GroupBy(pair => pair.word)
        .ToDictionary(group => group.Key, group => group.First().Key);

    /// <summary>Headings that hold a heading's word without meaning it: the certification's body is no body.</summary>
    private static readonly string[] Others = ["certif", "bag", "harvest", "expir", "altitude", "company", "address", "colour", "color", "price", "precio", "preco", "prix", "preis"];

    /// <summary>Every meaning that a column can be given.</summary>
    public static IEnumerable<string> Meanings => Words.Keys;

    /// <summary>The meaning of a heading that is one of the usual words; null when it is none.</summary>
    public static string? Whole(string heading) => Candidates(heading).Select(word => Exact.GetValueOrDefault(word)).FirstOrDefault(meaning => meaning is not null);

    /// <summary>
    /// The meaning of a heading that holds a usual word among others ("SCA total score", "Sabor / Flavor"): the longest
    /// word wins. Null when none is held, or when the heading is about something else.
    /// </summary>
    public static string? Part(string heading)
    {
        var folded = SearchText.Of(heading);
        if (Others.Any(other => folded.Contains(other, StringComparison.Ordinal)))
        {
            return null;
        }

        var padded = $" {folded} ";
        return Exact.Where(pair => pair.Key.Length > 3 && padded.Contains($" {pair.Key} ", StringComparison.Ordinal))
            .OrderByDescending(pair => pair.Key.Length)
            .Select(pair => pair.Value)
            .FirstOrDefault();
    }

    /// <summary>The heading as it stands, without what is in brackets, and without figures.</summary>
    private static IEnumerable<string> Candidates(string heading)
    {
        var folded = SearchText.Of(heading);
        yield return folded;
        var bare = SearchText.Of(Brackets().Replace(heading, " "));
        yield return bare;
        yield return Figures().Replace(bare, " ").Trim();
    }

    [GeneratedRegex(@"\([^)]*\)|\[[^\]]*\]|/\s*\d+|%")]
    private static partial Regex Brackets();

    [GeneratedRegex(@"(?<=\D|^)\s*\b\d+\b(\s*\b\d+\b)*\s*$|\b(pts|points|score)$")]
    private static partial Regex Figures();
}
