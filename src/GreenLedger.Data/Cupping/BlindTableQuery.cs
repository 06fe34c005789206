using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Cupping;

/// <summary>A sample as cuppers see it while the session is open: it has no member for lot, producer or price.</summary>
public sealed record BlindSampleRow(string Code, int Position, int Flight);

/// <summary>A cupper's own sheet on an open table, without a trace of what was in the cup.</summary>
public sealed record BlindSheet(int Version, SheetMarks Marks, IReadOnlyList<string> Descriptors, string? Note, decimal? StatedTotal, decimal Total);

/// <summary>An open table as cuppers see it.</summary>
public sealed record BlindTable(
    Id<CuppingSession> Id,
    string Title,
    DateOnly HeldOn,
    CuppingForm Form,
    int CupsPerSample,
    bool IsClosed,
    bool MayOpenKey,
    bool IsAlone,
    IReadOnlyList<BlindSampleRow> Samples,
    IReadOnlyDictionary<string, BlindSheet> Mine,
    IReadOnlyDictionary<string, int> SheetsByCode);

/// <summary>Reads a table for the eyes of cuppers.</summary>
public sealed class BlindTableQuery(LedgerContext db)
{
    /// <summary>Null when there is no such session.</summary>
    public async Task<BlindTable?> FindAsync(Id<CuppingSession> id, Id<Person>? cupper, CancellationToken cancellationToken)
    {
        var session = await db.CuppingSessions.AsNoTracking()
            .Include(session => session.Form)
            .Include(session => session.Samples.OrderBy(sample => sample.Position))
            .Include(session => session.Sheets)
            .Include(session => session.Panel)
            .AsSplitQuery()
            .SingleOrDefaultAsync(session => session.Id == id, cancellationToken);
        if (session is null)
        {
            return null;
        }

        var codes = session.Samples.ToDictionary(sample => (sample.SampleId, sample.Repeat), sample => sample.Code);
        return new BlindTable(
            session.Id,
            session.Title,
            session.HeldOn,
            session.Form,
            session.CupsPerSample,
            session.IsClosed,
            cupper is { } asking && session.MayOpenKey(asking),
            cupper is { } alone && session.IsAloneOf(alone),
            [.. (cupper is { } person ? session.ServedTo(person) : session.Samples).Select(sample => new BlindSampleRow(sample.Code, sample.Position, sample.Flight))],
            session.Sheets.Where(sheet => sheet.CupperId == cupper && cupper is not null && !sheet.IsPast)
                .ToDictionary(sheet => codes[(sheet.SampleId, sheet.Repeat)], Blind),
            session.Sheets.GroupBy(sheet => codes[(sheet.SampleId, sheet.Repeat)]).ToDictionary(group => group.Key, group => group.Count()));
    }

    private static BlindSheet Blind(ScoreSheet sheet) =>
        new(sheet.Version, sheet.Marks()!, sheet.Descriptors, sheet.Note, sheet.StatedTotal?.Points, sheet.Total.Points);
}
