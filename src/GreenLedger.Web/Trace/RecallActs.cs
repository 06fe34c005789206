using GreenLedger.Data;
using GreenLedger.Data.Trace;
using GreenLedger.Documents.Trace;
using GreenLedger.Domain;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Trace;
using GreenLedger.Web.Display;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Trace;

/// <summary>What page and API do alike with mock recalls.</summary>
public sealed class RecallActs(LedgerContext db, TraceQuery traces, HouseZone zone, TimeProvider clock)
{
    /// <summary>Starts the clock and saves; null where there is nothing to recall.</summary>
    public async Task<MockRecall?> StartAsync(TraceFrom from, Guid id, string? reason, Id<Person> by, CancellationToken cancellationToken)
    {
        if (await traces.FindAsync(from, id, cancellationToken) is not { } found)
        {
            return null;
        }

        await using var turn = await db.NumberAsync(cancellationToken);
        var recall = new MockRecall(await db.MockRecalls.Select(one => one.Ref).NextAsync('M', zone.Today, cancellationToken), from, id, found.Name, reason, by, clock.GetUtcNow());
        db.Add(recall);
        await db.SaveChangesAsync(cancellationToken);
        await turn.CommitAsync(cancellationToken);
        return recall;
    }

    /// <summary>What is found now; null where the coffee that was recalled is no longer in the ledger.</summary>
    public async Task<RecallFindings?> FindAsync(MockRecall recall, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(recall);
        return await traces.FindAsync(recall.From, recall.StartId, cancellationToken) is { } found ? RecallFindings.Of(found.Facts, found.Starts) : null;
    }

    /// <summary>The report of a recall, as found when it ended, else as of now; null where what was recalled is no longer there.</summary>
    public async Task<byte[]?> ReportAsync(RecallRow row, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(row);
        if ((row.Recall.Findings ?? await FindAsync(row.Recall, cancellationToken)) is not { } findings)
        {
            return null;
        }

        var name = await db.Houses.AsNoTracking().Select(one => one.Name).SingleOrDefaultAsync(cancellationToken) ?? "";
        using var stream = new MemoryStream();
        RecallPdf.Write(new RecallReport(name, zone.Zone, row.Recall, findings, row.StartedBy, row.EndedBy), stream);
        return stream.ToArray();
    }

    /// <summary>Stops the clock and freezes what is found; null for a recall that is not there. Whoever calls saves.</summary>
    public async Task<MockRecall?> EndAsync(Id<MockRecall> id, string? learned, Id<Person> by, CancellationToken cancellationToken)
    {
        if (await db.MockRecalls.SingleOrDefaultAsync(one => one.Id == id, cancellationToken) is not { } recall)
        {
            return null;
        }

        var findings = await FindAsync(recall, cancellationToken);
        Rule.Require(findings is not null, "What was recalled is no longer in the ledger.", nameof(MockRecall.StartId));
        recall.End(findings, learned, by, clock.GetUtcNow());
        return recall;
    }
}
