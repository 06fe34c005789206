using System.Globalization;
using GreenLedger.Data.Cupping;
using GreenLedger.Data.Summaries;
using GreenLedger.Documents.Layout;
using GreenLedger.Domain;
using GreenLedger.Web.Hosting;

namespace GreenLedger.Web.Summaries;

/// <summary>
/// An extract to be sent: rows go into a file of their own while they are read, so that neither memory nor the ledger
/// waits for whoever takes it, and a fault is said instead of half a table.
/// </summary>
internal sealed class ExtractFile
{
    private readonly ExtractTable _table;
    private readonly ExtractFilter _filter;
    private readonly bool _asWorkbook;

    /// <exception cref="RuleBrokenException">The last day lies before the first.</exception>
    public ExtractFile(ExtractTable table, ExtractFilter filter, bool asWorkbook)
    {
        Rule.Require(filter.From is null || filter.Until is null || filter.From <= filter.Until, "The last day lies before the first: turn them round.", "Until");
        (_table, _filter, _asWorkbook) = (table, filter, asWorkbook);
    }

    public string MediaType => _asWorkbook ? TableWorkbook.MediaType : TableText.MediaType;

    public string NameOn(DateOnly today) => string.Create(CultureInfo.InvariantCulture, $"{_table.Name}-{today:yyyy-MM-dd}{(_asWorkbook ? ".xlsx" : ".csv")}");

    /// <summary>The whole file from its beginning; it is gone when the stream is closed.</summary>
    public Task<Stream> WriteAsync(ExtractQuery query, Seal seal, CancellationToken cancellationToken) => PassingFile.WriteAsync(file => _asWorkbook
        ? _table.WriteWorkbookAsync(file, query, _filter, seal, cancellationToken)
        : _table.WriteTextAsync(file, query, _filter, seal, cancellationToken));
}
