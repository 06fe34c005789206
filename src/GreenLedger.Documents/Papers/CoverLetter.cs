using GreenLedger.Domain.Offers;

namespace GreenLedger.Documents.Papers;

/// <summary>The few words that go with a paper to a supplier, in the languages that contacts have; whoever sends it may change them.</summary>
public static class CoverLetter
{
    private static readonly Dictionary<(Receives Kind, string Language), (string Title, string Text)> Words = new()
    {
        [(Receives.ContractPapers, "en")] = ("Purchase confirmation", "Good day,\n\nattached is our purchase confirmation {0}. Please read it and tell us if anything differs from what was agreed."),
        [(Receives.ContractPapers, "es")] = ("Confirmación de compra", "Buenos días:\n\nAdjuntamos nuestra confirmación de compra {0}. Le rogamos que la lea y nos avise si algo difiere de lo acordado."),
        [(Receives.ContractPapers, "pt")] = ("Confirmação de compra", "Bom dia,\n\nsegue em anexo a nossa confirmação de compra {0}. Pedimos que a leia e nos avise se algo diferir do que foi acordado."),
        [(Receives.ContractPapers, "fr")] = ("Confirmation d’achat", "Bonjour,\n\nveuillez trouver ci-joint notre confirmation d’achat {0}. Merci de la lire et de nous dire si quelque chose diffère de ce qui a été convenu."),
        [(Receives.Claims, "en")] = ("Claim", "Good day,\n\nattached is our claim {0}. Please confirm that you have received it."),
        [(Receives.Claims, "es")] = ("Reclamación", "Buenos días:\n\nAdjuntamos nuestra reclamación {0}. Le rogamos que confirme su recepción."),
        [(Receives.Claims, "pt")] = ("Reclamação", "Bom dia,\n\nsegue em anexo a nossa reclamação {0}. Pedimos que confirme o recebimento."),
        [(Receives.Claims, "fr")] = ("Réclamation", "Bonjour,\n\nveuillez trouver ci-joint notre réclamation {0}. Merci d’en confirmer la réception."),
        [(Receives.ArrivalReports, "en")] = ("Arrival", "Good day,\n\n{0} has arrived. Attached is our report: how it came, the weights, and both panels with the verdict. Please tell us if you found anything else."),
        [(Receives.ArrivalReports, "es")] = ("Llegada", "Buenos días:\n\n{0} ha llegado. Adjuntamos nuestro informe: cómo llegó, los pesos y los dos paneles con el veredicto. Le rogamos que nos avise si encontró otra cosa."),
        [(Receives.ArrivalReports, "pt")] = ("Chegada", "Bom dia,\n\n{0} chegou. Segue em anexo o nosso relatório: como chegou, os pesos e os dois painéis com o veredito. Pedimos que nos avise se encontrou outra coisa."),
        [(Receives.ArrivalReports, "fr")] = ("Arrivée", "Bonjour,\n\n{0} est arrivé. Veuillez trouver ci-joint notre rapport : comment il est arrivé, les poids, et les deux panels avec le verdict. Merci de nous dire si vous avez constaté autre chose."),
    };

    /// <summary><c>Purchase confirmation P26-014 · Sorrel Roasters</c>.</summary>
    public static string Subject(Receives kind, string? language, string about, string house) => $"{In(kind, language).Title} {about} · {house}";

    /// <param name="kind">What is sent.</param>
    /// <param name="language">ISO 639-1; another than those of contacts is answered in English.</param>
    /// <param name="about">The number or name of it.</param>
    /// <param name="by">Who signs, and for which house.</param>
    public static string Text(Receives kind, string? language, string about, string by) =>
        string.Join("\n\n", [In(kind, language).Text.Replace("{0}", about, StringComparison.Ordinal), by]);

    private static (string Title, string Text) In(Receives kind, string? language) =>
        Words.TryGetValue((kind, language ?? "en"), out var words) ? words : Words[(kind, "en")];
}
