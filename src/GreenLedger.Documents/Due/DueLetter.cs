using System.Globalization;
using System.Text;
using GreenLedger.Domain.Due;

namespace GreenLedger.Documents.Due;

/// <summary>What is due as the plain text of a mail; its subject names no record, since it is read on locked screens.</summary>
public static class DueLetter
{
    public static string Subject(IReadOnlyCollection<DueLine> lines, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(lines);
        var late = lines.Count(line => line.IsPast(today));
        return string.Create(CultureInfo.InvariantCulture, $"Due on {today:d MMMM yyyy}: {lines.Count} {(lines.Count == 1 ? "line" : "lines")}{(late > 0 ? $", {late} late" : "")}");
    }

    /// <param name="lines">The soonest first.</param>
    /// <param name="house">Who writes.</param>
    /// <param name="today">The house's day.</param>
    public static string Text(IReadOnlyCollection<DueLine> lines, string house, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(lines);
        var text = new StringBuilder();
        Part(text, "Late", lines.Where(line => line.IsPast(today)));
        Part(text, "Today", lines.Where(line => line.On == today));
        Part(text, "Soon", lines.Where(line => line.On > today));
        return text.Append(CultureInfo.InvariantCulture, $"What it takes is done in the ledger of {house}, on its page “Due”. You get this mail because you asked for it, under “Due by mail” of your account; you end it there.\n").ToString();
    }

    private static void Part(StringBuilder text, string head, IEnumerable<DueLine> lines)
    {
        var all = lines.ToList();
        if (all.Count == 0)
        {
            return;
        }

        text.Append(head).Append('\n');
        foreach (var line in all)
        {
            text.Append(CultureInfo.InvariantCulture, $"- {line.On:d MMM yyyy}, {line.By}: {line.What}\n");
        }

        text.Append('\n');
    }
}
