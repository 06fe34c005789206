using System.IO.Compression;
using System.Text.Json;
using CsvHelper;
using GreenLedger.Domain.Archive;

namespace GreenLedger.Documents.Archive;

/// <summary>
/// Writes a whole house as one ZIP file: every table as CSV, every file as received, a description of each column, and the hash of each
/// member. Rows and files pass one by one: no table is ever in memory. Equal houses at one moment give equal members.
/// </summary>
public sealed class HouseArchive
{
    public const string MediaType = "application/zip";

    private static readonly JsonSerializerOptions Readable = new(JsonSerializerDefaults.Web) { WriteIndented = true };

    private readonly ZipArchive _zip;
    private readonly DateTimeOffset _at;
    private readonly List<ArchiveMember> _members = [];
    private readonly SortedDictionary<string, long> _rows = new(StringComparer.Ordinal);

    private HouseArchive(ZipArchive zip, DateTimeOffset at) => (_zip, _at) = (zip, at);

    public static string FileName(ArchiveAbout about) => FormattableString.Invariant($"whole-house-{about.MadeAt:yyyy-MM-dd}.zip");

    /// <summary>Writes the archive to a stream that is left open.</summary>
    public static async Task WriteAsync(Stream stream, IArchiveSource source, ArchiveAbout about, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(source);
        ArgumentNullException.ThrowIfNull(about);
        using var zip = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true, ArchiveFormat.Utf8);
        await new HouseArchive(zip, about.MadeAt).WriteAsync(source, about, cancellationToken);
    }

    private async Task WriteAsync(IArchiveSource source, ArchiveAbout about, CancellationToken cancellationToken)
    {
        Put(ArchiveFormat.ReadMe, ArchiveText.Of(about, source.Tables));
        await PutLinesAsync(ArchiveFormat.Description, ArchiveText.Heads, ArchiveText.Lines(source.Tables).ToAsyncEnumerable(), cancellationToken);
        foreach (var table in source.Tables)
        {
            var rows = source.RowsAsync(table, cancellationToken)
                .Select(row => row.Select((value, at) => ArchivedValue.Write(value, table.Columns[at])).ToArray());
            _rows[table.Name] = await PutLinesAsync(table.Member, [.. table.Columns.Select(column => column.Name)], rows, cancellationToken);
        }

        var (files, changed) = (0, 0);
        await foreach (var file in source.FilesAsync(cancellationToken))
        {
            var member = Put(file);
            files++;
            changed += member.Received.Length > 0 && member.Received != member.Sha256 ? 1 : 0;
        }

        await EndAsync(about, files, changed, cancellationToken);
    }

    /// <summary>The members' own list and the manifest, which holds the list's hash, come last.</summary>
    private async Task EndAsync(ArchiveAbout about, int files, int changed, CancellationToken cancellationToken)
    {
        var lines = _members.ConvertAll(member => new[] { member.Name, ArchiveText.Number(member.Size), member.Sha256, member.Received });
        await PutLinesAsync(ArchiveFormat.Members, ["Member", "Bytes", "Sha256", "ReceivedSha256"], lines.ToAsyncEnumerable(), cancellationToken);
        var manifest = new ArchiveManifest(ArchiveFormat.Newest, about.MadeAt.ToUniversalTime(), about.House, about.Ledger, _rows, files, changed, _members[^1].Sha256);
        Put(ArchiveFormat.Manifest, JsonSerializer.Serialize(manifest, Readable));
    }

    private void Put(string name, string text)
    {
        using var stream = Open(name, CompressionLevel.Optimal);
        stream.Write(ArchiveFormat.Utf8.GetBytes(text));
        Note(name, stream, "");
    }

    /// <summary>What came as a file is mostly packed already.</summary>
    private ArchiveMember Put(ArchivedFile file)
    {
        using var stream = Open(file.Member, CompressionLevel.Fastest);
        stream.Write(file.Bytes.Span);
        return Note(file.Member, stream, file.Received ?? "");
    }

    /// <summary>A table of texts; gives the number of its rows.</summary>
    private async Task<long> PutLinesAsync(string name, string[] heads, IAsyncEnumerable<string[]> rows, CancellationToken cancellationToken)
    {
        using var stream = Open(name, CompressionLevel.Optimal);
        var count = -1L;
        using (var csv = CsvWriter.Create(stream, ArchiveFormat.Writing, leaveOpen: true))
        {
            await foreach (var row in rows.Prepend(heads).WithCancellation(cancellationToken))
            {
                csv.WriteRecord(row);
                count++;
            }
        }

        Note(name, stream, "");
        return count;
    }

    private CountedStream Open(string name, CompressionLevel level)
    {
        var entry = _zip.CreateEntry(name, level);
        entry.LastWriteTime = _at.ToUniversalTime();
        return new CountedStream(entry.Open());
    }

    private ArchiveMember Note(string name, CountedStream stream, string received)
    {
        var member = new ArchiveMember(name, stream.Count, stream.Sha256, received);
        _members.Add(member);
        return member;
    }
}
