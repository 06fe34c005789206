using GreenLedger.Documents.Layout;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace GreenLedger.Web.Display;

/// <summary>
/// A list as a workbook to take away. It is written to memory first: the writer closes its parts with blocking calls,
/// which the server refuses on the answer itself.
/// </summary>
internal static class Workbooks
{
    public static async Task<IActionResult> WorkbookAsync<T>(
        this PageModel page, string title, IReadOnlyList<TableColumn<T>> columns, IEnumerable<T> rows, CancellationToken cancellationToken)
    {
        var file = new MemoryStream();
        await TableWorkbook.WriteAsync(file, title, columns, rows, cancellationToken);
        file.Position = 0;
        return page.File(file, TableWorkbook.MediaType, title + ".xlsx");
    }
}
