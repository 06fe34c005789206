using GreenLedger.Data;
using GreenLedger.Data.Archive;
using GreenLedger.Data.Cupping;
using GreenLedger.Documents.Archive;
using GreenLedger.Domain;
using GreenLedger.Domain.Archive;
using GreenLedger.Domain.People;
using GreenLedger.Web.Hosting;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Archive;

/// <summary>An archive on its way to whoever took it; the file is gone when the stream is closed.</summary>
internal sealed record TakenArchive(Stream Stream, string FileName);

/// <summary>Takes the whole house along, which is written down: the archive says what open sessions keep from their panels.</summary>
internal sealed class HouseArchives(LedgerContext db, TimeProvider clock)
{
    /// <exception cref="RuleBrokenException">Whoever asks lays out, pours or cups in an open session.</exception>
    public async Task<TakenArchive> TakeAsync(Id<Person> by, CancellationToken cancellationToken)
    {
        var at = clock.GetUtcNow();
        await WriteDownAsync(by, at, cancellationToken);
        var about = await ArchiveSnapshot.AboutAsync(db, at, cancellationToken);
        var file = await PassingFile.WriteAsync(async stream =>
        {
            await using var snapshot = await ArchiveSnapshot.OpenAsync(db, cancellationToken);
            await HouseArchive.WriteAsync(stream, snapshot, about, cancellationToken);
        });
        return new TakenArchive(file, HouseArchive.FileName(about));
    }

    /// <summary>Whoever takes the archive could read the key of each open session: it counts as opened (docs/decisions/0012).</summary>
    private async Task WriteDownAsync(Id<Person> by, DateTimeOffset at, CancellationToken cancellationToken)
    {
        var open = await db.CuppingSessions.Open().Include(session => session.Panel).Include(session => session.KeyOpenings).AsSplitQuery().ToListAsync(cancellationToken);
        Rule.Require(
            !open.Exists(session => session.LaidOutBy == by || session.MemberOf(by) is not null),
            "You lay out, pour or cup in a session that is still open, and the archive says what is in its cups: take it once the session is closed.");
        open.ForEach(session => session.OpenKey(by, at));
        db.ArchiveTakings.Add(new ArchiveTaking(by, at));
        await db.SaveChangesAsync(cancellationToken);
    }
}
