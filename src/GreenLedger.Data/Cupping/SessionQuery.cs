using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Cupping;

/// <summary>What a list of sessions is narrowed to and sorted by.</summary>
public sealed record SessionFilter(string? Text = null, bool? IsClosed = null, string? Sort = null);

/// <summary>One session of a list.</summary>
public sealed record SessionRow(
    Id<CuppingSession> Id, string Title, DateOnly HeldOn, string FormName, int Samples, int Sheets, int Cuppers, DateTimeOffset? ClosedAt, bool IsPast);

/// <summary>What the cup said about one lot in one session.</summary>
public sealed record LotResultRow(
    Id<CuppingSession> SessionId, string Title, DateOnly HeldOn, string FormCode, string FormName, string LabelCode, SampleResult Result);

/// <summary>Lots and labels behind the samples of a session; never read for an open session outside its key.</summary>
public sealed record TableSampleRow(Id<Sample> SampleId, int Repeat, bool IsReference, int Flight, int Position, string Code, string LabelCode, Id<Lot> LotId, string LotRef, string LotName);

/// <summary>Lists of sessions and results.</summary>
public sealed class SessionQuery(LedgerContext db)
{
    /// <summary>Sessions whose codes are not used again.</summary>
    private const int Remembered = 20;

    public Task<int> CountAsync(SessionFilter filter, CancellationToken cancellationToken) =>
        Filtered(filter).CountAsync(cancellationToken);

    public async Task<IReadOnlyList<SessionRow>> ListAsync(SessionFilter filter, int skip, int take, CancellationToken cancellationToken) =>
        await Sorted(Filtered(filter), filter.Sort).Skip(skip).Take(take)
            .Select(session => new SessionRow(
                session.Id,
                session.Title,
                session.HeldOn,
                session.Form.Name,
                session.Samples.Count,
                session.Sheets.Count,
                session.Sheets.Select(sheet => sheet.CupperName).Distinct().Count(),
                session.ClosedAt,
                session.IsPast))
            .ToListAsync(cancellationToken);

    /// <summary>Results of a lot, the newest first.</summary>
    public async Task<IReadOnlyList<LotResultRow>> OfLotAsync(Id<Lot> lotId, CancellationToken cancellationToken) =>
        await db.SampleResults.AsNoTracking()
            .Where(result => result.LotId == lotId)
            .OrderByDescending(result => result.HeldOn).ThenByDescending(result => result.Id)
            .Join(db.CuppingSessions, result => result.SessionId, session => session.Id, (result, session) => new { result, session })
            .Join(db.Samples, pair => pair.result.SampleId, sample => sample.Id, (pair, sample) => new LotResultRow(
                pair.session.Id, pair.session.Title, pair.session.HeldOn, pair.session.Form.Code, pair.session.Form.Name, sample.LabelCode, pair.result))
            .ToListAsync(cancellationToken);

    /// <summary>Which sample and lot stand behind each code: for a closed session, or for its key.</summary>
    public async Task<IReadOnlyList<TableSampleRow>> KeyAsync(Id<CuppingSession> sessionId, CancellationToken cancellationToken) =>
        await db.CuppingSessions.AsNoTracking()
            .Where(session => session.Id == sessionId)
            .SelectMany(session => session.Samples)
            .Join(db.Samples, poured => poured.SampleId, sample => sample.Id, (poured, sample) => new { poured, sample })
            .Join(db.Lots, pair => pair.poured.LotId, lot => lot.Id, (pair, lot) => new { pair.poured, pair.sample, lot })
            .OrderBy(row => row.poured.Position)
            .Select(row => new TableSampleRow(
                row.poured.SampleId, row.poured.Repeat, row.poured.IsReference, row.poured.Flight, row.poured.Position, row.poured.Code, row.sample.LabelCode, row.lot.Id, row.lot.Ref, row.lot.Name))
            .ToListAsync(cancellationToken);

    /// <summary>Codes of the house's last sessions, which a new session does not use again.</summary>
    public async Task<IReadOnlyList<string>> RecentCodesAsync(CancellationToken cancellationToken)
    {
        var recent = await db.CuppingSessions.Where(session => !session.IsPast)
            .OrderByDescending(session => session.HeldOn).ThenByDescending(session => session.Id)
            .Take(Remembered).Select(session => session.Id).ToListAsync(cancellationToken);
        return await db.CuppingSessions.Where(session => recent.Contains(session.Id))
            .SelectMany(session => session.Samples).Select(sample => sample.Code).Distinct().ToListAsync(cancellationToken);
    }

    /// <summary>The sample that was last put on a table as the house reference; null while there was none.</summary>
    public async Task<Id<Sample>?> LastReferenceAsync(CancellationToken cancellationToken) =>
        await db.CuppingSessions.Where(session => session.Samples.Any(sample => sample.IsReference))
            .OrderByDescending(session => session.HeldOn).ThenByDescending(session => session.Id)
            .Select(session => session.Samples.Where(sample => sample.IsReference).OrderBy(sample => sample.Position).Select(sample => (Id<Sample>?)sample.SampleId).First())
            .FirstOrDefaultAsync(cancellationToken);

    private IQueryable<CuppingSession> Filtered(SessionFilter filter)
    {
        var sessions = db.CuppingSessions.AsNoTracking();
        if (SearchText.Of(filter.Text) is { Length: > 0 } words)
        {
            sessions = sessions.Where(session => session.SearchText.Contains(words));
        }

        return filter.IsClosed switch
        {
            true => sessions.Closed(),
            false => sessions.Open(),
            null => sessions,
        };
    }

    private static IQueryable<CuppingSession> Sorted(IQueryable<CuppingSession> sessions, string? sort) => sort switch
    {
        "title" => sessions.OrderBy(session => session.Title).ThenBy(session => session.Id),
        "-title" => sessions.OrderByDescending(session => session.Title).ThenByDescending(session => session.Id),
        "held" => sessions.OrderBy(session => session.HeldOn).ThenBy(session => session.Id),
        _ => sessions.OrderByDescending(session => session.HeldOn).ThenByDescending(session => session.Id),
    };
}
