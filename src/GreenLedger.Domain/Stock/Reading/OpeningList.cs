using System.Globalization;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Offers.Reading;

namespace GreenLedger.Domain.Stock.Reading;

/// <summary>
/// What a house had in stock when its ledger began, from a workbook or text table: one row for each lot and warehouse, with
/// bags, kilograms and, where known, the day, the invoice and what it cost. Rows that cannot be read are set aside.
/// </summary>
public sealed class OpeningList
{
    /// <summary>More than any bag holds; a figure beyond it has its decimal mark in the wrong place.</summary>
    private const decimal HeaviestBag = 1_500m;

    private readonly HeadedTable<OpeningColumn> _table;
    private readonly Currency _house;
    private readonly List<OpeningRow> _rows = [];
    private readonly List<RowSetAside> _setAside = [];

    private OpeningList(HeadedTable<OpeningColumn> table, Currency house)
    {
        (_table, _house) = (table, house);
        var first = new Dictionary<OpeningRow, int>();
        foreach (var line in table.Rows)
        {
            Take(line, first);
        }
    }

    public IReadOnlyList<string> Headings => _table.Headings;

    public IReadOnlyList<OpeningRow> Rows => _rows;

    public IReadOnlyList<RowSetAside> SetAside => _setAside;

    /// <param name="lines">As the file has them.</param>
    /// <param name="house">The currency of costs that name none.</param>
    /// <exception cref="RuleBrokenException">No line names the lot and its kilograms.</exception>
    public static OpeningList Of(IReadOnlyList<OfferLine> lines, Currency house)
    {
        var table = HeadedTable<OpeningColumn>.Find(
            lines, OpeningWords.Meaning, columns => columns.Contains(OpeningColumn.Lot) && (columns.Contains(OpeningColumn.Weighed) || columns.Contains(OpeningColumn.Packed)));
        Rule.Require(table is not null, "No line of this file names its columns: the first row should say which one holds the lot and which one its kilograms, such as Lot and As weighed (kg).", "File");
        return new OpeningList(table, house);
    }

    /// <summary>Sets a row aside that the ledger does not take.</summary>
    public void Refuse(OpeningRow row, OpeningColumn column, string sentence)
    {
        ArgumentNullException.ThrowIfNull(row);
        _rows.Remove(row);
        _setAside.Add(new RowSetAside(row.Row, [row.Lot, row.Name ?? "", row.Warehouse ?? "", row.Amount.Weighed.ToString()], new Problem(row.Row, _table.HeadingOf(column), sentence)));
        _setAside.Sort((one, other) => one.Row.CompareTo(other.Row));
    }

    private void Take(OfferLine line, Dictionary<OpeningRow, int> first)
    {
        try
        {
            var row = Read(line);
            Rule.Require(first.TryAdd(row with { Row = 0 }, row.Row), $"This is row {first[row with { Row = 0 }]} once more: leave it out, or say what differs.", nameof(OpeningColumn.Lot));
            _rows.Add(row);
        }
        catch (RuleBrokenException broken)
        {
            _setAside.Add(_table.Aside(line, broken));
        }
    }

    private OpeningRow Read(OfferLine line)
    {
        var lot = _table.Text(line, OpeningColumn.Lot);
        Rule.Require(lot is not null, "The lot is missing: write its reference.", nameof(OpeningColumn.Lot));
        var amount = Amount(line);
        return new OpeningRow(
            line.RowNumber, lot, Text(line, OpeningColumn.Name), Text(line, OpeningColumn.Supplier), Text(line, OpeningColumn.Country), Text(line, OpeningColumn.Crop), Text(line, OpeningColumn.Warehouse),
            amount, _table.Day(line, OpeningColumn.On), Text(line, OpeningColumn.Document), Cost(line, amount.Weighed));
    }

    /// <summary>What only the papers or only the scales say stands for both.</summary>
    private StockAmount Amount(OfferLine line)
    {
        var bags = Number(line, OpeningColumn.Bags, NumberRange.Bags) ?? 0m;
        Rule.Require(bags >= 0m && bags <= 100_000m && bags == decimal.Truncate(bags), $"'{Text(line, OpeningColumn.Bags)}' is no number of bags: they are whole, between 0 and 100,000.", nameof(OpeningColumn.Bags));
        var (weighed, packed) = (Number(line, OpeningColumn.Weighed, NumberRange.Quantity), Number(line, OpeningColumn.Packed, NumberRange.Quantity));
        Rule.Require((weighed ?? packed) is > 0m and <= 100_000_000m && packed is null or (> 0m and <= 100_000_000m), "The kilograms are missing or not above zero: write what lies there.", nameof(OpeningColumn.Weighed));
        var (there, papers) = (weighed ?? packed!.Value, packed ?? weighed!.Value);
        Rule.Require(
            bags == 0m || there <= bags * HeaviestBag,
            string.Create(CultureInfo.InvariantCulture, $"{there:#,0.###} kg in {bags:#,0} bags is more than bags hold: check the decimal mark."), nameof(OpeningColumn.Weighed));
        return new StockAmount(decimal.ToInt32(bags), Weight.FromKilograms(papers), Weight.FromKilograms(there));
    }

    private Money? Cost(OfferLine line, Weight weighed)
    {
        var (whole, each) = (Number(line, OpeningColumn.Cost, NumberRange.Any), Number(line, OpeningColumn.PerKilogram, NumberRange.Any));
        if (whole is null && each is null)
        {
            return null;
        }

        var currency = Text(line, OpeningColumn.Currency) is { } code ? Currency.Of(code) : _house;
        var cost = whole is { } sum ? Money.Of(sum, currency) : PricePerWeight.Of(each!.Value, currency, PriceUnit.Kilogram) * weighed;
        Rule.Require(cost.MinorUnits > 0, "What it cost lies above zero; leave it empty where you do not know.", nameof(OpeningColumn.Cost));
        return cost;
    }

    private decimal? Number(OfferLine line, OpeningColumn column, NumberRange range) => _table.Number(line, column, range);

    private string? Text(OfferLine line, OpeningColumn column) => _table.Text(line, column);
}
