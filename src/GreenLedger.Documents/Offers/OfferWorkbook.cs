using System.IO.Compression;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;

namespace GreenLedger.Documents.Offers;

/// <summary>The beginning of a list, and about how many rows it has in all.</summary>
public sealed record ListHead(IReadOnlyList<OfferLine> Lines, int Rows);

/// <summary>
/// Reads the rows of an offer list as it was received: a workbook (XLSX) or a text table (CSV, TSV) in any common
/// encoding. What the file is, is told by its bytes and not by its name. Files are treated as hostile: sizes are limited
/// before anything is unpacked, no formula is evaluated, text stays text.
/// </summary>
public static class OfferWorkbook
{
    /// <summary>The largest file that is taken, in bytes.</summary>
    public const int LargestFile = 32 * 1024 * 1024;

    /// <summary>The most that a workbook may unpack to, in bytes: 100,000 rows of 20 columns need about a third of it.</summary>
    public const long LargestUnpacked = 400L * 1024 * 1024;

    /// <summary>The most rows that are read of one file.</summary>
    public const int MostRows = 250_000;

    /// <summary>How many rows of each sheet a first look needs: a table may begin some way down.</summary>
    internal const int HeadRows = 400;

    internal const int MostColumns = 250;
    internal const int LongestCell = 4000;
    private const int MostParts = 5000;

    /// <summary>
    /// The rows of the visible sheets in their order, blank ones left out, as they are asked for.
    /// </summary>
    /// <exception cref="RuleBrokenException">
    /// The file is empty, too large, of another kind, or damaged; thrown on the call or while rows are read.
    /// </exception>
    public static IEnumerable<OfferLine> Read(byte[] file)
    {
        CheckSize(file);
        return Guarded(IsZip(file) ? ReadAhead.Of(Workbook(file)) : Text(file));
    }

    /// <summary>The first rows of each visible sheet, enough for a first look, and about how many rows there are in all.</summary>
    /// <exception cref="RuleBrokenException">As <see cref="Read"/> throws it.</exception>
    public static ListHead Head(byte[] file)
    {
        CheckSize(file);
        if (!IsZip(file))
        {
            var all = Guarded(Text(file));
            return new ListHead([.. all.Take(HeadRows)], file.AsSpan().Count((byte)'\n'));
        }

        var rows = 0;
        var lines = Guarded(Workbook(file, HeadRows, count => rows += count)).ToList();
        return new ListHead(lines, rows);
    }

    /// <summary>Whether it is a workbook of a single sheet.</summary>
    internal static bool HasOneSheet(byte[] file)
    {
        CheckSize(file);
        return IsZip(file) && CheckParts(file) == 1;
    }

    /// <summary>The rows of a workbook, unpacked by whoever asks for them.</summary>
    internal static IEnumerable<OfferLine> Unpacked(byte[] file, Action<int> opened) => Guarded(Workbook(file, opened: opened));

    private static void CheckSize(byte[] file)
    {
        Rule.Require(file.Length > 0, "This file is empty: choose the list again.", "File");
        Rule.Require(file.Length <= LargestFile, $"This file is larger than {LargestFile / 1024 / 1024} MB: split the list.", "File");
    }

    private static IEnumerable<OfferLine> Workbook(byte[] file, int most = int.MaxValue, Action<int>? opened = null)
    {
        CheckParts(file);
        return SheetLines.Read(file, most, opened);
    }

    private static IEnumerable<OfferLine> Text(byte[] file)
    {
        Rule.Require(!IsCompound(file), "This is an old or password-protected workbook: save it as .xlsx without a password.", "File");
        Rule.Require(!file.AsSpan().StartsWith("%PDF"u8), "This is a PDF: ask the supplier for the list as a workbook or text table.", "File");
        var text = TextEncoding.Decode(file);
        Rule.Require(text is not null, "This file is no workbook (.xlsx) and no text table (.csv, .tsv).", "File");
        return TextLines.Read(text);
    }

    private static bool IsZip(byte[] file) => file.AsSpan().StartsWith("PK\u0003\u0004"u8);

    private static bool IsCompound(byte[] file) => file.AsSpan().StartsWith((ReadOnlySpan<byte>)[0xD0, 0xCF, 0x11, 0xE0]);

    /// <summary>
    /// Looks at what the parts say they unpack to; .NET gives out no more than that of each, so a part that lies is cut.
    /// Gives the number of sheets.
    /// </summary>
    private static int CheckParts(byte[] file)
    {
        try
        {
            using var zip = new ZipArchive(new MemoryStream(file, writable: false), ZipArchiveMode.Read);
            Rule.Require(zip.Entries.Count <= MostParts, "This workbook has too many parts to be an offer list.", "File");
            Rule.Require(
                zip.Entries.Sum(entry => Math.Max(0, entry.Length)) <= LargestUnpacked,
                $"This workbook unpacks to more than {LargestUnpacked / 1024 / 1024} MB: split the list.",
                "File");
            Rule.Require(zip.Entries.Any(entry => entry.FullName.EndsWith("workbook.xml", StringComparison.OrdinalIgnoreCase)), "This archive is no workbook: choose an .xlsx, .csv or .tsv file.", "File");
            return zip.Entries.Count(entry => entry.FullName.Contains("worksheets/sheet", StringComparison.OrdinalIgnoreCase));
        }
        catch (InvalidDataException)
        {
            throw new RuleBrokenException("This workbook is damaged: save it again and send it anew.", "File");
        }
    }

    /// <summary>Counts rows, and turns what a damaged file makes its reader throw into a sentence.</summary>
    private static IEnumerable<OfferLine> Guarded(IEnumerable<OfferLine> lines)
    {
        var count = 0;
        using var source = Opened(lines);
        while (Next(source))
        {
            count++;
            Rule.Require(count <= MostRows, $"This list has more than {MostRows:N0} rows: split it.", "File");
            yield return source.Current;
        }
    }

    private static IEnumerator<OfferLine> Opened(IEnumerable<OfferLine> lines) => lines.GetEnumerator();

    private static bool Next(IEnumerator<OfferLine> source)
    {
        try
        {
            return source.MoveNext();
        }
        catch (Exception wrong) when (wrong is not (RuleBrokenException or OutOfMemoryException or OperationCanceledException))
        {
            // A damaged or hostile file makes the readers of it throw almost anything; all of it means this one sentence.
            throw new RuleBrokenException("This file is damaged and cannot be read to its end: save it again and send it anew.", "File");
        }
    }
}
