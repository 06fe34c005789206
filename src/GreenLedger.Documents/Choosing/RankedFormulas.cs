using System.Globalization;
using GreenLedger.Documents.Layout;
using GreenLedger.Domain.Choosing;

namespace GreenLedger.Documents.Choosing;

/// <summary>The columns of the ranking that its formulas refer to, in the order of the sheet.</summary>
internal enum Place
{
    Rank = 1, Ref, Lot, Supplier, Origin, Process, Score, Low, High, HoldsFor, ScoredBy, Quantity, Landed, Total, Cost,
    CostPerPoint, ScoreCounts, CostCounts, PointCounts, ProcessCounts, Weighted, Front, Close, Best, FirstThree, Predicted,
}

/// <summary>The formulas of the ranking, without the equals sign, for a row of the sheet.</summary>
internal sealed class RankedFormulas(RulesCells rules, CostPerPointRule costPerPoint, int legs)
{
    /// <summary>By rank and not by place, so that both sheets can be sorted without breaking the sum.</summary>
    public string Total(int row) =>
        $"SUMIFS({Leg(LegsSheet.AmountColumn)},{Leg(LegsSheet.RankColumn)},{Cell(Place.Rank, row)})";

    public static string Cost(int row) => $"{Cell(Place.Total, row)}/{Cell(Place.Landed, row)}";

    public string CostPerPoint(int row)
    {
        var (score, cost) = (Cell(Place.Score, row), Cell(Place.Cost, row));
        return costPerPoint switch
        {
            CostPerPointRule.PricePerPoint => $"IF({score}>0,{cost}/{score},\"\")",
            CostPerPointRule.PricePerPointAbove => $"IF({score}>{rules.BaseScore},{cost}/({score}-{rules.BaseScore}),\"\")",
            _ => $"IF({score}>{rules.ReferenceScore},({cost}-{rules.ReferenceCost})/({score}-{rules.ReferenceScore}),\"\")",
        };
    }

    public string ScoreCounts(int row) => $"({Cell(Place.Score, row)}-{rules.LowScore})/({rules.HighScore}-{rules.LowScore})";

    public string CostCounts(int row) => $"({rules.HighCost}-{Cell(Place.Cost, row)})/({rules.HighCost}-{rules.LowCost})";

    /// <summary>Cut at 0 and 1; without a value it counts 0, the reference of a step up in full.</summary>
    public string PointCounts(int row)
    {
        var point = Cell(Place.CostPerPoint, row);
        var counts = $"IF({point}=\"\",0,MAX(0,MIN(1,({rules.HighPoint}-{point})/({rules.HighPoint}-{rules.LowPoint}))))";
        var whole = costPerPoint == CostPerPointRule.StepUp
            ? $"IF(AND({Cell(Place.Score, row)}={rules.ReferenceScore},{Cell(Place.Cost, row)}={rules.ReferenceCost}),1,{counts})"
            : counts;
        return $"IF({rules.PointWeight}=0,0,{whole})";
    }

    public string Weighted(int row) =>
        $"({rules.ScoreWeight}*{Cell(Place.ScoreCounts, row)}+{rules.CostWeight}*{Cell(Place.CostCounts, row)}"
        + $"+{rules.PointWeight}*{Cell(Place.PointCounts, row)}+{rules.ProcessWeight}*{Cell(Place.ProcessCounts, row)})/{rules.WeightSum}";

    public static string Difference(int row) => $"{Cell(Place.Cost, row)}/{Cell(Place.Predicted, row)}-1";

    /// <summary>Of the rows that a filter leaves.</summary>
    public static string Sum(Place column, int last) => $"SUBTOTAL(9,{Cell(column, 2)}:{Cell(column, last)})";

    public static string MeanCost(int row) => $"IF({Cell(Place.Landed, row)}>0,{Cell(Place.Total, row)}/{Cell(Place.Landed, row)},\"\")";

    /// <summary>For formulas of other sheets: a figure of the lot whose rank stands in that cell.</summary>
    public static string OfRank(string rank, Place column, int lots) => string.Create(
        CultureInfo.InvariantCulture,
        $"VLOOKUP({rank},'{ShortlistWorkbook.RankedName}'!$A$2:${FormulaBook.Letter((int)column)}${lots + 1},{(int)column},FALSE)");

    private string Leg(int column) => string.Create(
        CultureInfo.InvariantCulture,
        $"'{ShortlistWorkbook.LegsName}'!${FormulaBook.Letter(column)}$2:${FormulaBook.Letter(column)}${legs + 1}");

    private static string Cell(Place column, int row) => string.Create(CultureInfo.InvariantCulture, $"{FormulaBook.Letter((int)column)}{row}");
}
