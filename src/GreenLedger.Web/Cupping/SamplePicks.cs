using GreenLedger.Data.Cupping;
using GreenLedger.Data.Samples;
using GreenLedger.Domain;
using GreenLedger.Domain.Samples;

namespace GreenLedger.Web.Cupping;

/// <summary>Samples to choose from for a table: those not cupped yet, then the others, as many as a page takes, and above them what is chosen and not among those.</summary>
/// <param name="Total">How many there are that fit.</param>
/// <param name="Find">Part of a label, lot or origin that narrows them; null for all.</param>
internal sealed record SamplePicks(IReadOnlyList<SampleRow> Rows, int Total, string? Find)
{
    public static SamplePicks None { get; } = new([], 0, null);

    public static async Task<SamplePicks> OfAsync(
        SampleQuery query, string? find, IReadOnlyCollection<Id<Sample>> chosen, Seal seal, int most, CancellationToken cancellationToken)
    {
        IReadOnlyList<SampleRow> kept = chosen.Count == 0 ? [] : await query.ListAsync(new SampleFilter(Only: chosen), seal, 0, chosen.Count, cancellationToken);
        var waiting = await query.ListAsync(new SampleFilter(find, Waiting: SampleStep.Cupped), seal, 0, most, cancellationToken);
        var others = await query.ListAsync(new SampleFilter(find), seal, 0, most, cancellationToken);
        var listed = waiting.Concat(others).DistinctBy(row => row.Id).Take(most).ToList();
        return new SamplePicks(
            [.. kept.ExceptBy(listed.Select(row => row.Id), row => row.Id), .. listed],
            await query.CountAsync(new SampleFilter(find), seal, cancellationToken),
            string.IsNullOrWhiteSpace(find) ? null : find.Trim());
    }
}
