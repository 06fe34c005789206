using System.Globalization;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Summaries;

namespace GreenLedger.Documents.Summaries;

/// <summary>What a part of a report is.</summary>
public enum FeedbackPart
{
    Heading = 0,
    SubHeading = 1,
    Text = 2,
    Small = 3,
    Table = 4,
    Chart = 5,
}

public sealed record FeedbackColumn(string Head, bool IsNumber = false);

public sealed record FeedbackTable(IReadOnlyList<FeedbackColumn> Columns, IReadOnlyList<IReadOnlyList<string>> Rows);

/// <summary>One part of a report, written once: the preview shows it and the PDF prints it.</summary>
/// <param name="Text">The sentence; for a table or chart what it is called.</param>
public sealed record FeedbackBlock(FeedbackPart Part, string Text, FeedbackTable? Table = null, ChartSpec? Chart = null);

/// <summary>Puts what a supplier hears back into words of their language; numbers and days follow it.</summary>
public sealed class FeedbackText
{
    /// <summary>Words of the panel that are listed; further ones were said by single cuppers mostly.</summary>
    private const int MostWords = 15;

    /// <summary>The commonest kinds of defect get advice.</summary>
    private const int MostAdvice = 3;

    private readonly FeedbackReport _report;
    private readonly FeedbackWords _words;

    private FeedbackText(FeedbackReport report) => (_report, _words) = (report, FeedbackWords.In(report.Language));

    /// <summary>The languages that there are words in, by ISO 639-1.</summary>
    public static IReadOnlyList<string> Languages => FeedbackWords.Languages;

    public static string Title(FeedbackReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return FeedbackWords.In(report.Language).Title;
    }

    /// <summary>The language that the report is written in: English where there are no words in the one asked for.</summary>
    public static string LanguageOf(FeedbackReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return FeedbackWords.In(report.Language).Language;
    }

    /// <summary>How numbers of the report are written.</summary>
    public static CultureInfo ReaderOf(FeedbackReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return FeedbackWords.In(report.Language).Reader;
    }

    public static IReadOnlyList<FeedbackBlock> Of(FeedbackReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        var text = new FeedbackText(report);
        return [.. text.Opening(), .. report.Samples.SelectMany(text.Sample), new(FeedbackPart.Text, text._words.Farewell), new(FeedbackPart.Text, $"{report.By}, {report.House}")];
    }

    /// <summary>The text of a mail that the report goes with: opening and end, without what was found.</summary>
    public static string Letter(FeedbackReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        var text = new FeedbackText(report);
        return string.Join("\n\n", [.. text.Opening().Select(block => block.Text), text._words.Farewell, $"{report.By}, {report.House}"]) + "\n";
    }

    private IEnumerable<FeedbackBlock> Opening()
    {
        yield return new(FeedbackPart.Text, $"{_words.Fill(_words.For, _report.Supplier)} · {_words.Day(_report.On)}");
        yield return new(FeedbackPart.Small, _words.Opening);
        if (_report.Message is { } message)
        {
            yield return new(FeedbackPart.Text, message);
        }
    }

    private IEnumerable<FeedbackBlock> Sample(FeedbackSample sample)
    {
        yield return new(FeedbackPart.Heading, string.Join(" · ", new[] { sample.LotName, sample.LotRef == sample.LotName ? null : sample.LotRef, sample.CropYear }.OfType<string>()));
        yield return new(FeedbackPart.Small, _words.Fill(_words.Sample, sample.LabelCode, _words.Kinds[sample.Kind], sample.ReceivedOn is { } on ? _words.Day(on) : "–"));
        foreach (var block in Cup(sample).Concat(Green(sample)).Concat(Decision(sample)))
        {
            yield return block;
        }
    }

