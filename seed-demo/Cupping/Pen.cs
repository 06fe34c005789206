using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.SeedDemo.Offers;

namespace GreenLedger.SeedDemo.Cupping;

/// <summary>Turns a taste into the marks of a form: attributes differ a little, and their sum comes out as meant.</summary>
internal sealed class Pen(Draw draw)
{
    private static readonly string[] Remarks =
    [
        "Cools very well.", "A little papery at the end.", "Best on this table.", "Juicy, long finish.", "Flat once it is cold.",
        "Would drink this all day.", "Dry, slightly astringent.", "Sweet and simple.", "Clean, but there is not much there.", "Bright when hot, round when cold.",
    ];

    /// <summary>The 100-point form: seven marks in quarter points and three attributes counted by cups.</summary>
    public SheetMarks HundredPoint(FormRules rules, double points, int cups, bool isTainted)
    {
        var uneven = isTainted && draw.Chance(0.7) ? 1 : draw.Chance(0.03) ? 1 : 0;
        var tainted = isTainted && draw.Chance(0.6) ? 1 : 0;
        var scales = rules.Scales.ToList();
        var marks = Spread(points - 30, scales.Count, 0.25, (double)scales[0].Lowest, (double)scales[0].Highest, 0.22);
        return new SheetMarks([.. marks.Select(mark => Mark.Of((decimal)mark))], [cups - uneven, cups - tainted, cups], [tainted, 0]);
    }

    /// <summary>
    /// The affective form: eight whole marks from 1 to 9. Its totals lie wider apart: 82.5 points of the older form are
    /// about 80 of this one, and a point more is about 1.15 (invented).
    /// </summary>
    public SheetMarks Affective(FormRules rules, double points, bool isTainted)
    {
        var total = 80 + ((points - 82.5) * 1.15);
        var scales = rules.Scales.ToList();
        var marks = Spread((total - (double)rules.Intercept) / (double)rules.Slope, scales.Count, 1, 1, 9, 0.5);
        var uneven = isTainted && draw.Chance(0.7) ? 1 : 0;
        return new SheetMarks([.. marks.Select(mark => Mark.Of((decimal)mark))], [], [uneven, 0]);
    }

    public IReadOnlyList<string> Words(Coffee coffee) =>
    [
        .. draw.Some(coffee.Origin.Words, draw.Between(2, 3)),
        .. coffee.Process.StartsWith("anaerobic", StringComparison.Ordinal) && draw.Chance(0.7) ? ["winey"] : Array.Empty<string>(),
        .. coffee.Process == "natural" && draw.Chance(0.4) ? ["ripe fruit"] : Array.Empty<string>(),
    ];

    public string? Remark(bool isTainted) =>
        isTainted && draw.Chance(0.5) ? "One cup phenolic, please check the bag." : draw.Chance(0.14) ? draw.Of(Remarks) : null;

    /// <summary>A few cuppers add up by hand and slip.</summary>
    public decimal? AddedByHand(ScoreSheet sheet) =>
        draw.Chance(0.08) ? Math.Min(100m, sheet.Total.Points + (draw.Chance(0.2) ? draw.Of([-1m, -0.5m, 0.25m, 0.5m]) : 0m)) : null;

    /// <summary>Marks on steps that add up to the sum, as near as the range allows.</summary>
    private List<double> Spread(double sum, int count, double step, double lowest, double highest, double deviation)
    {
        var mean = Math.Clamp(sum / count, lowest, highest);
        var marks = Enumerable.Range(0, count)
            .Select(_ => Math.Clamp(Math.Round((mean + draw.Normal(0, deviation)) / step) * step, lowest, highest)).ToList();
        var target = Math.Round(sum / step) * step;
        for (var tries = 0; tries < 200 && Math.Abs(marks.Sum() - target) > step / 2; tries++)
        {
            var up = marks.Sum() < target;
            var i = draw.Between(0, count - 1);
            marks[i] = Math.Clamp(marks[i] + (up ? step : -step), lowest, highest);
        }

        return marks;
    }
}
