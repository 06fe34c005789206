using System.Text;
using System.Text.RegularExpressions;
using CsvHelper;

namespace GreenLedger.Documents.Archive;

/// <summary>What writing and reading an archive agree on.</summary>
internal static partial class ArchiveFormat
{
    /// <summary>Counted up when an archive is written in a way that an older ledger would misread.</summary>
    public const int Newest = 1;

    public const string Manifest = "manifest.json";
    public const string Members = "members.csv";
    public const string Description = "description.csv";
    public const string ReadMe = "README.txt";

    /// <summary>In bytes. No row of a table comes near it: it keeps a table that was made to do harm from filling the memory.</summary>
    public const int LongestRow = 64_000_000;

    /// <summary>A member is held in memory while it is stored; neither database keeps larger bytes.</summary>
    public const long LargestFile = 1_000_000_000;

    /// <summary>
    /// Deflate makes at most 1,032 bytes of one (zlib.net/zlib_tech.html). Tables of a ledger come to some twenty; what swells more than
    /// this was made to do harm.
    /// </summary>
    public const int MostSwelling = 300;

    public static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>RFC 4180: commas, quotes, CRLF; the head is a line like any other.</summary>
    public static readonly CsvReaderOptions Reading = CsvReaderOptions.Default with { HasHeader = false, SkipEmptyLines = false, MaxRecordSize = LongestRow, MalformedData = CsvMalformedDataHandling.Throw };

    public static readonly CsvWriterOptions Writing = CsvWriterOptions.Default with { HasHeader = false };

    /// <summary>Members that an archive can have; none leads out of a folder.</summary>
    public static bool IsMember(string name) => Known().IsMatch(name) && !name.Split('/').Any(part => part is "." or ".." or "");

    [GeneratedRegex(@"^(manifest\.json|members\.csv|description\.csv|README\.txt|tables/[A-Za-z0-9_]+\.csv|files/[A-Za-z0-9_]+/[^/\\:\p{Cc}]+/[^/\\:\p{Cc}]+)$", RegexOptions.CultureInvariant)]
    private static partial Regex Known();
}

/// <summary>What an archive says of itself, in <c>manifest.json</c>.</summary>
/// <param name="Format">By which rules it is written.</param>
/// <param name="MadeAt">The moment that it shows.</param>
/// <param name="House">The name of the house.</param>
/// <param name="Ledger">The newest change of the database that the ledger which wrote it knows.</param>
/// <param name="Tables">The rows of each table.</param>
/// <param name="Files">How many files and messages are in it.</param>
/// <param name="FilesNotAsReceived">How many files no longer have the hash that they were received with; 0 in a sound house.</param>
/// <param name="MembersSha256">Of <c>members.csv</c>, which has the hash of every other member.</param>
internal sealed record ArchiveManifest(
    int Format, DateTimeOffset MadeAt, string House, string Ledger, IReadOnlyDictionary<string, long> Tables, int Files, int FilesNotAsReceived, string MembersSha256);

/// <summary>A line of <c>members.csv</c>.</summary>
internal sealed record ArchiveMember(string Name, long Size, string Sha256, string Received);
