using System.IO.Compression;
using GreenLedger.Data.Archive;
using GreenLedger.Documents.Archive;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Tests.Archive;

/// <summary>Houses as archives, and back.</summary>
internal static class Archives
{
    public static readonly DateTimeOffset At = new(2026, 11, 26, 18, 0, 0, TimeSpan.Zero);

    private static CancellationToken Token => TestContext.Current.CancellationToken;

    public static async Task<MemoryStream> TakeAsync(Ledger ledger)
    {
        await using var db = ledger.Open();
        var about = await ArchiveSnapshot.AboutAsync(db, At, Token);
        var stream = new MemoryStream();
        await using var snapshot = await ArchiveSnapshot.OpenAsync(db, Token);
        await HouseArchive.WriteAsync(stream, snapshot, about, Token);
        stream.Position = 0;
        return stream;
    }

    /// <summary>Into a house that was prepared as a first start prepares it.</summary>
    public static async Task ReadBackAsync(Ledger ledger, Stream archive)
    {
        await using (var first = ledger.Open())
        {
            await LedgerDatabase.PrepareAsync(first, Token);
        }

        await using var db = ledger.Open();
        using var file = await ArchiveFile.OpenAsync(archive, Token);
        await using var transaction = await db.Database.BeginTransactionAsync(System.Data.IsolationLevel.Serializable, Token);
        await new HouseIntake(db).ReadBackAsync(file, Token);
        await transaction.CommitAsync(Token);
    }

    /// <summary>Every member with its bytes, by name.</summary>
    public static SortedDictionary<string, byte[]> Members(Stream archive)
    {
        archive.Position = 0;
        using var zip = new ZipArchive(archive, ZipArchiveMode.Read, leaveOpen: true);
        var members = new SortedDictionary<string, byte[]>(StringComparer.Ordinal);
        foreach (var entry in zip.Entries)
        {
            using var bytes = new MemoryStream();
            using var stream = entry.Open();
            stream.CopyTo(bytes);
            members.Add(entry.FullName, bytes.ToArray());
        }

        return members;
    }

    public static MemoryStream Zip(IEnumerable<(string Name, byte[] Bytes)> members)
    {
        var stream = new MemoryStream();
        using (var zip = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var (name, bytes) in members)
            {
                using var entry = zip.CreateEntry(name).Open();
                entry.Write(bytes);
            }
        }

        stream.Position = 0;
        return stream;
    }
}
