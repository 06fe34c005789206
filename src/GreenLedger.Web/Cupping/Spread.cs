using System.Globalization;
using GreenLedger.Data.Cupping;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Samples;

namespace GreenLedger.Web.Cupping;

/// <summary>Where the panel's sheets lie, as places in a drawing.</summary>
public sealed record Spread(int Width, int Height, IReadOnlyList<SpreadTick> Ticks, IReadOnlyList<SpreadRow> Rows)
{
    private const int Left = 120;
    private const int Right = 20;
    private const int Full = 720;
    private const int RowHeight = 28;

    public static Spread Of(CuppingSession session, IReadOnlyDictionary<Id<Sample>, TableSampleRow> key)
    {
        ArgumentNullException.ThrowIfNull(session);
        ArgumentNullException.ThrowIfNull(key);
        var results = session.Result!.Samples.OrderByDescending(sample => sample.Fitted).ToList();
        var points = session.Sheets.Select(sheet => sheet.Unrounded.Points).Concat(results.SelectMany(sample => new[] { sample.Low.Points, sample.High.Points })).ToList();
        var from = Math.Floor(points.Min());
        var to = Math.Max(from + 1, Math.Ceiling(points.Max()));
        var step = Math.Max(1m, Math.Ceiling((to - from) / 10m));
        string X(decimal value) => Place(Left + (value - from) / (to - from) * (Full - Left - Right));
        var sheets = session.Sheets.ToLookup(sheet => sheet.SampleId);
        return new Spread(
            Full,
            results.Count * RowHeight + 34,
            [.. Enumerable.Range(0, (int)((to - from) / step) + 1).Select(index => from + index * step).Select(value => new SpreadTick(X(value), value.ToString("0", CultureInfo.InvariantCulture)))],
            [.. results.Select((sample, index) => new SpreadRow(
                $"{key[sample.SampleId].Code} · {key[sample.SampleId].LabelCode}",
                index * RowHeight + RowHeight / 2,
                X(sample.Fitted.Points),
                X(sample.Low.Points),
                X(sample.High.Points),
                [.. sheets[sample.SampleId].Select(sheet => new SpreadSheet(X(sheet.Unrounded.Points), string.Create(CultureInfo.InvariantCulture, $"{sheet.CupperName}: {sheet.Unrounded.Points:0.00}")))]))]);
    }

    private static string Place(decimal value) => value.ToString("0.#", CultureInfo.InvariantCulture);
}

/// <summary>A mark of the scale.</summary>
public sealed record SpreadTick(string X, string Points);

/// <summary>One sample's line in the drawing.</summary>
public sealed record SpreadRow(string Label, int Y, string Fitted, string Low, string High, IReadOnlyList<SpreadSheet> Sheets);

/// <summary>One sheet's dot.</summary>
public sealed record SpreadSheet(string X, string Title);
