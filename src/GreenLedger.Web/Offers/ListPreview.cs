using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;

namespace GreenLedger.Web.Offers;

/// <summary>
/// What a list would come to, as a page shows it: how many rows of each kind, and the first of them. A node that looked at
/// a long list leaves it with its job, so that any node can show it.
/// </summary>
public sealed record ListPreview(
    int Accepted, int Revised, int Unchanged, int SetAside, bool IsRepeat, IReadOnlyList<PreviewedOffer> Offers, IReadOnlyList<PreviewedFault> Faults)
{
    /// <summary>How many offers, and how many rows set aside, are shown.</summary>
    public const int Shown = 200;

    public int Known => Accepted + Revised + Unchanged;

    public static ListPreview Of(ListOutcome outcome) => new(
        outcome.Accepted.Count,
        outcome.Revised.Count,
        outcome.Unchanged.Count,
        outcome.SetAside.Count,
        outcome.IsRepeat,
        [
            .. First(outcome.Accepted, "new").Concat(First(outcome.Revised, "revised")).Concat(First(outcome.Unchanged, "unchanged"))
                .OrderBy(offer => offer.RowNumber).Take(Shown),
        ],
        [.. outcome.SetAside.Take(Shown).Select(row => PreviewedFault.Of(row.Line, row.Problem.Message))]);

    public string ToJson() => FrozenJson.Write(this);

    public static ListPreview FromJson(string json) => FrozenJson.Read<ListPreview>(json);

    private static IEnumerable<PreviewedOffer> First(IEnumerable<RowOutcome> rows, string word) => rows.Take(Shown).Select(row => PreviewedOffer.Of(row, word));
}

/// <summary>One row of a list that is an offer: new, revised or unchanged.</summary>
public sealed record PreviewedOffer(
    int RowNumber, string Word, string Ref, string Lot, string? Process, Score? StatedScore, Weight Quantity, Asking Asked, Asking? Before, OfferState State)
{
    public static PreviewedOffer Of(RowOutcome row, string word) => new(
        row.Row.RowNumber,
        word,
        row.Offer.Ref,
        row.Lot.Name,
        row.Row.Process?.Name ?? row.Lot.ProcessAsWritten,
        row.Offer.StatedScore,
        row.Offer.Quantity,
        new Asking(row.Offer.Price, row.Offer.Differential),
        row.Before,
        row.Offer.State);
}

/// <summary>One row that would be set aside, with the sentence about it and its cells as received.</summary>
public sealed record PreviewedFault(int RowNumber, string Reason, string AsReceived)
{
    public static PreviewedFault Of(OfferLine line, string reason) =>
        new(line.RowNumber, reason, string.Join(" · ", line.Cells.Where(cell => !cell.IsEmpty).Select(cell => cell.Trimmed)));
}
