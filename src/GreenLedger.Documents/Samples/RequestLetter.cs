using System.Globalization;
using System.Text;
using GreenLedger.Documents.Layout;

namespace GreenLedger.Documents.Samples;

/// <summary>The letter that asks a supplier for samples, in the supplier's language: to print, and as text to copy.</summary>
public static class RequestLetter
{
    public const string MediaType = "application/pdf";

    public static void Write(SampleRequest request, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(request);
        var words = LetterWords.In(request.Language);
        var paper = new Paper($"{words.Title} · {request.House}", request.House, $"{request.House} · {words.Title}", words.Culture, words.PageOf);
        paper.Text(words.Title, TextStyle.Title);
        paper.Text(words.Day(request.On), TextStyle.Small);
        paper.Gap(14);
        paper.Text(Greeting(words, request), TextStyle.Body);
        paper.Text(words.Asking, TextStyle.Body);
        paper.Gap(8);
        paper.Table(
            [new(words.Lot, 5), new(words.Kind, 2), new(words.Weight, 1.6, IsNumber: true), new(words.Label, 1.8)],
            [.. request.Samples.Select(sample => (IReadOnlyList<PaperCell>)[Lot(sample), words.Kinds[sample.Kind], Grams(sample), sample.LabelCode])]);
        paper.Gap(8);
        paper.Text(words.Marking, TextStyle.Body);
        paper.Text(words.Telling, TextStyle.Body);
        paper.Gap(14);
        paper.Text(words.Farewell, TextStyle.Body);
        paper.Text(request.By, TextStyle.SubHeading);
        paper.Text(request.House, TextStyle.Body);
        paper.Save(stream);
    }

    /// <summary>The same letter as plain text, for an e-mail.</summary>
    public static string Text(SampleRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        var words = LetterWords.In(request.Language);
        var text = new StringBuilder().Append(Greeting(words, request)).Append("\n\n").Append(words.Asking).Append("\n\n");
        foreach (var sample in request.Samples)
        {
            text.Append(CultureInfo.InvariantCulture, $"- {Lot(sample).Text} · {words.Kinds[sample.Kind]} · {Grams(sample)} g · {words.Label}: {sample.LabelCode}\n");
        }

        return text.Append('\n').Append(words.Marking).Append('\n').Append(words.Telling).Append("\n\n")
            .Append(words.Farewell).Append('\n').Append(request.By).Append('\n').Append(request.House).Append('\n').ToString();
    }

    private static string Greeting(LetterWords words, SampleRequest request) => request.Supplier is { } supplier
        ? string.Format(CultureInfo.InvariantCulture, words.Greeting, supplier)
        : words.GeneralGreeting;

    private static PaperCell Lot(RequestedSample sample) => sample.LotRef == sample.LotName ? sample.LotName : $"{sample.LotName} · {sample.LotRef}";

    private static string Grams(RequestedSample sample) => sample.Weight.Grams.ToString("#,0.#", CultureInfo.InvariantCulture);
}
