using System.Globalization;
using GreenLedger.Documents.Layout;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Trace;

namespace GreenLedger.Documents.Trace;

/// <summary>A mock recall as it is printed.</summary>
/// <param name="Findings">As they stood when it ended; of one that runs, as they stand now.</param>
public sealed record RecallReport(string House, ClockZone Zone, MockRecall Recall, RecallFindings Findings, string StartedBy, string? EndedBy);

/// <summary>What a mock recall found, on A4 pages for whoever audits the house.</summary>
public static class RecallPdf
{
    public const string MediaType = "application/pdf";

    /// <summary>Stands on screens and paper alike.</summary>
    public const string Caution = "This was practice: a real recall follows the rules of your food authority, which is told at once.";

    public static void Write(RecallReport report, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(report);
        var (recall, findings) = (report.Recall, report.Findings);
        var paper = new Paper($"Mock recall {recall.Ref}", report.House, $"{report.House} · mock recall {recall.Ref}");
        paper.Text($"Mock recall {recall.Ref}", TextStyle.Title);
        paper.Text(Caution, TextStyle.Small);
        paper.Gap(6);
        paper.Text($"Recalled: {recall.From.Word()} {recall.StartName}", TextStyle.Body);
        paper.Text($"Reason: {recall.Reason}", TextStyle.Body);
        paper.Text($"Started: {Printed.Moment(recall.StartedAt, report.Zone)} by {report.StartedBy}", TextStyle.Body);
        paper.Text(recall.EndedAt is { } ended ? $"Ended: {Printed.Moment(ended, report.Zone)} by {report.EndedBy}, after {Took(recall.Took!.Value)}" : "It has not ended: this is what is found so far.", TextStyle.Body);
        paper.Text($"Lots concerned: {(findings.Lots.Count == 0 ? "none" : string.Join(", ", findings.Lots))}", TextStyle.Body);
        paper.Text("How much was found", TextStyle.Heading);
        paper.Text($"Of {Kilograms(findings.Received)} kg received into stock, {findings.Found} were found.", TextStyle.Body);
        if (findings.Shares.Count > 0)
        {
            paper.Table([new("Where it is", 5), new("Weight, kg", 2, IsNumber: true), new("Of what was received", 2, IsNumber: true)], [.. findings.Shares.Select(share => Row(share.What, Kilograms(share.Weight), share.Share.ToString()))]);
        }

        paper.Text("Where it is and where it went", TextStyle.Heading);
        if (findings.Lines.Count == 0)
        {
            paper.Text("Nothing of it was shipped, received or stocked.", TextStyle.Body);
        }
        else
        {
            paper.Table(
                [new("Lot", 1.6), new("Where", 2.6), new("Purpose, batch, invoice, papers", 5), new("On", 1.8), new("Weight, kg", 1.6, IsNumber: true)],
                [.. findings.Lines.Select(line => Row(line.LotRef, line.Kind is TraceKind.Warehouse or TraceKind.Shipment ? $"{line.Kind.Word()} {line.Name}" : line.Name, line.Detail ?? "–", line.On is { } on ? Printed.Day(on) : "–", Kilograms(line.Weight)))]);
        }

        paper.Text("What was learned", TextStyle.Heading);
        paper.Text(recall.Learned ?? "Nothing was written down.", TextStyle.Body);
        paper.Save(stream);
    }

    /// <summary><c>4 min 12 s</c>, <c>2 h 5 min</c>.</summary>
    public static string Took(TimeSpan took) => took.TotalHours >= 1
        ? string.Create(CultureInfo.InvariantCulture, $"{(int)took.TotalHours} h {took.Minutes} min")
        : string.Create(CultureInfo.InvariantCulture, $"{took.Minutes} min {took.Seconds} s");

    private static IReadOnlyList<PaperCell> Row(params string[] cells) => [.. cells.Select(cell => new PaperCell(cell))];

    private static string Kilograms(Weight weight) => weight.Kilograms.ToString("#,0.###;−#,0.###", CultureInfo.InvariantCulture);
}
