using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Cupping;

/// <summary>Who looked behind the codes while the session was open.</summary>
public sealed record KeyOpeningRow(Id<Person> By, string Name, DateTimeOffset At);

/// <summary>What an earlier session said of a house reference, on the same form.</summary>
public sealed record ReferenceRow(Id<Sample> SampleId, Id<CuppingSession> SessionId, string Title, DateOnly HeldOn, Score Fitted);

/// <summary>A discussed score with the names of who wrote it down and who withdrew it.</summary>
public sealed record DiscussedRow(DiscussedScore Score, string By, string? WithdrawnBy = null);

/// <summary>A sheet as it was handed in before it was opened again, with the sheet that it became and who opened it.</summary>
public sealed record ReopenedRow(ScoreSheet Sheet, EarlierSheet Was, string By);

/// <summary>A closed session with everything that its result is read by.</summary>
/// <param name="Key">What stood under the codes, in the order of the table.</param>
/// <param name="Discussed">The oldest first; the last of a sample that was not withdrawn stands.</param>
/// <param name="Reopened">Sheets as they were before they were opened again, in the order in which that happened.</param>
/// <param name="References">Earlier results of the session's house references, the newest first.</param>
public sealed record ClosedSession(
    CuppingSession Session,
    DescriptiveRules? Descriptive,
    IReadOnlyList<TableSampleRow> Key,
    IReadOnlyList<KeyOpeningRow> Openings,
    IReadOnlyList<DiscussedRow> Discussed,
    IReadOnlyList<ReopenedRow> Reopened,
    IReadOnlyList<ReferenceRow> References)
{
    /// <summary>Keys and names of those who opened the key and scored.</summary>
    public IReadOnlyDictionary<string, string> NotBlind { get; } = Session.NotBlind()
        .ToDictionary(person => person.ToString(), person => Openings.First(opening => opening.By == person).Name);

    /// <summary>The discussed score that stands for a sample; null where none does.</summary>
    public DiscussedScore? DiscussedOf(Id<Sample> sample) => Discussed.LastOrDefault(row => row.Score.SampleId == sample && !row.Score.IsWithdrawn)?.Score;
}

/// <summary>Reads the result of a closed session.</summary>
public sealed class ResultQuery(LedgerContext db, SessionQuery sessions)
{
    /// <summary>Earlier results of a reference that a page lists.</summary>
    private const int MostEarlier = 20;

    /// <summary>Null where there is no such session, or it is still open.</summary>
    public async Task<ClosedSession?> FindAsync(Id<CuppingSession> id, CancellationToken cancellationToken)
    {
        var session = await db.CuppingSessions.AsNoTracking().Closed().Whole().SingleOrDefaultAsync(session => session.Id == id, cancellationToken);
        if (session is null)
        {
            return null;
        }

        var descriptive = session.DescriptiveFormId is { } form
            ? await db.DescriptiveForms.AsNoTracking().SingleAsync(one => one.Id == form, cancellationToken)
            : null;
        var names = await NamesAsync(session, cancellationToken);
        return new ClosedSession(
            session,
            descriptive?.Rules,
            await sessions.KeyAsync(id, cancellationToken),
            [.. session.KeyOpenings.OrderBy(opening => opening.At).Select(opening => new KeyOpeningRow(opening.By, names[opening.By], opening.At))],
            [.. session.Result!.Discussed.OrderBy(discussed => discussed.At).Select(discussed => new DiscussedRow(
                discussed, names[discussed.By], discussed.WithdrawnBy is { } by ? names[by] : null))],
            [.. session.Sheets.SelectMany(sheet => sheet.EarlierSheets.Select(was => new ReopenedRow(sheet, was, names[was.ReopenedBy]))).OrderBy(row => row.Was.ReopenedAt)],
            await ReferencesAsync(session, cancellationToken));
    }

    private Task<Dictionary<Id<Person>, string>> NamesAsync(CuppingSession session, CancellationToken cancellationToken)
    {
        var ids = session.KeyOpenings.Select(opening => opening.By).Concat(session.Result!.Discussed.Select(discussed => discussed.By))
            .Concat(session.Sheets.SelectMany(sheet => sheet.EarlierSheets).Select(was => was.ReopenedBy))
            .Concat(session.Result.Discussed.Select(discussed => discussed.WithdrawnBy).OfType<Id<Person>>()).Distinct().ToList();
        return db.People.Where(person => ids.Contains(person.Id)).ToDictionaryAsync(person => person.Id, person => person.Name, cancellationToken);
    }

    private async Task<IReadOnlyList<ReferenceRow>> ReferencesAsync(CuppingSession session, CancellationToken cancellationToken)
    {
        var samples = session.Samples.Where(sample => sample.IsReference).Select(sample => sample.SampleId).Distinct().ToList();
        return samples.Count == 0 ? [] : await db.SampleResults.AsNoTracking()
            .Where(result => samples.Contains(result.SampleId) && result.FormId == session.FormId && result.SessionId != session.Id && result.HeldOn <= session.HeldOn)
            .OrderByDescending(result => result.HeldOn).ThenByDescending(result => result.Id)
            .Take(MostEarlier)
            .Join(db.CuppingSessions, result => result.SessionId, earlier => earlier.Id, (result, earlier) => new ReferenceRow(
                result.SampleId, earlier.Id, earlier.Title, earlier.HeldOn, result.Fitted))
            .ToListAsync(cancellationToken);
    }
}
