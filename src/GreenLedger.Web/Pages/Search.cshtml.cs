using GreenLedger.Data.Search;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace GreenLedger.Web.Pages;

/// <summary>What the search box leads to: the first of each kind, or all of one kind page by page.</summary>
[InArea("Search")]
internal sealed class SearchModel(SearchQuery search, Reader reader) : PageModel
{
    private const int RowsEach = 8;

    [BindProperty(SupportsGet = true, Name = "q")]
    public string? Query { get; set; }

    [BindProperty(SupportsGet = true)]
    public FoundKind? Kind { get; set; }

    public string Text => Query?.Trim() ?? "";

    public bool IsTooShort => SearchQuery.IsTooShort(Text);

    public IReadOnlyList<FoundGroup> Groups { get; private set; } = [];

    /// <summary>Null while several kinds are shown.</summary>
    public Paging? Paging { get; private set; }

    /// <summary>What this person can find, in a sentence without its end.</summary>
    public string Finds => "Finds " + string.Join(", ", SearchQuery.Kinds(reader.MayRead).Select(SearchWords.Many));

    public async Task OnGetAsync([FromQuery(Name = "pageNumber")] int pageNumber, CancellationToken cancellationToken)
    {
        if (IsTooShort)
        {
            return;
        }

        var seal = await reader.SealAsync();
        if (Kind is not { } kind)
        {
            Groups = await search.FindAsync(Text, RowsEach, reader.MayRead, seal, cancellationToken);
            return;
        }

        var skip = (Math.Max(1, pageNumber) - 1) * Paging.UsualSize;
        var group = await search.ListAsync(kind, Text, skip, Paging.UsualSize, reader.MayRead, seal, cancellationToken);
        Groups = group.Total == 0 ? [] : [group];
        Paging = Paging.Of(pageNumber, group.Total, "result", "results");
    }
}
