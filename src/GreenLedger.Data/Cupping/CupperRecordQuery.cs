using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Cupping;

/// <summary>Somebody who handed in sheets in closed sessions.</summary>
public sealed record CupperRow(Id<Person> Id, string Name, int Sessions, int Sheets, DateOnly LastHeldOn);

/// <summary>A form that a cupper has cupped on, and in how many closed sessions.</summary>
public sealed record CuppedFormRow(Id<CuppingForm> Id, string Name, int Revision, int Sessions);

/// <summary>
/// Reads what cuppers did over time. A session in which the cupper had opened the key, or knew the coffee anyhow, says
/// nothing about the cupper and is left out.
/// </summary>
public sealed class CupperRecordQuery(LedgerContext db)
{
    /// <summary>Everybody with a sheet in a closed session of the house, by name.</summary>
    public async Task<IReadOnlyList<CupperRow>> CuppersAsync(CancellationToken cancellationToken)
    {
        var rows = await db.CuppingSessions.AsNoTracking().Closed()
            .SelectMany(session => session.Sheets.Where(sheet => sheet.CupperId != null), (session, sheet) => new { session.Id, session.HeldOn, sheet.CupperId })
            .GroupBy(row => new { row.CupperId, row.Id, row.HeldOn })
            .Select(group => new { group.Key.CupperId, group.Key.HeldOn, Sheets = group.Count() })
            .ToListAsync(cancellationToken);
        var ids = rows.Select(row => row.CupperId!.Value).Distinct().ToList();
        var names = await db.People.Where(person => ids.Contains(person.Id)).ToDictionaryAsync(person => person.Id, person => person.Name, cancellationToken);
        return [.. rows.GroupBy(row => row.CupperId!.Value)
            .Select(group => new CupperRow(group.Key, names[group.Key], group.Count(), group.Sum(row => row.Sheets), group.Max(row => row.HeldOn)))
            .OrderBy(row => row.Name, StringComparer.OrdinalIgnoreCase)];
    }

    /// <summary>The forms of a cupper's record, the one with most sessions first.</summary>
    public async Task<IReadOnlyList<CuppedFormRow>> FormsAsync(Id<Person> cupper, CancellationToken cancellationToken)
    {
        var counts = await Cupped(cupper).GroupBy(session => session.FormId)
            .Select(group => new { FormId = group.Key, Sessions = group.Count() }).ToListAsync(cancellationToken);
        var ids = counts.Select(count => count.FormId).ToList();
        var forms = await db.CuppingForms.AsNoTracking().Where(form => ids.Contains(form.Id)).ToListAsync(cancellationToken);
        return [.. counts.Join(forms, count => count.FormId, form => form.Id, (count, form) => new CuppedFormRow(form.Id, form.Name, form.Revision, count.Sessions))
            .OrderByDescending(row => row.Sessions).ThenBy(row => row.Name, StringComparer.Ordinal).ThenBy(row => row.Revision)];
    }

    /// <summary>The closed sessions on this form that the cupper scored in, with everybody's scores.</summary>
    public async Task<IReadOnlyList<CuppedSession>> HistoryAsync(Id<Person> cupper, Id<CuppingForm> form, CancellationToken cancellationToken)
    {
        var sessions = await Cupped(cupper).Where(session => session.FormId == form)
            .Include(session => session.Samples.OrderBy(sample => sample.Position))
            .Include(session => session.Sheets)
            .AsSplitQuery()
            .ToListAsync(cancellationToken);
        return [.. sessions.Select(session => Of(session, cupper.ToString()))];
    }

    /// <summary>The rule with what each cupper of a session is held against: the record on the session's form.</summary>
    /// <param name="session">With its sheets.</param>
    public async Task<PanelWeights> WeightsAsync(CuppingSession session, CupperWeights rule, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(session);
        ArgumentNullException.ThrowIfNull(rule);
        var records = new Dictionary<string, Repeatability>();
        foreach (var cupper in session.Sheets.Select(sheet => sheet.CupperId).OfType<Id<Person>>().Distinct())
        {
            var history = await HistoryAsync(cupper, session.FormId, cancellationToken);
            if (CupperRecord.Of(history).Repeatability is { } repeatability)
            {
                records[cupper.ToString()] = repeatability;
            }
        }

        return new PanelWeights(rule, records);
    }

    private static CuppedSession Of(CuppingSession session, string cupper)
    {
        var scores = SessionScores.Of(session);
        return new CuppedSession(session.Id, session.Title, session.HeldOn, scores.Scores, scores.Cuppers.ToList().IndexOf(cupper));
    }

    private IQueryable<CuppingSession> Cupped(Id<Person> cupper) => db.CuppingSessions.AsNoTracking().Closed()
        .Where(session => session.Blinding != Blinding.Open
            && session.Sheets.Any(sheet => sheet.CupperId == cupper)
            && !session.KeyOpenings.Any(opening => opening.By == cupper && session.Sheets.Any(sheet => sheet.CupperId == cupper && sheet.WrittenAt >= opening.At)));
}
