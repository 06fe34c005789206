using System.IO.Compression;
using System.Runtime.CompilerServices;
using GreenLedger.Domain;
using GreenLedger.Domain.Archive;

namespace GreenLedger.Documents.Archive;

/// <summary>
/// An archive that is to be read back. Opening it reads every member once and refuses what is not whole, so that nothing is
/// stored of an archive that would break off.
/// </summary>
public sealed class ArchiveFile : IArchiveContent, IDisposable
{
    private readonly ZipArchive _zip;
    private readonly ArchiveManifest _manifest;

    private ArchiveFile(ZipArchive zip, ArchiveManifest manifest)
    {
        (_zip, _manifest) = (zip, manifest);
        Tables = manifest.Tables.Keys.ToHashSet();
    }

    public IReadOnlySet<string> Tables { get; }

    public int Files => _manifest.Files;

    /// <summary>The name of the house in it.</summary>
    public string House => _manifest.House;

    public DateTimeOffset MadeAt => _manifest.MadeAt;

    /// <param name="stream">The whole file; it can be searched, and stays open as long as this.</param>
    /// <param name="cancellationToken">Stops the reading.</param>
    /// <exception cref="RuleBrokenException">It is no archive of a house, or not a whole one; the sentence says where.</exception>
    public static async Task<ArchiveFile> OpenAsync(Stream stream, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ZipArchive? zip = null;
        try
        {
            zip = new ZipArchive(stream, ZipArchiveMode.Read, leaveOpen: true, ArchiveFormat.Utf8);
            var manifest = new ArchiveCheck(zip, stream.Length).Manifest();
            await new ArchiveCheck(zip, stream.Length).MembersAsync(manifest, cancellationToken);
            return new ArchiveFile(zip, manifest);
        }
        catch (Exception broken) when (broken is InvalidDataException or EndOfStreamException or RuleBrokenException or NotSupportedException)
        {
            zip?.Dispose();
            throw broken as RuleBrokenException ?? new RuleBrokenException("This file cannot be read as a ZIP file, or it breaks off: send the archive as the ledger wrote it.", broken);
        }
    }

    public async IAsyncEnumerable<string[]> RowsAsync(ArchiveTable table, [EnumeratorCancellation] CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(table);
        using var csv = ArchiveCheck.Csv(_zip.GetEntry(table.Member) ?? throw new RuleBrokenException("The archive does not have it"));
        var heads = ArchiveCheck.Next(csv) ?? [];
        Rule.Require(heads.SequenceEqual(table.Columns.Select(column => column.Name)), $"it has other columns than this ledger knows ({Differing(heads, table)}), so another version of the ledger wrote it: read it back with that version");
        var count = 0L;
        while (ArchiveCheck.Next(csv) is { } cells)
        {
            cancellationToken.ThrowIfCancellationRequested();
            Rule.Require(cells.Length == heads.Length, $"line {csv.RowNumber} has {cells.Length} cells where {heads.Length} are needed");
            yield return cells;
            count++;
        }

        Rule.Require(count == _manifest.Tables[table.Name], $"it has {count} rows where the archive says {_manifest.Tables[table.Name]}");
        await Task.CompletedTask;
    }

    public async Task<byte[]> FileAsync(string member, CancellationToken cancellationToken)
    {
        Rule.Require(member.StartsWith("files/", StringComparison.Ordinal) && _zip.GetEntry(member) is not null, $"the archive has no member “{member}”");
        var entry = _zip.GetEntry(member)!;
        Rule.Require(entry.Length <= ArchiveFormat.LargestFile, $"the member “{member}” is larger than a database can keep");
        var bytes = new byte[entry.Length];
        await using var stream = entry.Open();
        await stream.ReadExactlyAsync(bytes, cancellationToken);
        return bytes;
    }

    public void Dispose() => _zip.Dispose();

    private static string Differing(IReadOnlyList<string> heads, ArchiveTable table)
    {
        var known = table.Columns.Select(column => column.Name).ToList();
        var differing = heads.Except(known).Select(head => $"“{head}” is not known").Concat(known.Except(heads).Select(name => $"{name} is missing")).Take(3).ToList();
        return differing.Count == 0 ? "in another order" : string.Join(", ", differing);
    }
}
