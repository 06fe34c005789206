using GreenLedger.Domain.Samples;

namespace GreenLedger.Domain.Cupping;

/// <summary>An attribute over the sheets of one sample, in points: the mean, and the lowest and highest of a sheet.</summary>
public sealed record AttributeProfile(FormLine Line, decimal Mean, decimal Lowest, decimal Highest);

/// <summary>A word and how many cuppers said it of the sample.</summary>
public sealed record SaidWord(string Word, int Cuppers);

/// <summary>A deduction that cuppers noted: how many of them, and the points taken off a sheet on average over all sheets.</summary>
/// <param name="Cups">Cups over all sheets; null where past results state points only.</param>
public sealed record NotedDefect(string Name, int Cuppers, int? Cups, decimal MeanPoints);

/// <summary>What the sheets of one sample say beyond the total; sheets of its hidden duplicate count as its own.</summary>
/// <param name="Words">Those that most cuppers said first.</param>
/// <param name="DefectNames">What taints and faults were called, with how many cuppers said so.</param>
public sealed record SampleProfile(
    Id<Sample> SampleId,
    int Sheets,
    int Cuppers,
    IReadOnlyList<AttributeProfile> Attributes,
    IReadOnlyList<SaidWord> Words,
    IReadOnlyList<NotedDefect> Defects,
    IReadOnlyList<SaidWord> DefectNames)
{
    /// <summary>A profile for each sample with a sheet, in the order of the table.</summary>
    /// <param name="descriptive">The words of the descriptive form beside the sheets; null for a session without.</param>
    public static IReadOnlyList<SampleProfile> Of(CuppingSession session, DescriptiveRules? descriptive = null)
    {
        ArgumentNullException.ThrowIfNull(session);
        var sheets = session.Sheets.ToLookup(sheet => sheet.SampleId);
        return [.. session.Samples.Where(sample => !sample.IsDuplicate && sheets.Contains(sample.SampleId))
            .Select(sample => Of(sample.SampleId, [.. sheets[sample.SampleId]], session, descriptive))];
    }

    private static SampleProfile Of(Id<Sample> sample, List<ScoreSheet> sheets, CuppingSession session, DescriptiveRules? descriptive)
    {
        var rules = session.Form.Rules;
        var totals = sheets.ConvertAll(sheet => sheet.Arithmetic(rules, session.CupsPerSample));
        return new SampleProfile(
            sample,
            sheets.Count,
            sheets.Select(sheet => sheet.CupperKey).Distinct().Count(),
            [.. rules.Attributes.Select((line, index) => Attribute(line, [.. totals.Select(total => total.Attributes[index].Points)]))],
            Said(sheets, sheet => sheet.Descriptors.Concat(Picked(sheet, descriptive))),
            [.. rules.Deductions.Select((deduction, index) => Noted(deduction.Name, sheets, totals.ConvertAll(total => total.Deductions[index]))).Where(defect => defect.Cuppers > 0)],
            Said(sheets, sheet => sheet.DefectName is { } name ? [name] : []));
    }

    private static AttributeProfile Attribute(FormLine line, IReadOnlyList<decimal> points) =>
        new(line, points.Average(), points.Min(), points.Max());

    private static NotedDefect Noted(string name, List<ScoreSheet> sheets, List<TotalLine> lines)
    {
        var noted = sheets.Zip(lines).Where(pair => pair.Second.Points > 0 || pair.Second.Cups > 0).ToList();
        var counted = noted.TrueForAll(pair => pair.Second.Cups is not null);
        return new NotedDefect(
            name,
            noted.Select(pair => pair.First.CupperKey).Distinct().Count(),
            counted ? noted.Sum(pair => pair.Second.Cups) : null,
            lines.Average(line => line.Points));
    }

    private static IEnumerable<string> Picked(ScoreSheet sheet, DescriptiveRules? descriptive) => sheet.Description is { } description && descriptive is not null
        ? descriptive.Lists.SelectMany(list => description.Picks.GetValueOrDefault(list.Key, [])
            .Select(key => list.Words.FirstOrDefault(word => word.Key == key)?.Word ?? key))
        : [];

    private static List<SaidWord> Said(List<ScoreSheet> sheets, Func<ScoreSheet, IEnumerable<string>> words) =>
        [.. sheets.SelectMany(sheet => words(sheet).Select(word => (Word: word, sheet.CupperKey)))
            .GroupBy(said => said.Word, StringComparer.OrdinalIgnoreCase)
            .Select(group => new SaidWord(group.First().Word, group.Select(said => said.CupperKey).Distinct().Count()))
            .OrderByDescending(said => said.Cuppers).ThenBy(said => said.Word, StringComparer.OrdinalIgnoreCase)];
}
