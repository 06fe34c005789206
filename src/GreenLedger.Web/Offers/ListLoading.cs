using GreenLedger.Data;
using GreenLedger.Data.Offers;
using GreenLedger.Documents.Offers;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Offers.Reading;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using GreenLedger.Web.Display;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Offers;

/// <summary>A list that was opened: its file, a first look, from whom it is, how it is to be read, and about how many rows it has.</summary>
public sealed record OpenedList(StoredFile File, ListFile Content, ListLook Look, ListReference Reference, ListSender Sender, OfferMapping Mapping, int Rows)
{
    /// <summary>A list with more rows than this is left to a node, and a page shows how far it is.</summary>
    public const int MostAtOnce = 3000;

    public bool IsLong => Rows > MostAtOnce;
}

/// <summary>
/// The way of a list from its bytes to the ledger, the same for the page, the API and a node's work: open, preview, store.
/// </summary>
public sealed class ListLoading(LedgerContext db, ListStore store, HouseZone house, TimeProvider clock) : IDisposable
{
    private const int Told = 500;

    private ListFile? _opened;

    public DateOnly Today => house.Today;

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
        _opened?.Dispose();
        _opened = ListFile.Open(file.Content!.Bytes);
        var reference = await store.ReferenceAsync(Today, cancellationToken);
        var look = ListLook.Of(_opened.Head.Lines, file.Name);
        var sender = await store.SenderAsync(supplier, look, reference, cancellationToken);
        return new OpenedList(file, _opened, look, reference, sender, mapping ?? await store.MappingAsync(sender, look, reference, cancellationToken), _opened.Head.Rows);
    }

    /// <summary>What the list would come to; nothing is stored.</summary>
    public async Task<ListOutcome> PreviewAsync(
        OpenedList list, DateOnly receivedOn, Id<Person> by, CancellationToken cancellationToken, Action<string, int>? report = null)
    {
        var reading = Read(list, report, cancellationToken);
        return OfferList.From(reading, await CaseAsync(list, receivedOn, by, cancellationToken));
    }

    /// <summary>
    /// Reads, compares and stores the list in one transaction. The second value is false when the list says nothing that
    /// the ledger does not know, and nothing was written.
    /// </summary>
    /// <param name="list">The list as it was opened.</param>
    /// <param name="receivedOn">The day it came.</param>
    /// <param name="by">Who loads it.</param>
    /// <param name="cancellationToken">Stops it; nothing is then stored.</param>
    /// <param name="report">Told now and then what is being done, and with how many rows.</param>
    /// <param name="stored">Told of each new offer when it is written.</param>
    public async Task<(ListOutcome Outcome, bool Stored)> StoreAsync(
        OpenedList list, DateOnly receivedOn, Id<Person> by, CancellationToken cancellationToken, Action<string, int>? report = null, Action<RowOutcome>? stored = null)
    {
        var reading = Read(list, report, cancellationToken);
        await using var transaction = await store.BeginAsync(list.Sender, cancellationToken);
        var theCase = await CaseAsync(list, receivedOn, by, cancellationToken);
        var outcome = OfferList.From(reading, theCase);
        var count = 0;
        var written = await store.SaveAsync(outcome, theCase, list.Sender, cancellationToken, row =>
        {
            stored?.Invoke(row);
            if (++count % Told == 0)
            {
                report?.Invoke("Storing offers", count);
            }
        });
        await transaction.CommitAsync(cancellationToken);
        return (outcome, written);
    }

    /// <summary>Leaves a long list to the nodes, to be stored or to be looked at. Whoever calls saves.</summary>
    public Job Order(OpenedList list, string? supplier, DateOnly receivedOn, Id<Person> by, string kind = ListWork.Load)
    {
        var name = string.IsNullOrWhiteSpace(supplier) ? list.Sender.Supplier.Name : supplier;
        var order = new ListOrder(list.File.Id.Value, name, receivedOn, list.Mapping.ToJson());
        var job = new Job(kind, order.ToJson(), by, clock.GetUtcNow());
        db.Jobs.Add(job);
        return job;
    }

    /// <summary>The newest list that this file was loaded as.</summary>
    public async Task<Id<OfferList>?> FindLoadedAsync(OpenedList list, CancellationToken cancellationToken)
    {
        var supplier = list.Sender.Supplier.Id;
        var found = await db.OfferLists.AsNoTracking().Where(one => one.SupplierId == supplier && one.FileHash == list.File.Sha256)
            .OrderByDescending(one => one.At).Select(one => one.Id).Take(1).ToListAsync(cancellationToken);
        return found.Count == 0 ? null : found[0];
    }

    /// <summary>Lets go of a list that was opened and never read.</summary>
    public void Dispose() => _opened?.Dispose();

    private static ListReading Read(OpenedList list, Action<string, int>? report, CancellationToken cancellationToken) =>
        ListReading.Of(list.Content.Read(), list.Mapping, list.Reference, count =>
        {
            cancellationToken.ThrowIfCancellationRequested();
            report?.Invoke("Reading rows", count);
        });

    private Task<ListCase> CaseAsync(OpenedList list, DateOnly receivedOn, Id<Person> by, CancellationToken cancellationToken) =>
        store.CaseAsync(list.Sender, list.File, list.Mapping, receivedOn, by, clock.GetUtcNow(), cancellationToken);
}
