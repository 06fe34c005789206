using System.Globalization;
using System.IO.Compression;
using System.Net;
using System.Text.RegularExpressions;
using UglyToad.PdfPig;

namespace GreenLedger.Web.Tests.Cupping.Sealing;

/// <summary>Everything that an answer says: its headers, and its text with what HTML, JSON, workbooks and PDFs wrap it in taken off.</summary>
internal static partial class AnswerText
{
    private static readonly string[] SayNothing = ["Set-Cookie", "Content-Security-Policy"];

    public static async Task<string> ReadAsync(HttpResponseMessage answer)
    {
        var headers = answer.Headers.Concat(answer.Content.Headers).Where(header => !SayNothing.Contains(header.Key))
            .SelectMany(header => header.Value.Select(Uri.UnescapeDataString));
        return string.Join('\n', headers.Append(await BodyAsync(answer.Content)));
    }

    private static async Task<string> BodyAsync(HttpContent content)
    {
        var type = content.Headers.ContentType?.MediaType ?? "";
        if (type.Contains("spreadsheet", StringComparison.Ordinal) || type == "application/zip")
        {
            return await ZippedAsync(await content.ReadAsStreamAsync());
        }

        if (type == "application/pdf")
        {
            using var file = PdfDocument.Open(await content.ReadAsByteArrayAsync());
            var words = file.GetPages().SelectMany(page => page.GetWords()).Select(word => word.Text);
            return string.Join(' ', words.Concat([file.Information.Title ?? "", file.Information.Subject ?? "", file.Information.Author ?? ""]));
        }

        return Plain(await content.ReadAsStringAsync());
    }

    private static async Task<string> ZippedAsync(Stream file)
    {
        await using var archive = new ZipArchive(file);
        var parts = new List<string>();
        foreach (var entry in archive.Entries)
        {
            using var reader = new StreamReader(await entry.OpenAsync());
            parts.Add(Plain(await reader.ReadToEndAsync()));
        }

        return string.Join('\n', parts);
    }

    /// <summary>Without form tokens, which are random, and with escaped letters as they are read.</summary>
    private static string Plain(string text) => Escaped().Replace(
        WebUtility.HtmlDecode(Tokens().Replace(text, "")),
        letter => ((char)int.Parse(letter.Groups[1].ValueSpan, NumberStyles.HexNumber, CultureInfo.InvariantCulture)).ToString());

    [GeneratedRegex(@"CfDJ8[\w-]+")]
    private static partial Regex Tokens();

    [GeneratedRegex(@"\\u([0-9a-fA-F]{4})")]
    private static partial Regex Escaped();
}
