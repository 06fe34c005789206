using System.Text;

namespace GreenLedger.Documents.Offers;

/// <summary>
/// Tells the encoding of a text table: by its mark, by the zeros of UTF-16, by being valid UTF-8, and else Windows-1252,
/// which every byte sequence of Western European lists is.
/// </summary>
internal static class TextEncoding
{
    static TextEncoding() => Encoding.RegisterProvider(CodePagesEncodingProvider.Instance);

    /// <summary>The text without its mark; null when the bytes are no text.</summary>
    public static string? Decode(byte[] file)
    {
        var text = Of(file).GetString(file);
        text = text.Length > 0 && text[0] == '\uFEFF' ? text[1..] : text;
        return IsText(text) ? text : null;
    }

    private static Encoding Of(byte[] file)
    {
        var bytes = file.AsSpan();
        if (bytes.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE]))
        {
            return Encoding.Unicode;
        }

        if (bytes.StartsWith((ReadOnlySpan<byte>)[0xFE, 0xFF]))
        {
            return Encoding.BigEndianUnicode;
        }

        var head = bytes[..Math.Min(bytes.Length, 4096)];
        var (even, odd) = Zeros(head);
        if (Math.Max(even, odd) * 5 > head.Length)
        {
            return odd > even ? Encoding.Unicode : Encoding.BigEndianUnicode;
        }

        return System.Text.Unicode.Utf8.IsValid(bytes) ? Encoding.UTF8 : Encoding.GetEncoding(1252);
    }

    private static (int Even, int Odd) Zeros(ReadOnlySpan<byte> head)
    {
        var (even, odd) = (0, 0);
        for (var at = 0; at < head.Length; at++)
        {
            if (head[at] == 0)
            {
                (even, odd) = at % 2 == 0 ? (even + 1, odd) : (even, odd + 1);
            }
        }

        return (even, odd);
    }

    /// <summary>Text has no control signs but tabs and line ends.</summary>
    private static bool IsText(string text) =>
        text.AsSpan(0, Math.Min(text.Length, 20_000)).IndexOfAnyInRange('\0', '\b') < 0 && text.Any(sign => !char.IsWhiteSpace(sign));
}
