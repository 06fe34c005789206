using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using GreenLedger.Domain.Offers;

namespace GreenLedger.Domain.Cupping.Reading;

/// <summary>Reads the rows of one table on one form; a figure's comma is a decimal mark, since no mark reaches 1,000.</summary>
internal sealed class ResultReader
{
    private static readonly char[] Separators = [',', ';', '/', '|'];
    private readonly ResultMapping _mapping;
    private readonly CuppingForm _form;
    private readonly string _fallbackCupper;
    private readonly HashSet<string> _countedInCups;

    public ResultReader(ResultTable table, CuppingForm form, string fallbackCupper)
    {
        _mapping = table.Mapping;
        _form = form;
        _fallbackCupper = fallbackCupper;
        // Some files count good cups (0 to 5), most give points (0 to 10): only counts never pass 5.
        _countedInCups = [.. form.Rules.CupCounted.Select(attribute => attribute.Key).Where(key => NeverAboveFive(table, key))];
    }

    public bool Read(OfferLine line, [NotNullWhen(true)] out ResultRow? row, out Problem? problem)
    {
        (row, problem) = (null, null);
        var name = Text(line, ResultWords.Name) ?? string.Create(CultureInfo.InvariantCulture, $"Row {line.RowNumber}");
        if (ResultList.IsFooter(name))
        {
            problem = new Problem(line.RowNumber, _mapping.Heading(ResultWords.Name), $"'{name}' is a line of the file's own and not a sample.");
            return false;
        }

        try
        {
            var points = _form.Rules.Attributes.Select(attribute => Points(line, attribute)).ToList();
            Rule.Require(points.Any(value => value > 0m), "Every attribute is 0: nothing was scored here.");
            var deducted = _form.Rules.Deductions.Select((deduction, index) => Deducted(line, deduction, index)).ToList();
            var total = SheetTotal.OfAverages(_form.Rules, points, deducted);
            var stated = Figure(line, ResultWords.Total, "The stated total");
            Rule.Require(stated is null or (>= 0m and <= 100m), $"The stated total of {stated} is not possible: no form gives more than 100 points.", ResultWords.Total);
            var cupper = Text(line, ResultWords.Cupper) ?? _fallbackCupper;
            var past = new PastResult(cupper, points, deducted, stated, Words(Text(line, ResultWords.Descriptors)), Text(line, ResultWords.Note));
            row = new ResultRow(line.RowNumber, name, Date(line), past, total.Total, Physical(line));
            return true;
        }
        catch (RuleBrokenException broken)
        {
            problem = new Problem(line.RowNumber, broken.Field is { } field ? _mapping.Heading(field) : null, broken.Message);
            return false;
        }
    }

    private bool NeverAboveFive(ResultTable table, string key)
    {
        var column = ResultList.Column(_mapping, key);
        var values = table.Rows.Select(line => Number(line[column])).OfType<decimal>().ToList();
        return values.Count > 0 && values.All(value => value is >= 0m and <= FormRules.UsualCups && value == Math.Truncate(value));
    }

    private decimal Points(OfferLine line, FormLine attribute)
    {
        var cell = line[ResultList.Column(_mapping, attribute.Key)];
        Rule.Require(!cell.IsEmpty, $"{attribute.Name} is missing: type its points.", attribute.Key);
        var value = Number(cell);
        Rule.Require(value is not null, $"{attribute.Name} is not a number ('{cell.Trimmed}').", attribute.Key);
        return _countedInCups.Contains(attribute.Key) ? value.Value * FormLine.PointsPerCups / FormRules.UsualCups : value.Value;
    }

    /// <summary>Cups in a column of the deduction's own, else points in a joint column, which counts as the first.</summary>
    private decimal Deducted(OfferLine line, FormDeduction deduction, int index)
    {
        var cups = Figure(line, deduction.Key, deduction.Name) ?? 0m;
        Rule.Require(cups is >= 0m and <= 10m, $"{deduction.Name}: {cups} cups is not possible.", deduction.Key);
        var joint = index == 0 ? Math.Abs(Figure(line, ResultWords.Defects, "The deduction") ?? 0m) : 0m;
        return cups * deduction.PointsPerCup + joint;
    }

    private ResultPhysical Physical(OfferLine line)
    {
        var moisture = Figure(line, ResultWords.Moisture, "Moisture");
        var quakers = Figure(line, ResultWords.Quakers, "Quakers");
        Rule.Require(moisture is null or (>= 0m and <= 60m), $"A moisture of {moisture} % is not possible.", ResultWords.Moisture);
        return new ResultPhysical(
            // 0 means missing in such files, and a share below 1 is a fraction of the whole.
            moisture is null or 0m ? null : moisture < 1m ? moisture * 100m : moisture,
            Figure(line, ResultWords.WaterActivity, "Water activity") is > 0m and <= 1m and var activity ? activity : null,
            FullDefects(line, ResultWords.Category1, "Category 1"),
            FullDefects(line, ResultWords.Category2, "Category 2"),
            quakers is >= 0m and <= 1000m ? decimal.ToInt32(Math.Truncate(quakers.Value)) : null);
    }

    private decimal? FullDefects(OfferLine line, string meaning, string what)
    {
        var count = Figure(line, meaning, what);
        Rule.Require(count is null or (>= 0m and <= 10_000m), $"{what}: {count} full defects is not possible.", meaning);
        return count;
    }

    private DateOnly? Date(OfferLine line)
    {
        var cell = line[_mapping.Column(ResultWords.Date)];
        if (cell.IsEmpty)
        {
            return null;
        }

        string[] forms = ["yyyy-MM-dd", "yyyy/MM/dd", "d.M.yyyy", "d/M/yyyy", "d-M-yyyy", "d MMM yyyy", "d MMMM yyyy", "MMMM d, yyyy", "MMM d, yyyy", "yyyy-MM-dd HH:mm:ss"];
        var read = cell.Date ?? (DateOnly.TryParseExact(cell.Trimmed, forms, CultureInfo.InvariantCulture, DateTimeStyles.AllowWhiteSpaces, out var date) ? date : null);
        Rule.Require(read is not null, $"'{cell.Trimmed}' is not a date: write it as 2026-11-25.", ResultWords.Date);
        return read;
    }

    private decimal? Figure(OfferLine line, string meaning, string what)
    {
        var cell = line[_mapping.Column(meaning)];
        var value = Number(cell);
        Rule.Require(cell.IsEmpty || value is not null || cell.Trimmed is "-" or "–" or "n/a" or "N/A", $"{what} is not a number ('{cell.Trimmed}').", meaning);
        return value;
    }

    private string? Text(OfferLine line, string meaning) => line[_mapping.Column(meaning)] is { IsEmpty: false } cell ? cell.Trimmed : null;

    private static decimal? Number(Cell cell)
    {
        if (cell.Number is { } number)
        {
            return number;
        }

        var text = cell.Trimmed.Replace(',', '.').TrimEnd('%').Trim();
        const NumberStyles style = NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign;
        return decimal.TryParse(text, style, CultureInfo.InvariantCulture, out var value) ? value : null;
    }

    private static List<string> Words(string? text) =>
        text is null ? [] : [.. text.Split(Separators, StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Where(word => word.Length <= 60)];
}
