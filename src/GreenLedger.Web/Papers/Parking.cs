using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Papers;

/// <summary>Files that were sent and wait for their sender's word, named by the address of their preview.</summary>
internal static class Parking
{
    public static async Task<byte[]> BytesAsync(this IFormFile file, CancellationToken cancellationToken)
    {
        using var bytes = new MemoryStream();
        await file.CopyToAsync(bytes, cancellationToken);
        return bytes.ToArray();
    }

    /// <summary>Keeps the file until something follows.</summary>
    public static async Task<Id<StoredFile>> ParkAsync(this LedgerContext db, IFormFile file, byte[] bytes, Id<Person> by, DateTimeOffset at, CancellationToken cancellationToken)
    {
        var parked = new StoredFile(file.FileName, file.ContentType ?? "application/octet-stream", bytes, by, at);
        db.Add(parked);
        await db.SaveChangesAsync(cancellationToken);
        return parked.Id;
    }

    /// <summary>The file with its bytes; null when it was swept or is another person's.</summary>
    public static Task<StoredFile?> ParkedAsync(this LedgerContext db, Id<StoredFile> id, Id<Person> by, CancellationToken cancellationToken) =>
        db.StoredFiles.AsNoTracking().Include(file => file.Content).SingleOrDefaultAsync(file => file.Id == id && file.By == by, cancellationToken);

    /// <summary>The file for good, parked or sent just now. Whoever calls saves.</summary>
    public static async Task<StoredFile> KeptAsync(
        this LedgerContext db, Id<StoredFile>? parkedId, string name, byte[] bytes, Id<Person> by, DateTimeOffset at, CancellationToken cancellationToken)
    {
        var file = parkedId is { } parked ? await db.StoredFiles.SingleAsync(one => one.Id == parked, cancellationToken) : null;
        if (file is null)
        {
            file = new StoredFile(name, "application/octet-stream", bytes, by, at);
            db.Add(file);
        }

        file.Keep();
        return file;
    }
}