    private IEnumerable<FeedbackBlock> Cup(FeedbackSample sample)
    {
        yield return new(FeedbackPart.SubHeading, _words.Cup);
        if (sample.Cup is not { } cup)
        {
            yield return new(FeedbackPart.Text, _words.NotCupped);
            yield break;
        }

        yield return new(FeedbackPart.Text, _words.Fill(_words.Scored, _words.Day(cup.HeldOn), cup.Form, Points(cup.Score.Points), Points(cup.Low.Points), Points(cup.High.Points), cup.Profile.Cuppers));
        if (cup.Profile.Attributes.Count(attribute => attribute.Line.MarkedBy == MarkedBy.Scale) >= 3)
        {
            yield return new(FeedbackPart.Chart, _words.Profile, Chart: Chart(cup.Profile));
        }

        yield return new(FeedbackPart.Table, _words.Profile, Attributes(cup.Profile));
        if (cup.Profile.Words.Count > 0)
        {
            yield return new(FeedbackPart.Text, _words.Fill(_words.Said, string.Join(", ", cup.Profile.Words.Take(MostWords).Select(word => $"{word.Word} ({word.Cuppers})"))));
        }

        if (cup.Profile.Defects.Count > 0)
        {
            yield return new(FeedbackPart.Text, $"{_words.CupDefects}: {string.Join(", ", cup.Profile.Defects.Select(defect => $"{defect.Name} ({defect.Cuppers})").Concat(cup.Profile.DefectNames.Select(name => name.Word)))}.");
        }

        yield return new(FeedbackPart.SubHeading, _words.Standing);
        yield return new(FeedbackPart.Text, sample.Quarter is { } quarter ? _words.Quarters[quarter] : _words.TooFew);
    }

    /// <summary>What is marked on a scale; cups counted good would draw the line out of all others' reach.</summary>
    private ChartSpec Chart(SampleProfile profile)
    {
        var marked = profile.Attributes.Where(attribute => attribute.Line.MarkedBy == MarkedBy.Scale).ToList();
        return new ChartSpec(
            _words.Profile, _words.Points, ChartForm.Radar, [.. marked.Select(attribute => Name(attribute.Line))],
            [new ChartValues(_words.Mean, [.. marked.Select(attribute => (decimal?)attribute.Mean)])], 2,
            Least: marked.Min(attribute => attribute.Line.Lowest), Most: marked.Max(attribute => attribute.Line.Highest));
    }

    private FeedbackTable Attributes(SampleProfile profile) => new(
        [new(_words.Attribute), new($"{_words.Lowest}, {_words.Points}", true), new($"{_words.Mean}, {_words.Points}", true), new($"{_words.Highest}, {_words.Points}", true)],
        [.. profile.Attributes.Select(attribute => new[] { Name(attribute.Line), Points(attribute.Lowest), Points(attribute.Mean), Points(attribute.Highest) })]);

    private IEnumerable<FeedbackBlock> Green(FeedbackSample sample)
    {
        yield return new(FeedbackPart.SubHeading, _words.Green);
        if (sample.Green is not { } green)
        {
            yield return new(FeedbackPart.Text, _words.NotGraded);
            yield break;
        }

        var rows = Measured(green).Where(row => row.Found is not null).Select(row => new[] { row.What, row.Found! }).ToList();
        if (rows.Count > 0)
        {
            yield return new(FeedbackPart.Table, _words.Green, new FeedbackTable([new(_words.Measure), new(_words.Found, true)], rows));
        }

        if (green.Defects.Count > 0)
        {
            var title = _words.Fill(_words.DefectsIn, _words.Number(green.SampleWeight.Grams, 0));
            yield return new(FeedbackPart.Table, title, new FeedbackTable(
                [new(title), new(_words.Beans, true), new(_words.Avoid)],
                [.. green.Defects.Select((defect, at) => new[] { _words.Defects.GetValueOrDefault(defect.Kind, defect.Name), _words.Number(defect.Beans, 0), at < MostAdvice ? _words.Advice.GetValueOrDefault(defect.Kind, "") : "" })]));
        }
    }

