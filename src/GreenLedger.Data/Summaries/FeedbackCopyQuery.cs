using GreenLedger.Data.Cupping;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Summaries;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Summaries;

/// <summary>What a supplier was told, in a list.</summary>
public sealed record FeedbackCopyRow(Id<FeedbackCopy> Id, Id<Supplier> SupplierId, string Supplier, string Language, bool IsMailed, int Lots, string Who, DateTimeOffset At);

/// <summary>Reads what suppliers were told, the newest first; a copy about a coffee that is sealed from the reader is not among them.</summary>
public sealed class FeedbackCopyQuery(LedgerContext db)
{
    private const int Most = 100;

    /// <param name="record">A supplier or a lot.</param>
    /// <param name="seal">What is kept from the reader.</param>
    /// <param name="cancellationToken">Stops the reading.</param>
    public async Task<IReadOnlyList<FeedbackCopyRow>> AboutAsync(Guid record, Seal seal, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(seal);
        var supplier = new Id<Supplier>(record);
        var found = await db.FeedbackCopies.AsNoTracking().Where(copy => copy.SupplierId == supplier || copy.LotIds.Contains(record))
            .OrderByDescending(copy => copy.At).Take(Most)
            .Join(db.Suppliers, copy => copy.SupplierId, one => one.Id, (copy, one) => new { copy, one.Name })
            .Join(db.People, row => row.copy.By, person => person.Id, (row, person) => new { row.copy, row.Name, Who = person.Name })
            .ToListAsync(cancellationToken);
        return [.. found.Where(row => !row.copy.LotIds.Any(seal.Covers)).OrderByDescending(row => row.copy.At)
            .Select(row => new FeedbackCopyRow(row.copy.Id, row.copy.SupplierId, row.Name, row.copy.Language, row.copy.IsMailed, row.copy.LotIds.Count, row.Who, row.copy.At))];
    }

    /// <summary>The file with its bytes; null where there is none, or none for this reader.</summary>
    public async Task<(string Name, byte[] Bytes)?> FileAsync(Id<FeedbackCopy> id, Seal seal, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(seal);
        var copy = await db.FeedbackCopies.AsNoTracking().SingleOrDefaultAsync(one => one.Id == id, cancellationToken);
        if (copy is null || copy.LotIds.Any(seal.Covers))
        {
            return null;
        }

        var file = await db.StoredFiles.AsNoTracking().Include(one => one.Content).SingleAsync(one => one.Id == copy.StoredFileId, cancellationToken);
        return (file.Name, file.Content!.Bytes);
    }
}
