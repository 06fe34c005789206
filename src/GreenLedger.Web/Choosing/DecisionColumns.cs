using GreenLedger.Data.Choosing;
using GreenLedger.Documents.Layout;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Web.Choosing;

/// <summary>The list of decisions as it leaves for a workbook.</summary>
internal static class DecisionColumns
{
    public static IReadOnlyList<TableColumn<DecisionRow>> Of(ClockZone zone) =>
    [
        TableColumn<DecisionRow>.Text("Ref", row => row.Figures.Ref, 16),
        TableColumn<DecisionRow>.Text("Lot", row => row.Figures.Name, 32),
        TableColumn<DecisionRow>.Text("Supplier", row => row.Figures.Supplier, 28),
        TableColumn<DecisionRow>.Text("Decision", row => row.Decision.Outcome.Word(), 10),
        TableColumn<DecisionRow>.Text("Advised", row => row.Decision.Advised.Word(), 10),
        TableColumn<DecisionRow>.Number("kg", row => row.Decision.Quantity?.Kilograms),
        TableColumn<DecisionRow>.Count("Rank", row => row.Figures.Rank == 0 ? null : row.Figures.Rank),
        TableColumn<DecisionRow>.Number("Score, points", row => row.Figures.Score?.Points),
        TableColumn<DecisionRow>.YesNo("Score stated by seller", row => row.Figures.IsStatedScore),
        TableColumn<DecisionRow>.Number("Landed cost per kg", row => row.Figures.CostPerKilogram, 4),
        TableColumn<DecisionRow>.Text("Currency", row => row.Figures.Currency.Code, 10),
        TableColumn<DecisionRow>.Text("Rules", row => row.Rules.Name, 20),
        TableColumn<DecisionRow>.Text("By", row => row.By, 20),
        TableColumn<DecisionRow>.Day("On", row => zone.Day(row.Decision.At)),
        TableColumn<DecisionRow>.Text("Reason", row => row.Decision.Reason, 40),
        TableColumn<DecisionRow>.Text("Note", row => row.Decision.Note, 40),
        TableColumn<DecisionRow>.Text("Withdrawn because", row => row.Decision.WithdrawnBecause, 40),
    ];
}