    private IEnumerable<(string What, string? Found)> Measured(FeedbackGreen green) =>
    [
        (_words.Moisture, green.Moisture is { } moisture ? Percent(moisture.Points) : null),
        (_words.WaterActivity, green.WaterActivity is { } activity ? _words.Number(activity.Ratio, 2) : null),
        (_words.Density, green.DensityGramsPerLitre is { } density ? _words.Number(density, 0) : null),
        (_words.Category1, green.Category1 is { } first ? _words.Number(first.Count, 2) : null),
        (_words.Category2, green.Category2 is { } second ? _words.Number(second.Count, 2) : null),
        (_words.Quakers, green.Quakers is { } quakers ? _words.Number(quakers, 0) : null),
    ];

    private IEnumerable<FeedbackBlock> Decision(FeedbackSample sample)
    {
        yield return new(FeedbackPart.SubHeading, _words.Decision);
        if (sample.Decision is not { } decision)
        {
            yield return new(FeedbackPart.Text, _words.NotDecided);
            yield break;
        }

        yield return new(FeedbackPart.Text, _words.Fill(_words.Outcomes[decision.Outcome], _words.Day(decision.On)));
        var failed = Enum.GetValues<Gate>().Where(gate => gate != Gate.None && decision.Failed.HasFlag(gate)).ToList();
        if (decision.Outcome != Outcome.Buy && failed.Count > 0)
        {
            yield return new(FeedbackPart.Text, _words.Fill(_words.Because, string.Join("; ", failed.Select(gate => _words.Failed[gate]))));
            var asked = failed.Select(gate => Asked(gate, decision.Asked)).OfType<string>().ToList();
            if (asked.Count > 0)
            {
                yield return new(FeedbackPart.Text, _words.Fill(_words.ToBuy, string.Join("; ", asked)));
            }
        }
    }

    /// <summary>What the rules ask at a gate; null where they ask nothing that the seller could change. The highest cost stays in the house.</summary>
    private string? Asked(Gate gate, Gates gates) => gate switch
    {
        Gate.LeastScore when gates.LeastScore is { } score => _words.Fill(_words.Asked[gate], Points(score.Points)),
        Gate.LeastLowerBound when gates.LeastLowerBound is { } bound => _words.Fill(_words.Asked[gate], Points(bound.Points)),
        Gate.HighestCost or Gate.Process => _words.Asked[gate],
        Gate.Moisture => _words.Fill(_words.Asked[gate], gates.LeastMoisture is { } least ? Percent(least.Points) : "–", gates.HighestMoisture is { } most ? Percent(most.Points) : "–"),
        Gate.WaterActivity when gates.HighestWaterActivity is { } activity => _words.Fill(_words.Asked[gate], _words.Number(activity.Ratio, 2)),
        Gate.Category1 when gates.HighestCategory1 is { } first => _words.Fill(_words.Asked[gate], _words.Number(first.Count, 0)),
        Gate.Category2 when gates.HighestCategory2 is { } second => _words.Fill(_words.Asked[gate], _words.Number(second.Count, 0)),
        Gate.Quakers when gates.HighestQuakers is { } quakers => _words.Fill(_words.Asked[gate], _words.Number(quakers, 0)),
        Gate.Screen when gates is { LeastRetained: { } retained, Screen: { } screen } => _words.Fill(_words.Asked[gate], Percent(retained.Points), screen),
        Gate.Quantity when gates.LeastQuantity is { } quantity => _words.Fill(_words.Asked[gate], _words.Number(quantity.Kilograms, 0)),
        Gate.CropYear when gates.EarliestCropYear is { } crop => _words.Fill(_words.Asked[gate], crop),
        Gate.Certificates when gates.Certificates.Count > 0 => _words.Fill(_words.Asked[gate], string.Join(", ", gates.Certificates)),
        _ => null,
    };

    private string Name(FormLine line) => _words.Attributes.GetValueOrDefault(line.Key, line.Name);

    private string Points(decimal points) => _words.Number(points, 2);

    private string Percent(decimal points) => _words.Number(points, 1) + "\u00a0%";
}
