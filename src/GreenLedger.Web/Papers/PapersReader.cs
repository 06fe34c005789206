using GreenLedger.Data;
using GreenLedger.Data.Papers;
using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Certificates;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;
using GreenLedger.Domain.Shipments;
using GreenLedger.Web.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Papers;

/// <summary>Reads attachments, notes and history for whoever asks, within what that person may be told.</summary>
internal sealed class PapersReader(LedgerContext db, HistoryQuery history, Reader reader)
{
    /// <summary>Null where the record is not there, or not for this reader.</summary>
    public async Task<string?> FindNameAsync(PapersOn on, CancellationToken cancellationToken)
    {
        if (!await MayReadAsync(on))
        {
            return null;
        }

        return on.About switch
        {
            PapersOf.Lot => await db.Lots.Where(lot => lot.Id == new Id<Lot>(on.Id)).Select(lot => lot.Name).FirstOrDefaultAsync(cancellationToken),
            PapersOf.Offer => await db.Offers.Where(offer => offer.Id == new Id<Offer>(on.Id)).Select(offer => offer.Ref).FirstOrDefaultAsync(cancellationToken),
            PapersOf.Arrival => await db.Arrivals.Where(arrival => arrival.Id == new Id<Arrival>(on.Id)).Join(db.Lots, arrival => arrival.LotId, lot => lot.Id, (_, lot) => lot.Name).FirstOrDefaultAsync(cancellationToken),
            PapersOf.Shipment => await db.Shipments.Where(shipment => shipment.Id == new Id<Shipment>(on.Id)).Select(shipment => shipment.Ref).FirstOrDefaultAsync(cancellationToken),
            PapersOf.Certificate => await db.Certificates.Where(certificate => certificate.Id == new Id<Certificate>(on.Id)).Select(certificate => certificate.Number).FirstOrDefaultAsync(cancellationToken),
            PapersOf.Contract => await db.Contracts.Where(contract => contract.Id == new Id<Contract>(on.Id)).Select(contract => contract.Ref).FirstOrDefaultAsync(cancellationToken),
            _ => await db.Samples.Where(sample => sample.Id == new Id<Sample>(on.Id)).Select(sample => sample.LabelCode).FirstOrDefaultAsync(cancellationToken),
        };
    }

    public async Task<bool> MayReadAsync(PapersOn on) =>
        reader.MayRead(on.Area) && !(await reader.SealAsync()).Covers(on.Id);

    public async Task<bool> MayWriteAsync(PapersOn on) => reader.MayWrite(on.Area) && await MayReadAsync(on);

    public async Task<IReadOnlyList<Attachment>> AttachmentsAsync(PapersOn on, CancellationToken cancellationToken) =>
        await MayReadAsync(on) ? await db.Attachments.AsNoTracking().On(on.About, on.Id).ToListAsync(cancellationToken) : [];

    /// <summary>An attachment's file with its bytes; null where it is not there, was removed, or is not for this reader.</summary>
    public async Task<StoredFile?> FindFileAsync(Id<Attachment> id, CancellationToken cancellationToken)
    {
        var attachment = await db.Attachments.AsNoTracking().FirstOrDefaultAsync(one => one.Id == id, cancellationToken);
        return attachment is not { IsRemoved: false } || !await MayReadAsync(new PapersOn(attachment.About, attachment.AboutId))
            ? null
            : await db.StoredFiles.AsNoTracking().Include(file => file.Content)
                .FirstOrDefaultAsync(file => file.Id == attachment.StoredFileId, cancellationToken);
    }

    public async Task<IReadOnlyList<Note>> NotesAsync(PapersOn on, CancellationToken cancellationToken) =>
        await MayReadAsync(on) ? await db.Notes.AsNoTracking().On(on.About, on.Id).ToListAsync(cancellationToken) : [];

    /// <summary>What happened to a record; a note or a file tells no more than the record it is on may tell.</summary>
    public async Task<IReadOnlyList<HistoryRow>> HistoryAsync(RecordOf record, CancellationToken cancellationToken) =>
        await OnAsync(record, cancellationToken) is { } on && !await MayReadAsync(on)
            ? []
            : await history.OfAsync(record.Kind, record.Id, reader.MayRead, await reader.SealAsync(), cancellationToken);

    private async Task<PapersOn?> OnAsync(RecordOf record, CancellationToken cancellationToken) =>
        !Guid.TryParse(record.Id, out var id) ? null : record.Kind switch
        {
            nameof(Note) => await db.Notes.Where(note => note.Id == new Id<Note>(id)).Select(note => new PapersOn(note.About, note.AboutId)).FirstOrDefaultAsync(cancellationToken),
            nameof(Attachment) => await db.Attachments.Where(file => file.Id == new Id<Attachment>(id)).Select(file => new PapersOn(file.About, file.AboutId)).FirstOrDefaultAsync(cancellationToken),
            _ => null,
        };

    /// <summary>The names of those who wrote.</summary>
    public async Task<IReadOnlyDictionary<Id<Person>, string>> NamesAsync(
        IEnumerable<Id<Person>> people, CancellationToken cancellationToken)
    {
        var asked = people.Distinct().ToList();
        return await db.People.AsNoTracking().Where(person => asked.Contains(person.Id))
            .ToDictionaryAsync(person => person.Id, person => person.Name, cancellationToken);
    }
}
