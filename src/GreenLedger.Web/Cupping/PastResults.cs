using GreenLedger.Data;
using GreenLedger.Data.People;
using GreenLedger.Data.Samples;
using GreenLedger.Documents.Offers;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Cupping.Reading;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;
using GreenLedger.Web.Api;
using GreenLedger.Web.Papers;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Cupping;

/// <summary>A file of past results, read and judged; nothing of it is stored yet.</summary>
public sealed record PastPreview(
    string FileName, byte[] Bytes, Id<StoredFile>? ParkedId, ResultList List, IReadOnlyDictionary<string, KnownSample> Known, bool IsAlreadyTaken);

/// <summary>Takes past results in, for the page and for the API alike.</summary>
public sealed class PastResults(LedgerContext db, KnownSampleQuery known, TimeProvider clock)
{
    private const string Panel = "Panel";

    /// <exception cref="RuleBrokenException">The file cannot be read, or lacks an attribute of the form.</exception>
    public async Task<PastPreview> ReadAsync(
        IFormFile file, string? form, IReadOnlyDictionary<string, string> corrections, CancellationToken cancellationToken) =>
        await ReadAsync(file.FileName, await file.BytesAsync(cancellationToken), null, form, corrections, cancellationToken);

    /// <summary>The parked file again, with the mapping as it was corrected; null when it was swept.</summary>
    public async Task<PastPreview?> ReadParkedAsync(
        Id<StoredFile> id, Id<Person> by, string? form, IReadOnlyDictionary<string, string> corrections, CancellationToken cancellationToken) =>
        await db.ParkedAsync(id, by, cancellationToken) is { Content: { } content } parked
            ? await ReadAsync(parked.Name, content.Bytes, parked.Id, form, corrections, cancellationToken)
            : null;

    /// <summary>The lines and proposed columns of a file that this person parked; null when it was swept.</summary>
    public async Task<ResultTable?> TableAsync(Id<StoredFile> id, Id<Person> by, CancellationToken cancellationToken) =>
        await db.ParkedAsync(id, by, cancellationToken) is { Content: { } content }
            ? ResultTable.Of(HouseTable.Read(content.Bytes))
            : null;

    /// <summary>Keeps the file until something follows; the preview's address names it.</summary>
    public async Task<Id<StoredFile>> ParkAsync(IFormFile file, Id<Person> by, CancellationToken cancellationToken)
    {
        var bytes = await file.BytesAsync(cancellationToken);
        ResultTable.Of(HouseTable.Read(bytes));
        return await db.ParkAsync(file, bytes, by, clock.GetUtcNow(), cancellationToken);
    }

    /// <summary>Stores the accepted rows in one go; a file that was taken before stores nothing and gives null.</summary>
    public async Task<PastTaking?> StoreAsync(PastPreview preview, DateOnly? heldOn, Id<Person> by, CancellationToken cancellationToken)
    {
        // Of two that send one file at the same moment, the second finds what the first has stored.
        await using var transaction = await db.Database.BeginTransactionAsync(System.Data.IsolationLevel.Serializable, cancellationToken);
        if (preview.IsAlreadyTaken || await IsTakenAsync(preview.Bytes, cancellationToken))
        {
            return null;
        }

        var now = clock.GetUtcNow();
        var file = await db.KeptAsync(preview.ParkedId, preview.FileName, preview.Bytes, by, now, cancellationToken);
        var labels = await db.Samples.Select(sample => sample.LabelCode).ToListAsync(cancellationToken);
        var facts = new PastCase(
            preview.FileName, heldOn ?? (await db.ZoneAsync(cancellationToken)).Day(now), file.Id, by, now, await Errors.ExpectedAsync(db, cancellationToken), Random.Shared);
        var taking = PastTaking.Of(preview.List, preview.Known, new LabelCodes(labels, Random.Shared), facts);
        db.AddRange(taking.NewLots);
        db.AddRange(taking.NewSamples);
        db.AddRange(taking.Sessions);
        db.AddRange(Grades(preview, taking, facts));
        await db.SaveChangesAsync(cancellationToken);
        await transaction.CommitAsync(cancellationToken);
        return taking;
    }

    private async Task<PastPreview> ReadAsync(
        string name, byte[] bytes, Id<StoredFile>? parkedId, string? form, IReadOnlyDictionary<string, string> corrections, CancellationToken cancellationToken)
    {
        var table = ResultTable.Of(HouseTable.Read(bytes));
        table = table with { Mapping = table.Mapping.With(corrections) };
        var chosen = string.IsNullOrWhiteSpace(form)
            ? ResultList.Guess(table.Mapping, await NewestAsync(cancellationToken))
            : await CuppingApi.FindFormAsync(db, form, cancellationToken);
        var list = ResultList.From(table, chosen, Panel);
        var taken = await IsTakenAsync(bytes, cancellationToken);
        var names = await known.FindAsync(list.Accepted.Select(row => row.Name), cancellationToken);
        return new PastPreview(name, bytes, parkedId, list.Without(names.Unclear, table), names.Known, taken);
    }

    private async Task<bool> IsTakenAsync(byte[] bytes, CancellationToken cancellationToken)
    {
        var hash = Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(bytes));
        return await db.CuppingSessions.AnyAsync(session => db.StoredFiles.Any(file => file.Id == session.SourceId && file.Sha256 == hash), cancellationToken);
    }

    /// <summary>The newest revision of each form, the 100-point form first.</summary>
    private async Task<IReadOnlyList<CuppingForm>> NewestAsync(CancellationToken cancellationToken) =>
        [.. (await db.CuppingForms.ToListAsync(cancellationToken)).GroupBy(form => form.Code).OrderBy(group => group.Key).Select(group => group.MaxBy(form => form.Revision)!)];

    /// <summary>Physical figures of a row become a grade of its sample; one grade for each sample.</summary>
    private static IEnumerable<GreenGrade> Grades(PastPreview preview, PastTaking taking, PastCase facts) =>
        preview.List.Accepted.Where(row => !row.Physical.IsEmpty).DistinctBy(row => row.Name, StringComparer.OrdinalIgnoreCase).Select(row =>
        {
            var sample = taking.SampleOf(row.Name);
            var physical = row.Physical;
            return new GreenGrade(sample.Id, sample.LotId, row.HeldOn ?? facts.HeldOn, null, GreenGrade.UsualSample, $"Taken in from {preview.FileName}.")
                .Measure(
                    physical.MoisturePercent is { } moisture ? Percent.Of(moisture) : null,
                    null,
                    physical.WaterActivity is { } activity ? WaterActivity.Of(activity) : null,
                    null)
                .StateDefects(Defects(physical.Category1), Defects(physical.Category2))
                .Roast(physical.Quakers, null);
        });

    private static FullDefects? Defects(decimal? count) => count is { } full ? FullDefects.Of(full) : null;
}
