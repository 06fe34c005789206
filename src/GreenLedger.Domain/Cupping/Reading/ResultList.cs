using System.Globalization;

namespace GreenLedger.Domain.Cupping.Reading;

/// <summary>Physical figures that stand in the same row; what was not measured is null.</summary>
public sealed record ResultPhysical(decimal? MoisturePercent, decimal? WaterActivity, decimal? Category1, decimal? Category2, int? Quakers)
{
    public bool IsEmpty => this == new ResultPhysical(null, null, null, null, null);
}

/// <summary>One row that can be taken in.</summary>
public sealed record ResultRow(int Row, string Name, DateOnly? HeldOn, PastResult Result, decimal Computed, ResultPhysical Physical)
{
    /// <summary>By how much the file's total and the computed one may differ before it is listed: 0.05 points.</summary>
    public const decimal Tolerance = 0.05m;

    /// <summary>The file's total is not what the row adds up to; it is listed and not corrected.</summary>
    public bool Disagrees => Result.StatedTotal is { } stated && Math.Abs(stated - Computed) > Tolerance;
}

/// <summary>A row that was not taken, with its texts and what to do about it.</summary>
public sealed record ResultSetAside(int Row, IReadOnlyList<string> Values, Problem Problem);

/// <summary>A whole file of past results, judged: rows to take in and rows set aside.</summary>
public sealed record ResultList(CuppingForm Form, ResultMapping Mapping, IReadOnlyList<ResultRow> Accepted, IReadOnlyList<ResultSetAside> SetAside)
{
    private static readonly HashSet<string> Footers = ["average", "mean", "promedio", "media", "moyenne", "durchschnitt", "mittelwert", "total", "sum", "min", "max", "std dev", "standard deviation"];

    public IEnumerable<ResultRow> Disagreements => Accepted.Where(row => row.Disagrees);

    /// <summary>The form whose attributes the columns cover best; the first given wins a tie.</summary>
    public static CuppingForm Guess(ResultMapping mapping, IReadOnlyList<CuppingForm> forms)
    {
        ArgumentNullException.ThrowIfNull(mapping);
        ArgumentNullException.ThrowIfNull(forms);
        return forms.MaxBy(form => (double)form.Rules.Attributes.Count(attribute => Column(mapping, attribute.Key) >= 0) / form.Rules.Attributes.Count)!;
    }

    /// <summary>Reads every row of the table on one form.</summary>
    /// <param name="fallbackCupper">Who cupped, where the file has no column for it.</param>
    /// <exception cref="RuleBrokenException">The file lacks a column for one of the form's attributes.</exception>
    public static ResultList From(ResultTable table, CuppingForm form, string fallbackCupper)
    {
        ArgumentNullException.ThrowIfNull(table);
        ArgumentNullException.ThrowIfNull(form);
        var missing = form.Rules.Attributes.Where(attribute => Column(table.Mapping, attribute.Key) < 0).Select(attribute => attribute.Name).ToList();
        Rule.Require(missing.Count == 0, $"The {form.Name} needs a column for {string.Join(", ", missing)}: say which column holds it.", "Mapping");
        var reader = new ResultReader(table, form, fallbackCupper);
        var accepted = new List<ResultRow>();
        var setAside = new List<ResultSetAside>();
        var firstRows = new Dictionary<(string, string, DateOnly?), int>();
        foreach (var line in table.Rows)
        {
            if (reader.Read(line, out var row, out var problem) && IsFirst(row, firstRows, out problem))
            {
                accepted.Add(row);
            }
            else
            {
                setAside.Add(new ResultSetAside(line.RowNumber, [.. line.Cells.Select(cell => cell.Trimmed)], problem!));
            }
        }

        return new ResultList(form, table.Mapping, accepted, setAside);
    }

    /// <summary>The same list without the rows of names that several lots answer to: those are set aside and not guessed.</summary>
    /// <param name="table">The table that the list was read from.</param>
    /// <param name="unclear">The sentence for each such name.</param>
    public ResultList Without(IReadOnlyDictionary<string, string> unclear, ResultTable table)
    {
        ArgumentNullException.ThrowIfNull(unclear);
        ArgumentNullException.ThrowIfNull(table);
        var lines = table.Rows.ToDictionary(line => line.RowNumber);
        var aside = Accepted.Where(row => unclear.ContainsKey(row.Name))
            .Select(row => new ResultSetAside(row.Row, [.. lines[row.Row].Cells.Select(cell => cell.Trimmed)], new Problem(row.Row, Mapping.Heading(ResultWords.Name), unclear[row.Name])));
        return this with { Accepted = [.. Accepted.Where(row => !unclear.ContainsKey(row.Name))], SetAside = [.. SetAside.Concat(aside).OrderBy(one => one.Row)] };
    }

    internal static bool IsFooter(string name) => Footers.Contains(Measures.SearchText.Of(name));

    /// <summary>Either word alone may stand for the joint attribute of the 100-point form.</summary>
    internal static int Column(ResultMapping mapping, string key) => key switch
    {
        "fragrance-aroma" when mapping.Column(key) < 0 => Math.Max(mapping.Column("aroma"), mapping.Column("fragrance")),
        "body" when mapping.Column(key) < 0 => mapping.Column("mouthfeel"),
        _ => mapping.Column(key),
    };

    private static bool IsFirst(ResultRow row, Dictionary<(string, string, DateOnly?), int> firstRows, out Problem? problem)
    {
        var key = (row.Name.ToUpperInvariant(), row.Result.Cupper.ToUpperInvariant(), row.HeldOn);
        var isFirst = firstRows.TryAdd(key, row.Row);
        problem = isFirst ? null : new Problem(row.Row, null, string.Create(CultureInfo.InvariantCulture, $"'{row.Name}' already stands in row {firstRows[key]} with the same cupper and date: give it a name of its own or a date."));
        return isFirst;
    }
}
