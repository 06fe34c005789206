using GreenLedger.Data.Cupping;
using GreenLedger.Data.People;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Papers;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Papers;

/// <summary>
/// Reads the history for somebody: rooms that the reader may not open give no names, and what is sealed for the reader
/// is not there.
/// </summary>
public sealed class HistoryQuery(LedgerContext db)
{
    /// <summary>
    /// What happened to one record and to what was written or laid on it, newest first; to every record of the kind where
    /// <paramref name="id"/> is empty. <paramref name="mayRead"/> says which rooms are open to the reader.
    /// </summary>
    public async Task<IReadOnlyList<HistoryRow>> OfAsync(
        string kind, string id, Func<string, bool> mayRead, Seal seal, CancellationToken cancellationToken)
    {
        var lists = await ListsOfAsync(kind, id, cancellationToken);
        var papers = await PapersOnAsync(kind, id, cancellationToken);
        var lines = await db.Changes.AsNoTracking()
            .Where(line => (line.RecordKind == kind && (id == "" || line.RecordId == id))
                || ((line.RecordKind == nameof(Note) || line.RecordKind == nameof(Attachment)) && papers.Contains(line.RecordId))
                || (line.RecordKind == "OfferList" && lists.Contains(line.RecordId)))
            .OrderByDescending(line => line.At).ThenByDescending(line => line.Id)
            .Take(200)
            .ToListAsync(cancellationToken);
        return seal.Covers(id) ? [] : await RowsAsync([.. lines.Where(line => !seal.Covers(line))], mayRead, seal, cancellationToken);
    }

    /// <summary>All lines that fit, newest first, one page of them; a sealed line keeps its place and says nothing.</summary>
    public async Task<IReadOnlyList<HistoryRow>> ListAsync(
        HistoryFilter filter, int skip, int take, Func<string, bool> mayRead, Seal seal, CancellationToken cancellationToken)
    {
        var lines = await Fitting(filter, await db.ZoneAsync(cancellationToken))
            .OrderByDescending(line => line.At).ThenByDescending(line => line.Id)
            .Skip(skip).Take(take)
            .ToListAsync(cancellationToken);
        return await RowsAsync(lines, mayRead, seal, cancellationToken);
    }

    public async Task<int> CountAsync(HistoryFilter filter, CancellationToken cancellationToken) =>
        await Fitting(filter, await db.ZoneAsync(cancellationToken)).CountAsync(cancellationToken);

    private IQueryable<Change> Fitting(HistoryFilter filter, ClockZone zone)
    {
        var lines = db.Changes.AsNoTracking();
        if (filter.By is { } by)
        {
            lines = lines.Where(line => line.By == by);
        }

        if (filter.Kind is { } kind)
        {
            lines = lines.Where(line => line.RecordKind == kind);
        }

        if (filter.From is { } from)
        {
            var start = zone.Begins(from);
            lines = lines.Where(line => line.At >= start);
        }

        if (filter.To is { } to && to < DateOnly.MaxValue)
        {
            var end = zone.Begins(to.AddDays(1));
            lines = lines.Where(line => line.At < end);
        }

        return lines;
    }

    /// <summary>The lists that an offer, or a lot's offers, came with: their lines say what their rows' lines would.</summary>
    private async Task<List<string>> ListsOfAsync(string kind, string id, CancellationToken cancellationToken)
    {
        if (!Guid.TryParse(id, out var value) || kind is not (nameof(Domain.Offers.Offer) or nameof(Domain.Offers.Lot)))
        {
            return [];
        }

        var offerId = new Domain.Id<Domain.Offers.Offer>(value);
        var lotId = new Domain.Id<Domain.Offers.Lot>(value);
        var lists = await db.Offers.Where(offer => offer.Id == offerId || offer.LotId == lotId)
            .SelectMany(offer => offer.Prices).Where(price => price.ListId != null)
            .Select(price => price.ListId!.Value).Distinct()
            .ToListAsync(cancellationToken);
        return [.. lists.Select(list => list.ToString())];
    }

    /// <summary>Notes and attachments on a record, the removed ones too.</summary>
    private async Task<List<string>> PapersOnAsync(string kind, string id, CancellationToken cancellationToken)
    {
        if (!Guid.TryParse(id, out var identity) || !Enum.TryParse<PapersOf>(kind, out var about) || !Enum.IsDefined(about))
        {
            return [];
        }

        var notes = await db.Notes.Where(note => note.About == about && note.AboutId == identity).Select(note => note.Id).ToListAsync(cancellationToken);
        var files = await db.Attachments.Where(file => file.About == about && file.AboutId == identity).Select(file => file.Id).ToListAsync(cancellationToken);
        return [.. notes.Select(note => note.ToString()), .. files.Select(file => file.ToString())];
    }

    private async Task<IReadOnlyList<HistoryRow>> RowsAsync(
        List<Change> lines, Func<string, bool> mayRead, Seal seal, CancellationToken cancellationToken)
    {
        var reader = new StoredMembers(db.Model);
        var members = lines.ToDictionary(line => line.Id, line => seal.Covers(line) ? [] : reader.Of(line.RecordKind, line.Before, line.After).ToList());
        var ids = members.Values.SelectMany(list => list).SelectMany(member => new[] { member.Before, member.After })
            .Concat(lines.Select(line => (object?)line.By))
            .Where(value => RecordNames.KindOf(value) is not null).Select(value => value!);
        var names = await new RecordNames(db).OfAsync(ids, mayRead, cancellationToken);
        return [.. lines.Select(line => new HistoryRow(
            seal.Covers(line) ? null : line,
            line.At,
            line.By is { } by ? names.GetValueOrDefault(by) : null,
            [.. members[line.Id].Select(member => Named(member, names))]))];
    }

    private static HistoryMember Named(HistoryMember member, IReadOnlyDictionary<object, string> names) =>
        member with { Before = Named(member.Before, names), After = Named(member.After, names) };

    private static object? Named(object? value, IReadOnlyDictionary<object, string> names) => RecordNames.KindOf(value) is { } kind
        ? names.TryGetValue(value!, out var name) ? name : $"another {RecordKinds.Words(kind.Name)}"
        : value;
}
