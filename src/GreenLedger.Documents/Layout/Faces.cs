using System.Reflection;
using PdfSharp.Drawing;
using PdfSharp.Fonts;

namespace GreenLedger.Documents.Layout;

/// <summary>The faces that every PDF is printed in: Source Sans 3, embedded, so that no machine needs it.</summary>
internal static class Faces
{
    private const string Family = "Source Sans 3";

    /// <summary>PDFsharp takes one resolver for the whole program; setting the same one again is allowed.</summary>
    static Faces() => GlobalFontSettings.FontResolver = new EmbeddedFaces();

    public static XFont Regular(double size) => new(Family, size, XFontStyleEx.Regular);

    public static XFont Bold(double size) => new(Family, size, XFontStyleEx.Bold);

    private sealed class EmbeddedFaces : IFontResolver
    {
        public FontResolverInfo? ResolveTypeface(string familyName, bool isBold, bool isItalic) =>
            new(isBold ? "SourceSans3-Bold.ttf" : "SourceSans3-Regular.ttf");

        public byte[]? GetFont(string faceName)
        {
            using var face = Assembly.GetExecutingAssembly().GetManifestResourceStream(faceName)
                ?? throw new InvalidOperationException($"The face {faceName} is not in this program.");
            using var copy = new MemoryStream();
            face.CopyTo(copy);
            return copy.ToArray();
        }
    }
}
