using System.Buffers.Binary;
using System.Text;

namespace GreenLedger.Domain.Papers;

/// <summary>
/// A kind of file that may be attached, told by the ending of its name and by its first bytes together: a name alone
/// proves nothing.
/// </summary>
public sealed class FileType
{
    private static readonly byte[] Pdf = "%PDF-"u8.ToArray();
    private static readonly byte[] Png = [0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A];
    private static readonly byte[] Jpeg = [0xFF, 0xD8, 0xFF];
    private static readonly byte[] Zip = [(byte)'P', (byte)'K', 3, 4];

    /// <summary>PDF: ISO 32000 7.5.2; PNG: ISO/IEC 15948 5.2; JPEG: ITU-T T.81 B.1; WebP: RFC 9649 2.4; ZIP: APPNOTE 4.3.7.</summary>
    public static IReadOnlyList<FileType> Allowed { get; } =
    [
        new("PDF", "application/pdf", [".pdf"], bytes => bytes.StartsWith(Pdf)),
        new("PNG", "image/png", [".png"], bytes => bytes.StartsWith(Png)),
        new("JPEG", "image/jpeg", [".jpg", ".jpeg"], bytes => bytes.StartsWith(Jpeg)),
        new("WebP", "image/webp", [".webp"], IsWebP),
        new("Excel workbook (xlsx)", "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet", [".xlsx"], bytes => IsPackage(bytes, "xl/"u8)),
        new("Word document (docx)", "application/vnd.openxmlformats-officedocument.wordprocessingml.document", [".docx"], bytes => IsPackage(bytes, "word/"u8)),
        new("CSV", "text/csv", [".csv"], IsText),
        new("text", "text/plain", [".txt"], IsText),
    ];

    private readonly Func<ReadOnlySpan<byte>, bool> _fits;

    private FileType(string name, string contentType, string[] endings, Func<ReadOnlySpan<byte>, bool> fits)
    {
        Name = name;
        ContentType = contentType;
        Endings = endings;
        _fits = fits;
    }

    public string Name { get; }

    public string ContentType { get; }

    /// <summary>In lower case, with the dot.</summary>
    public IReadOnlyList<string> Endings { get; }

    /// <summary>The type that name and bytes agree on.</summary>
    /// <exception cref="RuleBrokenException">Empty, of a kind that is not taken, or not what its name says.</exception>
    public static FileType Of(string fileName, ReadOnlySpan<byte> bytes, string? field = null)
    {
        Rule.Require(bytes.Length > 0, "This file is empty: please choose another one.", field);
        var type = Allowed.FirstOrDefault(type => type.Endings.Any(ending => fileName.EndsWith(ending, StringComparison.OrdinalIgnoreCase)));
        Rule.Require(type is not null, $"Files of this kind are not taken. Please attach one of these: {Names()}.", field);
        Rule.Require(type._fits(bytes), $"“{fileName}” is named like a {type.Name} file, but its content is something else: please check the file.", field);
        return type;
    }

    private static string Names() => string.Join(", ", Allowed.Select(type => type.Name));

    private static bool IsWebP(ReadOnlySpan<byte> bytes) =>
        bytes.Length >= 12 && bytes.StartsWith("RIFF"u8) && bytes[8..].StartsWith("WEBP"u8);

    /// <summary>An Office file is a ZIP archive that keeps its parts in one folder, named in the archive's entries.</summary>
    private static bool IsPackage(ReadOnlySpan<byte> bytes, ReadOnlySpan<byte> folder)
    {
        if (!bytes.StartsWith(Zip))
        {
            return false;
        }

        for (var at = bytes.IndexOf(Zip); at >= 0 && at + 30 <= bytes.Length;)
        {
            var length = BinaryPrimitives.ReadUInt16LittleEndian(bytes[(at + 26)..]);
            if (bytes[(at + 30)..].StartsWith(folder) && length > folder.Length)
            {
                return true;
            }

            var next = bytes[(at + 4)..].IndexOf(Zip);
            at = next < 0 ? -1 : at + 4 + next;
        }

        return false;
    }

    /// <summary>Text in UTF-8, UTF-16 with a mark, or an 8-bit code: no control signs but tabs and ends of line.</summary>
    private static bool IsText(ReadOnlySpan<byte> bytes)
    {
        if (bytes.StartsWith(Encoding.Unicode.Preamble) || bytes.StartsWith(Encoding.BigEndianUnicode.Preamble))
        {
            return bytes.Length % 2 == 0;
        }

        foreach (var value in bytes)
        {
            if (value < 0x20 && value is not (0x09 or 0x0A or 0x0C or 0x0D))
            {
                return false;
            }
        }

        return true;
    }
}
