using GreenLedger.Data.Summaries;
using GreenLedger.Domain.Summaries;
using GreenLedger.Web.Summaries;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace GreenLedger.Web.Pages.Offers;

/// <summary>A page with one record: of a supplier, a producer or an origin. The model of the partial <c>_Record</c>.</summary>
public abstract class RecordPage(SupplierRecordQuery query) : PageModel
{
    /// <summary>Whose record it is.</summary>
    public string Name { get; private set; } = "";

    public SupplierRecord Record { get; private set; } = null!;

    /// <summary>Below this number a figure shows its counts alone.</summary>
    public int Least { get; private set; }

    /// <summary>Null under two arrivals that were cupped.</summary>
    public RunDrawing? Drawing { get; private set; }

    protected async Task ReadAsync(string name, Func<Source, bool> belongs, CancellationToken cancellationToken)
    {
        Name = name;
        Record = SupplierRecord.Of((await query.FactsAsync(cancellationToken)).Where(belongs));
        Least = (await query.HabitsAsync(cancellationToken)).LeastNumber;
        Drawing = RunDrawing.Of(Record.Differences);
    }
}
