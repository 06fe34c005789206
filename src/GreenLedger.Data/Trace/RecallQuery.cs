using GreenLedger.Domain;
using GreenLedger.Domain.Trace;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Trace;

/// <summary>A mock recall with who held it.</summary>
public sealed record RecallRow(MockRecall Recall, string StartedBy, string? EndedBy);

/// <summary>Reads mock recalls.</summary>
public sealed class RecallQuery(LedgerContext db)
{
    public Task<int> CountAsync(CancellationToken cancellationToken) => db.MockRecalls.CountAsync(cancellationToken);

    /// <summary>The newest first.</summary>
    public async Task<IReadOnlyList<RecallRow>> ListAsync(int skip, int take, CancellationToken cancellationToken) =>
        await Rows(db.MockRecalls.AsNoTracking().OrderByDescending(recall => recall.StartedAt).ThenByDescending(recall => recall.Ref).Skip(skip).Take(take)).ToListAsync(cancellationToken);

    public Task<RecallRow?> FindAsync(Id<MockRecall> id, CancellationToken cancellationToken) => Rows(db.MockRecalls.AsNoTracking().Where(recall => recall.Id == id)).SingleOrDefaultAsync(cancellationToken);

    private IQueryable<RecallRow> Rows(IQueryable<MockRecall> recalls) => recalls.Select(recall => new RecallRow(
        recall, db.People.Where(person => person.Id == recall.StartedBy).Select(person => person.Name).First(), db.People.Where(person => person.Id == recall.EndedBy).Select(person => person.Name).FirstOrDefault()));
}
