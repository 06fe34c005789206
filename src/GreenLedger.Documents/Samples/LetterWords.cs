using System.Globalization;
using GreenLedger.Domain.Samples;

namespace GreenLedger.Documents.Samples;

/// <summary>The sentences of a request letter in one language.</summary>
internal sealed record LetterWords(
    string Language,
    string Culture,
    string Title,
    string Greeting,
    string GeneralGreeting,
    string Asking,
    string Marking,
    string Telling,
    string Farewell,
    string Lot,
    string Kind,
    string Weight,
    string Label,
    string PageOf,
    IReadOnlyDictionary<SampleKind, string> Kinds)
{
    private static readonly LetterWords English = new(
        "en", "en-GB", "Request for samples", "Dear {0},", "Dear Sir or Madam,",
        "Please send us samples of green coffee of the following lots, in the quantity stated for each.",
        "Please write the code beside each lot on its bag and nothing else that names the coffee: we cup blind.",
        "Please let us know the courier and the tracking number when they leave.",
        "Kind regards", "Lot", "Sample", "Green coffee (g)", "Code for the bag", "page {0} of {1}",
        Words("offer", "type", "pre-shipment", "arrival", "stock"));

    private static readonly LetterWords Spanish = new(
        "es", "es-ES", "Solicitud de muestras", "Estimados señores de {0}:", "Estimados señores:",
        "Les rogamos que nos envíen muestras de café verde de los siguientes lotes, en la cantidad indicada para cada uno.",
        "Por favor, escriban en cada bolsa el código que figura junto al lote y nada más que identifique el café: catamos a ciegas.",
        "Por favor, comuníquennos la empresa de mensajería y el número de seguimiento cuando salgan.",
        "Atentamente", "Lote", "Muestra", "Café verde (g)", "Código de la bolsa", "página {0} de {1}",
        Words("de oferta", "tipo", "de preembarque", "de llegada", "de existencias"));

    private static readonly LetterWords Portuguese = new(
        "pt", "pt-BR", "Pedido de amostras", "Prezados senhores da {0},", "Prezados senhores,",
        "Pedimos que nos enviem amostras de café verde dos seguintes lotes, na quantidade indicada para cada um.",
        "Por favor, escrevam em cada saco o código que está ao lado do lote e nada mais que identifique o café: provamos às cegas.",
        "Por favor, informem a transportadora e o número de rastreamento quando forem enviadas.",
        "Atenciosamente", "Lote", "Amostra", "Café verde (g)", "Código do saco", "página {0} de {1}",
        Words("de oferta", "tipo", "de pré-embarque", "de chegada", "de estoque"));

    private static readonly LetterWords French = new(
        "fr", "fr-FR", "Demande d’échantillons", "Madame, Monsieur, chez {0},", "Madame, Monsieur,",
        "Nous vous prions de nous envoyer des échantillons de café vert des lots suivants, dans la quantité indiquée pour chacun.",
        "Merci d’écrire sur chaque sachet le code indiqué à côté du lot et rien d’autre qui désigne le café : nous dégustons à l’aveugle.",
        "Merci de nous indiquer le transporteur et le numéro de suivi lors de l’envoi.",
        "Cordialement", "Lot", "Échantillon", "Café vert (g)", "Code du sachet", "page {0} sur {1}",
        Words("d’offre", "type", "avant embarquement", "à l’arrivée", "de stock"));

    private static readonly LetterWords[] All = [English, Spanish, Portuguese, French];

    public string Day(DateOnly day) => day.ToString("d MMMM yyyy", new CultureInfo(Culture));

    public static LetterWords In(string? language) =>
        Array.Find(All, words => string.Equals(words.Language, language, StringComparison.OrdinalIgnoreCase)) ?? English;

    private static Dictionary<SampleKind, string> Words(string offer, string type, string preShipment, string arrival, string stock) => new()
    {
        [SampleKind.Offer] = offer,
        [SampleKind.Type] = type,
        [SampleKind.PreShipment] = preShipment,
        [SampleKind.Arrival] = arrival,
        [SampleKind.Stock] = stock,
    };
}
