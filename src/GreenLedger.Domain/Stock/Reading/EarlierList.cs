using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Offers.Reading;

namespace GreenLedger.Domain.Stock.Reading;

/// <summary>An earlier contract as a file tells it, not yet compared with the ledger.</summary>
public sealed record EarlierEntry(EarlierTerms Terms, IReadOnlyList<EarlierRow> Rows)
{
    /// <summary>Every lot has arrived: nothing is open any more.</summary>
    public bool IsPast => Rows.All(row => row.Arrival is not null);
}

/// <summary>
/// What a house had bought before its ledger began, from a workbook or text table: one row for each lot of a contract. A
/// contract is taken whole or not at all: where one of its rows cannot be read, all of them are set aside. One that has arrived in part
/// becomes two: what came, closed, under its number with a sign, and what is open.
/// </summary>
public sealed class EarlierList
{
    /// <summary>What is said of the contract and not of a lot: rows may leave it empty, and may not contradict one another.</summary>
    private static readonly EarlierColumn[] OfContract =
    [
        EarlierColumn.Supplier, EarlierColumn.SignedOn, EarlierColumn.Incoterm, EarlierColumn.Place, EarlierColumn.ShipFrom, EarlierColumn.ShipUntil, EarlierColumn.Price,
        EarlierColumn.Currency, EarlierColumn.Unit, EarlierColumn.Month, EarlierColumn.Differential, EarlierColumn.MarketLots, EarlierColumn.FixedLots, EarlierColumn.FixedAt, EarlierColumn.FixedOn, EarlierColumn.Call, EarlierColumn.Approval,
    ];

    /// <summary>Stands behind the number of what has arrived of a contract that is open.</summary>
    private const string PartSign = "/1";

    private readonly HeadedTable<EarlierColumn> _table;
    private readonly List<EarlierEntry> _entries = [];
    private readonly List<RowSetAside> _setAside = [];

    private EarlierList(HeadedTable<EarlierColumn> table, EarlierReader reader)
    {
        _table = table;
        foreach (var rows in table.Rows.GroupBy(line => table.Text(line, EarlierColumn.Contract)?.ToUpperInvariant()))
        {
            Take([.. rows], reader);
        }
    }

    public IReadOnlyList<EarlierEntry> Entries => _entries;

    /// <summary>In the order of the file.</summary>
    public IReadOnlyList<RowSetAside> SetAside => [.. _setAside.OrderBy(line => line.Row)];

    /// <param name="lines">As the file has them.</param>
    /// <param name="house">The currency of landed costs that name none.</param>
    /// <param name="today">The day on which it is read.</param>
    /// <exception cref="RuleBrokenException">No line names the contract, the supplier and the bags.</exception>
    public static EarlierList Of(IReadOnlyList<OfferLine> lines, Currency house, DateOnly today)
    {
        var table = HeadedTable<EarlierColumn>.Find(
            lines, EarlierWords.Meaning, columns => columns.Contains(EarlierColumn.Contract) && columns.Contains(EarlierColumn.Supplier) && (columns.Contains(EarlierColumn.Bags) || columns.Contains(EarlierColumn.Net)));
        Rule.Require(table is not null, "No line of this file names its columns: the first row should say which one holds the number of the contract, which one the supplier, and which one the bags.", "File");
        return new EarlierList(table, new EarlierReader(table, house, today));
    }

    /// <summary>Sets a whole contract aside that the ledger does not take.</summary>
    /// <param name="entry">The contract.</param>
    /// <param name="row">The row that is wrong; null where it is the contract as a whole.</param>
    /// <param name="broken">Why, with the column where there is one.</param>
    internal void Refuse(EarlierEntry entry, EarlierRow? row, RuleBrokenException broken)
    {
        _entries.Remove(entry);
        var lines = entry.Rows.Select(one => one.Line).ToList();
        SetAsideAll(lines, [_table.Aside(row?.Line ?? Saying(lines, broken), broken)]);
    }

    private void Take(List<OfferLine> lines, EarlierReader reader)
    {
        var problems = new List<RowSetAside>();
        T? Try<T>(OfferLine line, Func<T> read)
            where T : class
        {
            try
            {
                return read();
            }
            catch (RuleBrokenException broken)
            {
                problems.Add(_table.Aside(line.RowNumber == lines[0].RowNumber ? Saying(lines, broken) : line, broken));
                return null;
            }
        }

        var terms = Try(lines[0], () =>
        {
            RequireAgreement(lines);
            return reader.Terms(HeadedTable<EarlierColumn>.Joined(lines));
        });
        var rows = lines.SelectMany(line => Try(line, () => reader.Rows(line)) ?? []).ToList();
        var came = rows.Where(row => row.Arrival is not null).ToList();
        var isParted = came.Count > 0 && came.Count < rows.Count;
        if (problems.Count == 0 && isParted && terms!.Month is not null)
        {
            problems.Add(_table.Aside(
                rows.First(row => row.Arrival is null).Line, _table.HeadingOf(EarlierColumn.ArrivedOn),
                "A part of this contract has arrived and the price stands against a futures month: give what has arrived a contract number of its own, such as P25-014/1, with the fixings that are its own."));
        }

        if (terms is not null && problems.Count == 0)
        {
            _entries.AddRange(isParted
                ? [new EarlierEntry(terms with { Number = terms.Number + PartSign }, came), new EarlierEntry(terms, [.. rows.Except(came)])]
                : [new EarlierEntry(terms, rows)]);
        }
        else
        {
            SetAsideAll(lines, problems);
        }
    }

    private void RequireAgreement(List<OfferLine> lines)
    {
        foreach (var column in OfContract)
        {
            var said = lines.Select(line => _table.Text(line, column)).OfType<string>().Distinct(StringComparer.OrdinalIgnoreCase).Take(2).ToList();
            Rule.Require(said.Count < 2, $"The rows of this contract contradict one another: '{said[0]}' and '{(said.Count < 2 ? "" : said[1])}'. A contract has one; give the lots contracts of their own, or put one right.", column.ToString());
        }
    }

    /// <summary>The last line that says something in the column that the problem is about: where rows contradict one another, the later one.</summary>
    private OfferLine Saying(List<OfferLine> lines, RuleBrokenException broken) =>
        Enum.TryParse<EarlierColumn>(broken.Field, out var column) && OfContract.Contains(column) ? lines.FindLast(line => _table.Text(line, column) is not null) ?? lines[0] : lines[0];

    private void SetAsideAll(List<OfferLine> lines, List<RowSetAside> problems)
    {
        _setAside.AddRange(problems);
        var rows = string.Join(", ", problems.Select(one => one.Row).Distinct().Order());
        _setAside.AddRange(lines.Where(line => problems.TrueForAll(one => one.Row != line.RowNumber))
            .Select(line => _table.Aside(line, null, $"Row {rows} of the same contract cannot be taken, and a contract is taken whole: mend that row.")));
    }
}
