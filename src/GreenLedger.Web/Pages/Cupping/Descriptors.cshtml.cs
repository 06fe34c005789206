using GreenLedger.Data;
using GreenLedger.Domain.Cupping;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Cupping;

/// <summary>The house's words for what is tasted, family by family.</summary>
public sealed class DescriptorsModel(LedgerContext db) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public string? Q { get; set; }

    public IReadOnlyList<IGrouping<string, Descriptor>> Families { get; private set; } = [];

    public int Count { get; private set; }

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        var words = db.Descriptors.AsNoTracking();
        if (!string.IsNullOrWhiteSpace(Q))
        {
            var part = Q.Trim();
            words = words.Where(word => word.Word.Contains(part) || word.Family.Contains(part));
        }

        var found = await words.OrderBy(word => word.Family).ThenBy(word => word.Word).ToListAsync(cancellationToken);
        Count = found.Count;
        Families = [.. found.GroupBy(word => word.Family)];
    }
}
