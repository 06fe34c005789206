using GreenLedger.Documents.Layout;

namespace GreenLedger.Documents.Cupping;

/// <summary>A code for the undersides, and the label on the bag that it stands for.</summary>
public sealed record UndersideLine(string Code, string Label);

/// <summary>What one cupper alone needs before the bowls are shuffled: which code goes under the bowls of which bag, and how to lose track.</summary>
public static class UndersidesPaper
{
    public const string MediaType = "application/pdf";

    public static void Write(string house, string title, DateOnly heldOn, int bowls, IReadOnlyList<UndersideLine> lines, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(lines);
        var paper = new Paper($"Codes for the undersides · {title}", house, $"{house} · codes for the undersides · {title}");
        paper.Text("Codes for the undersides", TextStyle.Title);
        paper.Text($"{title} · {Printed.Day(heldOn)}", TextStyle.Small);
        paper.Table(
            [new("Code under the bowls", 2), new("Label on the bag", 2), new("Bowls", 1, IsNumber: true)],
            [.. lines.Select(line => (IReadOnlyList<PaperCell>)[line.Code, line.Label, Printed.Count(bowls)])]);
        paper.Gap(8);
        paper.Text("1. Put the code under every bowl of its sample, so that it cannot be seen from above. Grind and fill.", TextStyle.Body);
        paper.Text("2. Put this paper away. Turn away while somebody else moves the bowls about, each sample's bowls together; alone, close your eyes and move them until you have lost track.", TextStyle.Body);
        paper.Text("3. Set the bowls of one sample at a place: P1, P2, P3 from the left. Open your sheets, and do not look underneath until they are in.", TextStyle.Body);
        paper.Text("Move the bowls while they are dry: a full bowl at 93 °C scalds; local rules decide.", TextStyle.Body);
        paper.Save(stream);
    }
}
