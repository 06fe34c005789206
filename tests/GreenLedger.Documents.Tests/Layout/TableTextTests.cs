using System.Text;
using CsvHelper;
using GreenLedger.Documents.Layout;

namespace GreenLedger.Documents.Tests.Layout;

public sealed class TableTextTests
{
    private static readonly IReadOnlyList<TableColumn<Row>> Columns =
    [
        TableColumn<Row>.Text("Lot", row => row.Name),
        TableColumn<Row>.Number("Quantity, kg", row => row.Kilograms),
    ];

    [Fact]
    public async Task A_table_is_read_back_cell_by_cell()
    {
        var text = await WrittenAsync(new Row("Sítio, \"Alto\"", 2660.5m), new Row("Two\nlines", null));

        Assert.Equal([["Lot", "Quantity, kg"], ["Sítio, \"Alto\"", "2660.5"], ["Two\nlines", ""]], Read(text));
        Assert.StartsWith("\uFEFF", text, StringComparison.Ordinal);
    }

    // The signs by which spreadsheet programs know a formula: OWASP, "CSV injection".
    [Theory]
    [InlineData("=1+1", "'=1+1")]
    [InlineData("+49 30 1", "'+49 30 1")]
    [InlineData("-SUM(A1)", "'-SUM(A1)")]
    [InlineData("@now", "'@now")]
    [InlineData("\tx", "'\tx")]
    [InlineData("-20", "-20")]
    [InlineData("AA=1", "AA=1")]
    public async Task Text_that_looks_like_a_formula_is_kept_from_being_one(string text, string written)
    {
        var rows = Read(await WrittenAsync(new Row(text, null)));

        Assert.Equal(written, rows[1][0]);
    }

    [Fact]
    public async Task A_heading_of_a_suppliers_list_is_kept_from_being_a_formula_too()
    {
        using var stream = new MemoryStream();

        await TableText.WriteAsync<Row>(stream, [TableColumn<Row>.Text("=HYPERLINK(A1)", row => row.Name)], [], TestContext.Current.CancellationToken);

        Assert.Equal("'=HYPERLINK(A1)", Read(Encoding.UTF8.GetString(stream.ToArray()))[0][0]);
    }

    private static List<string[]> Read(string text)
    {
        using var reader = CsvReader.FromText(text.TrimStart('\uFEFF'), new CsvReaderOptions { HasHeader = false });
        var rows = new List<string[]>();
        while (reader.Read())
        {
            rows.Add([.. Enumerable.Range(0, reader.FieldCount).Select(reader.GetString)]);
        }

        return rows;
    }

    private static async Task<string> WrittenAsync(params Row[] rows)
    {
        using var stream = new MemoryStream();
        await TableText.WriteAsync(stream, Columns, rows, TestContext.Current.CancellationToken);
        return Encoding.UTF8.GetString(stream.ToArray());
    }

    private sealed record Row(string Name, decimal? Kilograms);
}
