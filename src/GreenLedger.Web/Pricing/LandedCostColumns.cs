using GreenLedger.Documents.Layout;
using GreenLedger.Domain.Pricing;

namespace GreenLedger.Web.Pricing;

/// <summary>A landed cost as rows of a workbook: each line that counts, then the total.</summary>
internal static class LandedCostColumns
{
    public static IEnumerable<LandedCostRow> Rows(LandedCost cost) => cost.Lines
        .Where(line => line.Counts)
        .Select(line => new LandedCostRow(
            line.Name, line.Arithmetic, line.Original.Amount, line.Original.Currency.Code, line.Conversion.Words(), line.Amount.Amount, line.PerKilogram))
        .Append(new LandedCostRow("Total", $"{cost.Landed.Kilograms:#,0.###} kg landed, {cost.Route!.Name}", null, null, null, cost.Total!.Value.Amount, cost.ShownPerKilogram!.Value));

    public static TableColumn<LandedCostRow>[] Of(LandedCost cost) =>
    [
        TableColumn<LandedCostRow>.Text("Line", row => row.Line, 30),
        TableColumn<LandedCostRow>.Text("How", row => row.How, 60),
        TableColumn<LandedCostRow>.Number("As charged", row => row.Charged),
        TableColumn<LandedCostRow>.Text("Currency", row => row.Currency, 10),
        TableColumn<LandedCostRow>.Text("Rate", row => row.Rate, 32),
        TableColumn<LandedCostRow>.Number(cost.Currency.Code, row => row.Amount, cost.Currency.Decimals),
        TableColumn<LandedCostRow>.Number(cost.Currency.Code + "/kg", row => row.PerKilogram, 4),
    ];
}

/// <summary>One line of the workbook; the total has no charge of its own.</summary>
internal sealed record LandedCostRow(string Line, string How, decimal? Charged, string? Currency, string? Rate, decimal Amount, decimal PerKilogram);
