using GreenLedger.Documents.Layout;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Documents.Cupping;

/// <summary>What stands under one code.</summary>
/// <param name="Remark">Hidden duplicate or house reference; empty for most.</param>
public sealed record KeyLine(int Flight, string Code, string Label, string Lot, string Remark);

/// <summary>The key of an open table as it is printed.</summary>
/// <param name="For">Who opened it: the paper is for that person alone.</param>
public sealed record PrintedKey(string House, string Title, DateOnly HeldOn, string For, DateTimeOffset OpenedAt, ClockZone Zone, int CupsPerSample, IReadOnlyList<KeyLine> Lines);

/// <summary>The key on paper: a document of its own, for the one who weighs, grinds or pours, and named on every page.</summary>
public static class KeyPaper
{
    public const string MediaType = "application/pdf";

    public static void Write(PrintedKey key, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(key);
        var paper = new Paper($"Key · {key.Title}", key.House, $"{key.House} · key of {key.Title} · for {key.For} alone");
        paper.Text($"Key for {key.For} alone", TextStyle.Title);
        paper.Text($"{key.Title} · {Printed.Day(key.HeldOn)} · opened {Printed.Moment(key.OpenedAt, key.Zone)}", TextStyle.Small);
        paper.Text("Keep it from everybody who cups, and destroy it when the session is closed. The opening is written down and shown with the result; whoever opened the key and scores is marked not blind.", TextStyle.Body);
        foreach (var flight in key.Lines.GroupBy(line => line.Flight).OrderBy(flight => flight.Key))
        {
            paper.Text($"Flight {flight.Key}", TextStyle.Heading);
            paper.Table(
                [new("Code", 1), new("Label on the bag", 1.6), new("Lot", 4), new("Cups", 0.8, IsNumber: true)],
                [.. flight.Select(line => (IReadOnlyList<PaperCell>)[
                    line.Code, line.Label, new PaperCell(line.Lot, line.Remark.Length == 0 ? null : line.Remark), Printed.Count(key.CupsPerSample)])]);
        }

        paper.Save(stream);
    }
}
