using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Origins;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Origins;

public sealed class ProcessMethodsModel(LedgerContext db) : PageModel
{
    public IReadOnlyList<ProcessMethod> Methods { get; private set; } = [];

    public IReadOnlyDictionary<Id<ProcessMethod>, int> Lots { get; private set; } = new Dictionary<Id<ProcessMethod>, int>();

    /// <summary>Words that lists used and no method has, with the number of lots that wait for one.</summary>
    public IReadOnlyList<(string Word, int Lots)> Unknown { get; private set; } = [];

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        Methods = await db.ProcessMethods.AsNoTracking().OrderBy(method => method.Family).ThenBy(method => method.Name).ToListAsync(cancellationToken);
        var lots = await db.Lots.Where(lot => lot.ProcessMethodId != null).Select(lot => lot.ProcessMethodId!.Value)
            .ToListAsync(cancellationToken);
        Lots = lots.CountBy(id => id).ToDictionary();
        var words = await db.Lots.Where(lot => lot.ProcessMethodId == null && lot.ProcessAsWritten != null)
            .Select(lot => lot.ProcessAsWritten!).ToListAsync(cancellationToken);
        Unknown = [.. words.CountBy(word => word).OrderByDescending(pair => pair.Value).ThenBy(pair => pair.Key, StringComparer.Ordinal)
            .Select(pair => (pair.Key, pair.Value))];
    }
}
