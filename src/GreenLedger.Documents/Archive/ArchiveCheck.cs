using System.IO.Compression;
using System.Text.Json;
using CsvHelper;
using GreenLedger.Domain;

namespace GreenLedger.Documents.Archive;

/// <summary>Whether an archive is whole: its members those that it lists, each with its hash, none larger than it says.</summary>
internal sealed class ArchiveCheck(ZipArchive zip, long size)
{
    private const int LongestManifest = 1_000_000;

    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web);

    public static CsvReader Csv(ZipArchiveEntry entry) => CsvReader.Create(entry.Open(), ArchiveFormat.Reading);

    /// <summary>The cells of the next line; null after the last.</summary>
    /// <exception cref="RuleBrokenException">It is no CSV.</exception>
    public static string[]? Next(CsvReader csv)
    {
        try
        {
            return csv.Read() ? [.. Enumerable.Range(0, csv.FieldCount).Select(csv.GetString)] : null;
        }
        catch (Exception broken) when (broken is CsvFormatException or InvalidDataException)
        {
            throw new RuleBrokenException($"after line {csv.RowNumber} it cannot be read as CSV ({broken.Message})", broken);
        }
    }

    /// <summary>What the archive says of itself, once its members have names that it can have and no more in them than it can hold.</summary>
    /// <exception cref="RuleBrokenException">It is no archive of a house, was made to do harm, or a newer ledger wrote it.</exception>
    public ArchiveManifest Manifest()
    {
        var manifest = zip.GetEntry(ArchiveFormat.Manifest);
        Rule.Require(manifest is { Length: <= LongestManifest }, "This is no archive of a house: it has no manifest.json.");
        foreach (var name in zip.Entries.Select(entry => entry.FullName))
        {
            Rule.Require(ArchiveFormat.IsMember(name), $"The archive has a member that none can have, “{name}”: it was changed after the ledger wrote it.");
        }

        var twice = zip.Entries.GroupBy(entry => entry.FullName).FirstOrDefault(same => same.Count() > 1);
        Rule.Require(twice is null, $"The archive has the member “{twice?.Key}” twice: it was changed after the ledger wrote it.");
        var swollen = zip.Entries.Aggregate(0m, (sum, entry) => sum + entry.Length);
        Rule.Require(swollen <= (decimal)size * ArchiveFormat.MostSwelling, $"The archive would swell to {swollen / 1_000_000m:0} MB: no house does, and nothing of it is read.");
        return Read(manifest);
    }

    /// <exception cref="RuleBrokenException">A member is missing, is too much, or is not as it was written.</exception>
    public async Task MembersAsync(ArchiveManifest manifest, CancellationToken cancellationToken)
    {
        var list = zip.GetEntry(ArchiveFormat.Members);
        Rule.Require(list is not null, "The archive has no members.csv.");
        await RequireAsync(list, list.Length, manifest.MembersSha256, cancellationToken);
        var listed = Listed(list);
        foreach (var member in listed)
        {
            var entry = zip.GetEntry(member.Name);
            Rule.Require(entry is not null, $"The archive lacks the member “{member.Name}”, which members.csv lists.");
            await RequireAsync(entry, member.Size, member.Sha256, cancellationToken);
        }

        var names = listed.Select(member => member.Name).ToHashSet();
        var unlisted = zip.Entries.FirstOrDefault(entry => entry.FullName is not (ArchiveFormat.Manifest or ArchiveFormat.Members) && !names.Contains(entry.FullName));
        Rule.Require(unlisted is null, $"The archive has a member “{unlisted?.FullName}” that members.csv does not list.");
    }

    private static ArchiveManifest Read(ZipArchiveEntry entry)
    {
        ArchiveManifest? manifest;
        try
        {
            using var stream = new CountedStream(entry.Open(), LongestManifest);
            manifest = JsonSerializer.Deserialize<ArchiveManifest>(stream, Json);
        }
        catch (JsonException broken)
        {
            throw new RuleBrokenException("The archive's manifest.json cannot be read.", broken);
        }

        Rule.Require(manifest is { Tables: not null, MembersSha256: not null, Format: >= 1 }, "The archive's manifest.json does not say what is in it.");
        Rule.Require(manifest.Format <= ArchiveFormat.Newest, $"The archive is in format {manifest.Format}, and this ledger reads up to {ArchiveFormat.Newest}: read it back with the newer version that wrote it.");
        return manifest;
    }

    private static async Task RequireAsync(ZipArchiveEntry entry, long size, string sha256, CancellationToken cancellationToken)
    {
        Rule.Require(entry.Length == size, $"The member “{entry.FullName}” is not as the archive says: {entry.Length} bytes where {size} are listed.");
        await using var stream = new CountedStream(entry.Open(), size);
        await stream.CopyToAsync(Stream.Null, cancellationToken);
        Rule.Require(stream.Count == size && stream.Sha256 == sha256, $"The member “{entry.FullName}” is not as it was written: its hash is another.");
    }

    private static List<ArchiveMember> Listed(ZipArchiveEntry list)
    {
        using var csv = Csv(list);
        var members = new List<ArchiveMember>();
        Next(csv);
        while (Next(csv) is { } cells)
        {
            Rule.Require(cells.Length == 4 && long.TryParse(cells[1], out _), $"The line {csv.RowNumber} of members.csv cannot be read.");
            members.Add(new ArchiveMember(cells[0], long.Parse(cells[1], System.Globalization.CultureInfo.InvariantCulture), cells[2], cells[3]));
        }

        return members;
    }
}
