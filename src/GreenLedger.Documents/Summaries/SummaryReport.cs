using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Summaries;

namespace GreenLedger.Documents.Summaries;

/// <summary>A purchase summary as it leaves the house: what it says, and who took it out when.</summary>
public sealed record SummaryReport(string House, string MadeBy, DateTimeOffset MadeAt, ClockZone Zone, PurchaseSummary Summary)
{
    /// <summary>The same for the workbook and the PDF, without the ending: <c>Purchase summary 2026-01-01 to 2026-12-31 Colombia</c>.</summary>
    public string FileName => string.Concat(
        FormattableString.Invariant($"Purchase summary {Summary.Wish.Period.From:yyyy-MM-dd} to {Summary.Wish.Period.Until:yyyy-MM-dd} {Summary.Wish.Group}").Trim().Select(letter => IsPlain(letter) ? letter : '-'));

    private static bool IsPlain(char letter) => char.IsLetterOrDigit(letter) || letter is ' ' or '-' or '_' or '.';
}
