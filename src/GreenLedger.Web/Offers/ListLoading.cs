using GreenLedger.Data;
using GreenLedger.Data.Offers;
using GreenLedger.Documents.Offers;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Offers.Reading;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Offers;

/// <summary>A list that was opened: its bytes, a first look, from whom it is, and how it is to be read.</summary>
public sealed record OpenedList(StoredFile File, byte[] Bytes, ListLook Look, ListReference Reference, ListSender Sender, OfferMapping Mapping);

/// <summary>
/// The way of a list from its bytes to the ledger, the same for the page, the API and a node's work: open, preview, store.
/// </summary>
public sealed class ListLoading(LedgerContext db, ListStore store, TimeProvider clock)
{
    /// <summary>Lists with more rows than this are left to a node, and the page shows its progress.</summary>
    public const int LongList = 3000;

    public DateOnly Today => DateOnly.FromDateTime(clock.GetUtcNow().UtcDateTime);

    /// <summary>Parks a file as received; the same file parked or kept before is taken again. Whoever calls saves.</summary>
    public async Task<StoredFile> ParkAsync(string name, string contentType, byte[] bytes, Id<Person> by, CancellationToken cancellationToken)
    {
        var file = new StoredFile(name, contentType, bytes, by, clock.GetUtcNow());
        var same = await db.StoredFiles.FirstOrDefaultAsync(
            one => one.Sha256 == file.Sha256 && one.Name == file.Name && (one.IsParked || db.OfferLists.Any(list => list.StoredFileId == one.Id)),
            cancellationToken);
        if (same is not null)
        {
            return same;
        }

        db.StoredFiles.Add(file);
        return file;
    }

    /// <summary>A parked or kept file with its bytes; null when it was swept or is none of a list.</summary>
    public async Task<StoredFile?> FindFileAsync(Id<StoredFile> id, CancellationToken cancellationToken) =>
        await db.StoredFiles.AsNoTracking().Include(file => file.Content)
            .SingleOrDefaultAsync(file => file.Id == id && (file.IsParked || db.OfferLists.Any(list => list.StoredFileId == id)), cancellationToken);

    /// <summary>Looks at the list and finds its sender and mapping, unless they are given.</summary>
    public async Task<OpenedList> OpenAsync(StoredFile file, string? supplier, OfferMapping? mapping, CancellationToken cancellationToken)
    {
        var bytes = file.Content!.Bytes;
        var reference = await store.ReferenceAsync(Today, cancellationToken);
        var look = ListLook.Of(OfferWorkbook.Read(bytes), file.Name);
        var sender = await store.SenderAsync(supplier, look, reference, cancellationToken);
        return new OpenedList(file, bytes, look, reference, sender, mapping ?? await store.MappingAsync(sender, look, reference, cancellationToken));
    }

    /// <summary>What the list would come to; nothing is stored.</summary>
    public async Task<ListOutcome> PreviewAsync(OpenedList list, DateOnly receivedOn, Id<Person> by, CancellationToken cancellationToken)
    {
        var reading = ListReading.Of(OfferWorkbook.Read(list.Bytes), list.Mapping, list.Reference);
        return OfferList.From(reading, await CaseAsync(list, receivedOn, by, cancellationToken));
    }

    /// <summary>
    /// Reads, compares and stores the list in one transaction. The second value is false when the list says nothing that
    /// the ledger does not know, and nothing was written.
    /// </summary>
    public async Task<(ListOutcome Outcome, bool Stored)> StoreAsync(
        OpenedList list, DateOnly receivedOn, Id<Person> by, CancellationToken cancellationToken, Action<string, int>? report = null)
    {
        var reading = ListReading.Of(OfferWorkbook.Read(list.Bytes), list.Mapping, list.Reference, count => report?.Invoke("Reading rows", count));
        report?.Invoke("Storing offers", reading.Rows.Count);
        await using var transaction = await store.BeginAsync(list.Sender, cancellationToken);
        var theCase = await CaseAsync(list, receivedOn, by, cancellationToken);
        var outcome = OfferList.From(reading, theCase);
        var stored = await store.SaveAsync(outcome, theCase, list.Sender, cancellationToken);
        await transaction.CommitAsync(cancellationToken);
        return (outcome, stored);
    }

    private Task<ListCase> CaseAsync(OpenedList list, DateOnly receivedOn, Id<Person> by, CancellationToken cancellationToken) =>
        store.CaseAsync(list.Sender, list.File, list.Mapping, receivedOn, by, clock.GetUtcNow(), cancellationToken);
}
