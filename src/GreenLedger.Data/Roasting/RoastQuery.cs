using GreenLedger.Data.Cupping;
using GreenLedger.Data.Samples;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Roasting;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Roasting;

/// <summary>One sample roast of a list.</summary>
public sealed record RoastRow(
    SampleRoast Roast, Id<Sample> SampleId, string LabelCode, string LotRef, string LotName, string? By, RoastWindows? Windows)
{
    /// <summary>What it missed of its protocol.</summary>
    public IReadOnlyList<RoastFinding> Missed =>
        Windows is null ? [] : [.. RoastCheck.Of(Roast, Windows).Where(finding => finding.Held == false)];
}

/// <summary>Lists of sample roasts; those of samples sealed for the reader are left out.</summary>
public sealed class RoastQuery(LedgerContext db)
{
    public Task<int> CountAsync(string? text, Seal seal, CancellationToken cancellationToken) => Filtered(text, seal).CountAsync(cancellationToken);

    public async Task<IReadOnlyList<RoastRow>> ListAsync(string? text, string? sort, Seal seal, int skip, int take, CancellationToken cancellationToken)
    {
        var roasts = Filtered(text, seal);
        roasts = sort == "roasted"
            ? roasts.OrderBy(row => row.Roast.RoastedAt).ThenBy(row => row.Roast.Id)
            : roasts.OrderByDescending(row => row.Roast.RoastedAt).ThenBy(row => row.Roast.Id);
        return await RowsAsync(roasts.Skip(skip).Take(take), cancellationToken);
    }

    /// <summary>Null when there is no such roast; whether it is sealed is the caller's to ask.</summary>
    public async Task<RoastRow?> FindAsync(Id<SampleRoast> id, CancellationToken cancellationToken) =>
        (await RowsAsync(Filtered(null, Seal.None).Where(row => row.Roast.Id == id), cancellationToken)).SingleOrDefault();

    private async Task<IReadOnlyList<RoastRow>> RowsAsync(IQueryable<RoastOfLot> roasts, CancellationToken cancellationToken)
    {
        var rows = await roasts
            .Select(row => new
            {
                row.Roast,
                row.Sample.LabelCode,
                row.LotRef,
                row.LotName,
                By = db.People.Where(person => person.Id == row.Roast.By).Select(person => person.Name).FirstOrDefault(),
            })
            .ToListAsync(cancellationToken);
        var protocols = await db.RoastProtocols.AsNoTracking().ToDictionaryAsync(protocol => protocol.Id, cancellationToken);
        return [.. rows.Select(row => new RoastRow(
            row.Roast, row.Roast.SampleId, row.LabelCode, row.LotRef, row.LotName, row.By,
            row.Roast.ProtocolId is { } id ? protocols.GetValueOrDefault(id)?.Windows : null))];
    }

    private IQueryable<RoastOfLot> Filtered(string? text, Seal seal)
    {
        var rows = db.SampleRoasts.AsNoTracking()
            .Join(db.Samples.Unsealed(seal), roast => roast.SampleId, sample => sample.Id, (roast, sample) => new { roast, sample })
            .Join(db.Lots, pair => pair.roast.LotId, lot => lot.Id, (pair, lot) => new { pair.roast, pair.sample, lot });
        if (!string.IsNullOrWhiteSpace(text))
        {
            var label = text.Trim().ToUpperInvariant();
            var folded = SearchText.Of(text);
            rows = rows.Where(row => row.sample.LabelCode.Contains(label) || row.lot.SearchText.Contains(folded));
        }

        return rows.Select(row => new RoastOfLot { Roast = row.roast, Sample = row.sample, LotRef = row.lot.Ref, LotName = row.lot.Name });
    }

    private sealed class RoastOfLot
    {
        public required SampleRoast Roast { get; init; }

        public required Sample Sample { get; init; }

        public required string LotRef { get; init; }

        public required string LotName { get; init; }
    }
}
