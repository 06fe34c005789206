using GreenLedger.Domain;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;

namespace GreenLedger.Web.Papers;

/// <summary>
/// Which files may be attached. <c>GreenLedger:AttachmentMegabytes</c> is the largest size, 20 MB unless it is set; the
/// types are those of <see cref="FileType.Allowed"/>.
/// </summary>
internal sealed class AttachmentRules(IConfiguration settings)
{
    private const int UsualMegabytes = 20;

    /// <summary>The endings of the types, for a browser's file chooser.</summary>
    public static string Accept { get; } = string.Join(',', FileType.Allowed.SelectMany(type => type.Endings));

    public int MostMegabytes { get; } = settings.GetValue("GreenLedger:AttachmentMegabytes", UsualMegabytes);

    /// <summary>What may be attached, said beside the field.</summary>
    public string Hint => $"Up to {MostMegabytes} MB: {string.Join(", ", FileType.Allowed.Select(type => type.Name))}.";

    /// <summary>Reads and judges the file that was sent.</summary>
    /// <exception cref="RuleBrokenException">None was sent, it is too large, or of a type that is not taken.</exception>
    public async Task<StoredFile> ReadAsync(IFormFile? sent, Id<Person> by, DateTimeOffset at, CancellationToken cancellationToken)
    {
        Rule.Require(sent is not null, "Choose a file first.", "File");
        Rule.Require(
            sent.Length <= MostMegabytes * 1024L * 1024L,
            $"“{sent.FileName}” is larger than {MostMegabytes} MB: please attach a smaller file.", "File");
        using var bytes = new MemoryStream();
        await sent.CopyToAsync(bytes, cancellationToken);
        var content = bytes.ToArray();
        var type = FileType.Of(sent.FileName, content, "File");
        return new StoredFile(sent.FileName, type.ContentType, content, by, at);
    }
}
