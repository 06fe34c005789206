namespace GreenLedger.Domain.Cupping;

/// <summary>
/// One row of past results: points of the form's attributes in its order (averages allowed), points deducted of each
/// deduction, and the total that the file states.
/// </summary>
public sealed record PastResult(
    string Cupper,
    IReadOnlyList<decimal> Points,
    IReadOnlyList<decimal> Deducted,
    decimal? StatedTotal,
    IReadOnlyList<string> Descriptors,
    string? Note);
