using GreenLedger.Domain;

namespace GreenLedger.Web.Pricing;

/// <summary>What a page or script sends, as the room takes it.</summary>
internal static class Received
{
    /// <exception cref="RuleBrokenException">The file is larger than the limit.</exception>
    public static async Task<byte[]> BytesAsync(this IFormFile file, int largest, CancellationToken cancellationToken)
    {
        Rule.Require(file.Length <= largest, $"The file is larger than {largest / 1024 / 1024} MB: choose another.", "File");
        using var bytes = new MemoryStream();
        await file.CopyToAsync(bytes, cancellationToken);
        return bytes.ToArray();
    }

    /// <summary>The file's own name, short enough to stand as a source.</summary>
    public static string SourceName(this IFormFile file)
    {
        var name = Path.GetFileName(file.FileName).Trim();
        return name.Length == 0 ? "file" : name[..Math.Min(150, name.Length)];
    }
}
