using GreenLedger.Domain;
using GreenLedger.Domain.Grading;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Grading;

/// <summary>Reads what the house grades by.</summary>
public static class Standards
{
    /// <summary>Every revision of the defect schemes and limits: a dozen small records.</summary>
    public static async Task<GradingStandards> GradingStandardsAsync(this LedgerContext db, CancellationToken cancellationToken) => new(
        (await db.SchemeRevisions.AsNoTracking().OrderBy(one => one.Revision).ToListAsync(cancellationToken)).Select(one => one.Scheme),
        (await db.LimitsRevisions.AsNoTracking().OrderBy(one => one.Revision).ToListAsync(cancellationToken)).Select(one => one.Limits));

    /// <exception cref="RuleBrokenException">The house made a newer revision of this scheme meanwhile.</exception>
    public static async Task RequireNewestAsync(this LedgerContext db, SchemeRevision found, CancellationToken cancellationToken) => RequireNewest(
        await db.SchemeRevisions.Where(one => one.Code == found.Code).MaxAsync(one => one.Revision, cancellationToken), found.Revision);

    /// <exception cref="RuleBrokenException">The house made a newer revision of these limits meanwhile.</exception>
    public static async Task RequireNewestAsync(this LedgerContext db, LimitsRevision found, CancellationToken cancellationToken) => RequireNewest(
        await db.LimitsRevisions.Where(one => one.Code == found.Code).MaxAsync(one => one.Revision, cancellationToken), found.Revision);

    private static void RequireNewest(int newest, int revision) =>
        Rule.Require(newest == revision, $"There is a newer revision ({newest}): change that one.");
}
