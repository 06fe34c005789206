using System.Text.Json;
using GreenLedger.Domain.Summaries;

namespace GreenLedger.Web.Summaries;

/// <summary>A chart as the script reads it from the page: summary-chart.js draws what is written here.</summary>
internal static class ChartJson
{
    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web);

    public static string Of(ChartSpec chart) => JsonSerializer.Serialize(
        new
        {
            chart.ValueTitle,
            IsRadar = chart.Form == ChartForm.Radar,
            IsLines = chart.Form == ChartForm.Lines,
            chart.Categories,
            Series = chart.Series.Select((series, at) => new { series.Name, series.Values, Colour = ChartSpec.ColourOf(at) }),
            chart.Decimals,
            chart.Mark,
            chart.Least,
            chart.Most,
        },
        Options);
}
