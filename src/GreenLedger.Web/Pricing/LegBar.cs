using System.Globalization;
using GreenLedger.Domain.Pricing;

namespace GreenLedger.Web.Pricing;

/// <summary>
/// A landed cost as stacked legs: the coffee and the stretches of its way, each as a share of the whole. The shares are
/// places in a drawing; the money stands in the list beside it and in the table below.
/// </summary>
public sealed record LegBar(IReadOnlyList<LegBarPart> Whole, IReadOnlyList<LegBarPart> WayOnly)
{
    private static readonly (string Word, Func<CostStage?, bool> Has)[] Stretches =
    [
        ("Coffee", stage => stage is null),
        ("At origin", stage => stage is <= CostStage.OnBoard),
        ("Freight and insurance", stage => stage is CostStage.Freight or CostStage.Insurance),
        ("At destination", stage => stage is >= CostStage.DestinationTerminal and <= CostStage.Duty),
        ("To the warehouse", stage => stage is >= CostStage.HandlingOut and <= CostStage.WeighingAndSampling),
        ("Finance and storage", stage => stage is CostStage.Finance or CostStage.Storage),
    ];

    /// <summary>Null while the cost is not known.</summary>
    public static LegBar? Of(LandedCost cost)
    {
        ArgumentNullException.ThrowIfNull(cost);
        if (!cost.IsKnown || cost.Lines.Any(line => line.Amount.Amount < 0m))
        {
            return null;
        }

        var sums = Stretches.Select((stretch, index) => (stretch.Word, Number: index + 1,
                Amount: cost.Lines.Where(line => stretch.Has(line.Stage)).Sum(line => line.Amount.Amount),
                PerKilogram: cost.Lines.Where(line => stretch.Has(line.Stage)).Sum(line => line.PerKilogram)))
            .Where(sum => sum.Amount > 0m)
            .ToList();
        return new LegBar(Parts(sums), Parts([.. sums.Where(sum => sum.Number > 1)]));
    }

    private static List<LegBarPart> Parts(List<(string Word, int Number, decimal Amount, decimal PerKilogram)> sums)
    {
        var whole = sums.Sum(sum => sum.Amount);
        var parts = new List<LegBarPart>();
        var from = 0m;
        foreach (var (word, number, amount, perKilogram) in sums)
        {
            var share = amount / whole * 100m;
            parts.Add(new LegBarPart(((char)('A' + number - 1)).ToString(), word, number, from, share, perKilogram));
            from += share;
        }

        return parts;
    }
}

/// <summary>One stretch of the bar; from and share are in per cent of the bar's length.</summary>
public sealed record LegBarPart(string Letter, string Word, int Number, decimal From, decimal Share, decimal PerKilogram)
{
    /// <summary>Under this share the letter would not stand within its stretch.</summary>
    private const decimal LeastForLetter = 4m;

    public string X => Place(From);

    public string Width => Place(Share);

    public string Middle => Place(From + Share / 2m);

    public bool HasLetter => Share >= LeastForLetter;

    private static string Place(decimal share) => share.ToString("0.###", CultureInfo.InvariantCulture) + "%";
}
