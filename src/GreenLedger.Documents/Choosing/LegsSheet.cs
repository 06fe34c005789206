using System.Globalization;
using ClosedXML.Excel;
using GreenLedger.Documents.Layout;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Pricing;

namespace GreenLedger.Documents.Choosing;

/// <summary>One leg of one ranked lot's landed cost.</summary>
internal sealed record LegRow(ShortlistEntry Entry, LandedCost Cost, LandedCostLine Line)
{
    public static List<LegRow> Of(ShortlistReport report, IEnumerable<ShortlistEntry> entries) =>
    [
        .. from entry in entries
           let cost = report.Costs.GetValueOrDefault(entry.Candidate.OfferId)
           where cost is { IsKnown: true }
           from line in cost.Lines
           select new LegRow(entry, cost, line),
    ];
}

/// <summary>The sheet of legs: amounts in their own currency, the two rates per euro, and the amount in house currency as a formula.</summary>
internal static class LegsSheet
{
    public const int RankColumn = 1;
    public const int AmountColumn = 12;

    private const string Money = "#,##0.00";
    private const string Rate = "#,##0.0000####";

    public static void Write(FormulaBook book, IXLWorksheet sheet, IReadOnlyList<LegRow> rows, Currency house) =>
        book.Table(sheet, Columns(house), rows, frozenColumns: 2);

    private static SheetColumn<LegRow>[] Columns(Currency house) =>
    [
        new("Rank", 7, "0", (row, _) => row.Entry.Rank),
        new("Reference", 16, "", (row, _) => row.Entry.Candidate.Ref),
        new("Lot", 26, "", (row, _) => row.Entry.Candidate.Name),
        new("Route", 26, "", (row, _) => row.Cost.Route?.Name),
        new("Stage", 24, "", (row, _) => row.Line.Stage?.Word() ?? "Coffee"),
        new("Leg", 24, "", (row, _) => row.Line.Name),
        new("Paid by", 10, "", (row, _) => row.Line.Counts ? "buyer" : "not added"),
        new("Amount, own currency", 14, Money, (row, _) => row.Line.Original.Amount),
        new("Own currency", 10, "", (row, _) => row.Line.Original.Currency.Code),
        new("Own currency per EUR", 13, Rate, (row, _) => row.Line.Conversion.FromRate?.UnitsPerEuro ?? 1m),
        new($"{house} per EUR", 13, Rate, (row, _) => row.Line.Conversion.ToRate?.UnitsPerEuro ?? 1m),
        new($"Amount, {house}", 14, Money, (row, at) => new SheetFormula(string.Create(CultureInfo.InvariantCulture, $"ROUND(H{at}*K{at}/J{at},{house.Decimals})"), (double)row.Line.Amount.Amount)),
        new($"Share, {house}/kg", 12, "#,##0.0000", (row, _) => row.Line.PerKilogram),
        new("How it was reckoned", 70, "", (row, _) => row.Line.Arithmetic),
    ];
}
