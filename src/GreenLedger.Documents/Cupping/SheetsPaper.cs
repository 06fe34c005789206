using System.Globalization;
using GreenLedger.Documents.Layout;
using GreenLedger.Domain.Cupping;

namespace GreenLedger.Documents.Cupping;

/// <summary>Blank score sheets to fill in with a pen: for each cupper a sheet for every code in the order of serving, by the form of the table and the descriptive form where it has one.</summary>
public static class SheetsPaper
{
    public const string MediaType = "application/pdf";

    public static void Write(TableOnPaper table, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(table);
        var paper = new Paper($"Score sheets · {table.Title}", table.House, $"{table.House} · score sheets · {table.Title} · {Printed.Day(table.HeldOn)}");
        foreach (var cupper in table.Cuppers)
        {
            if (cupper != table.Cuppers[0])
            {
                paper.NewPage();
            }

            Cupper(paper, table, cupper);
        }

        paper.Save(stream);
    }

    private static void Cupper(Paper paper, TableOnPaper table, CupperOnPaper cupper)
    {
        paper.Text(cupper.Name ?? "Cupper: ______________________________", TextStyle.Title);
        paper.Text($"{table.Title} · {Printed.Day(table.HeldOn)} · {table.Form} · {Printed.Count(table.CupsPerSample, "cup", "cups")} a sample", TextStyle.Small);
        paper.Text(string.Join(" · ", table.Steps.Select(step => step.AfterSeconds is null ? step.Name.ToLowerInvariant() : $"{step.Name.ToLowerInvariant()} {PlanPaper.Clock(step)}")), TextStyle.Small);
        paper.Text(Total(table.Rules, table.CupsPerSample), TextStyle.Body);
        if (table.Descriptive is not null)
        {
            paper.Text("Below each score, mark how strong it is and tick the words that apply: that gives no points.", TextStyle.Body);
        }

        paper.Text("Taste in this order, and talk only after all sheets are in. The cups are hot, rinse your spoon between them, and spit: caffeine adds up; local rules decide.", TextStyle.Body);
        paper.Gap(10);
        var served = cupper.Served.SelectMany(flight => flight.Codes, (flight, code) => (flight.Number, Code: code)).ToList();
        var sheet = new SheetBlock(table.Rules, table.CupsPerSample);
        var description = table.Descriptive is { } descriptive ? new DescriptionBlock(descriptive, paper.Breaker) : null;
        for (var i = 0; i < served.Count; i++)
        {
            var place = $"{i + 1} of {served.Count}{(cupper.Served.Count > 1 ? $" · flight {served[i].Number}" : "")}{(cupper.Name is null ? "" : $" · {cupper.Name}")}";
            // Score and description of one code stand on one page.
            paper.MakeRoom(sheet.Height + (description?.Height ?? 0));
            sheet.Place(paper, served[i].Code, place);
            description?.Place(paper);
        }
    }

    /// <summary>How the form's total is counted, in a sentence.</summary>
    private static string Total(FormRules rules, int cups)
    {
        var marks = rules.Slope == 1m ? "the sum of the marks" : $"the sum of the marks × {Number(rules.Slope)}";
        var counted = string.Join(" or ", rules.CupCounted.Select(line => line.Name.ToLowerInvariant()));
        var good = counted.Length == 0 ? "" : $" + {Number(FormLine.PointsPerCups / cups)} for each cup good by {counted}";
        var intercept = rules.Intercept == 0m ? "" : $" + {Number(rules.Intercept)}";
        var scale = rules.DeductionsPerFiveCups ? (decimal)FormRules.UsualCups / cups : 1m;
        var taken = string.Concat(rules.Deductions.Select(line => $" − {Number(line.PointsPerCup * scale)} for each cup ticked as {line.Name.ToLowerInvariant()}"));
        return $"Total = {marks}{good}{intercept}{taken}{(rules.RoundTo == 0m ? "" : $", rounded half up to {Number(rules.RoundTo)}")}.";
    }

    private static string Number(decimal number) => number.ToString("0.#####", CultureInfo.InvariantCulture);
}
