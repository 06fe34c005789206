using GreenLedger.Data.Cupping;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Samples;

/// <summary>How far a sample has come; read from the records of grading and cupping.</summary>
public enum SampleStep
{
    Received = 0,
    Graded = 1,
    Cupped = 2,
}

/// <summary>What a list of samples is narrowed to and sorted by.</summary>
public sealed record SampleFilter(string? Text = null, SampleKind? Kind = null, SampleStep? Waiting = null, string? Sort = null);

/// <summary>One sample of a list, with the lot that it stands for and what the later rooms found.</summary>
public sealed record SampleRow(
    Id<Sample> Id,
    string LabelCode,
    SampleKind Kind,
    DateOnly ReceivedOn,
    Weight Weight,
    Id<Lot> LotId,
    string LotRef,
    string LotName,
    DateOnly? GradedOn,
    DateOnly? CuppedOn,
    Score? Fitted);

/// <summary>Lists of samples for the sample room and for laying out a session; samples sealed for the reader are left out.</summary>
public sealed class SampleQuery(LedgerContext db)
{
    public Task<int> CountAsync(SampleFilter filter, Seal seal, CancellationToken cancellationToken) =>
        Filtered(filter, seal).CountAsync(cancellationToken);

    public async Task<IReadOnlyList<SampleRow>> ListAsync(SampleFilter filter, Seal seal, int skip, int take, CancellationToken cancellationToken)
    {
        var rows = await Sorted(Filtered(filter, seal), filter.Sort).Skip(skip).Take(take)
            .Select(pair => new
            {
                pair.Sample,
                pair.Lot.Ref,
                pair.Lot.Name,
                GradedOn = db.GreenGrades.Where(grade => grade.SampleId == pair.Sample.Id).Max(grade => (DateOnly?)grade.GradedOn),
                Result = db.SampleResults.Where(result => result.SampleId == pair.Sample.Id)
                    .OrderByDescending(result => result.HeldOn)
                    .Select(result => new { result.HeldOn, result.Fitted.Millionths })
                    .FirstOrDefault(),
            })
            .ToListAsync(cancellationToken);
        return [.. rows.Select(row => new SampleRow(
            row.Sample.Id,
            row.Sample.LabelCode,
            row.Sample.Kind,
            row.Sample.ReceivedOn,
            row.Sample.Weight,
            row.Sample.LotId,
            row.Ref,
            row.Name,
            row.GradedOn,
            row.Result?.HeldOn,
            row.Result is { } result ? new Score(result.Millionths) : null))];
    }

    private IQueryable<SampleOfLot> Filtered(SampleFilter filter, Seal seal)
    {
        var samples = db.Samples.AsNoTracking().Join(db.Lots, sample => sample.LotId, lot => lot.Id, (sample, lot) => new SampleOfLot { Sample = sample, Lot = lot });
        if (!string.IsNullOrWhiteSpace(filter.Text))
        {
            var label = filter.Text.Trim().ToUpperInvariant();
            var folded = SearchText.Of(filter.Text);
            samples = samples.Where(pair => pair.Sample.LabelCode.Contains(label) || pair.Lot.SearchText.Contains(folded));
        }

        if (seal.Samples is { Count: > 0 } hidden)
        {
            samples = samples.Where(pair => !hidden.Contains(pair.Sample.Id));
        }

        if (filter.Kind is { } kind)
        {
            samples = samples.Where(pair => pair.Sample.Kind == kind);
        }

        return filter.Waiting switch
        {
            SampleStep.Graded => samples.Where(pair => !db.GreenGrades.Any(grade => grade.SampleId == pair.Sample.Id)),
            SampleStep.Cupped => samples.Where(pair => !db.CuppingSessions.Any(session =>
                session.Samples.Any(poured => poured.SampleId == pair.Sample.Id)
                && (session.ClosedAt == null || session.Sheets.Any(sheet => sheet.SampleId == pair.Sample.Id)))),
            _ => samples,
        };
    }

    private static IQueryable<SampleOfLot> Sorted(IQueryable<SampleOfLot> samples, string? sort) => sort switch
    {
        "label" => samples.OrderBy(pair => pair.Sample.LabelCode),
        "-label" => samples.OrderByDescending(pair => pair.Sample.LabelCode),
        "lot" => samples.OrderBy(pair => pair.Lot.Name).ThenBy(pair => pair.Sample.LabelCode),
        "-lot" => samples.OrderByDescending(pair => pair.Lot.Name).ThenBy(pair => pair.Sample.LabelCode),
        "received" => samples.OrderBy(pair => pair.Sample.ReceivedOn).ThenBy(pair => pair.Sample.LabelCode),
        _ => samples.OrderByDescending(pair => pair.Sample.ReceivedOn).ThenBy(pair => pair.Sample.LabelCode),
    };

    private sealed class SampleOfLot
    {
        public required Sample Sample { get; init; }

        public required Lot Lot { get; init; }
    }
}
