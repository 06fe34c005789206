using System.Text.Json;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Cupping;

namespace GreenLedger.Web.Choosing;

/// <summary>The chart as the script reads it from the page: choosing-chart.js draws what is written here.</summary>
internal static class ChartText
{
    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web);

    /// <param name="chart">The picture.</param>
    /// <param name="shortlist">What it was made of.</param>
    /// <param name="open">The address of a lot's page, with <c>{id}</c> where its offer stands.</param>
    public static string Of(ScatterChart chart, Shortlist shortlist, string open)
    {
        var stated = shortlist.Ranked.Where(entry => entry.Score is { Origin: ScoreOrigin.Stated }).Select(entry => entry.Candidate.OfferId).ToHashSet();
        return JsonSerializer.Serialize(
            new
            {
                chart.CostTitle,
                chart.ScoreTitle,
                Currency = shortlist.Currency.Code,
                Open = open,
                Series = chart.Series.Select(series => new { series.Word, Shape = (int)series.Shape }),
                Points = chart.Points.Select(point => new
                {
                    Id = point.OfferId.Value,
                    point.Ref,
                    point.Name,
                    point.Rank,
                    point.Series,
                    point.Cost,
                    point.Score,
                    point.Low,
                    point.High,
                    For = point.HoldsFor.Word(),
                    Front = point.IsOnFront,
                    Stated = stated.Contains(point.OfferId),
                }),
                Front = chart.Front.Select(point => new[] { point.Cost, point.Score }),
            },
            Options);
    }
}
