using GreenLedger.Data;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using GreenLedger.Web.Display;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.People;

public sealed class IndexModel(LedgerContext db) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public string? Name { get; set; }

    [BindProperty(SupportsGet = true)]
    public string Sort { get; set; } = "name";

    [BindProperty(SupportsGet = true)]
    public int PageNumber { get; set; } = 1;

    public Paging Paging { get; private set; } = Paging.Of(1, 0);

    public IReadOnlyList<AccountRow> People { get; private set; } = [];

    /// <summary>Whose data were erased, the newest first, at most a hundred.</summary>
    public IReadOnlyList<ErasureRow> Erased { get; private set; } = [];

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        var rows = db.Users.AsNoTracking()
            .Join(db.People, account => account.PersonId, person => person.Id, (account, person) => new { account, person });
        if (Name?.Trim() is { Length: > 0 } part)
        {
            var folded = SearchText.Of(part);
            var email = part.ToUpperInvariant();
            rows = rows.Where(row => (folded != "" && row.person.SearchText.Contains(folded)) || row.account.NormalizedEmail!.Contains(email));
        }

        Paging = Paging.Of(PageNumber, await rows.CountAsync(cancellationToken), "person", "people");
        var sorted = Sort switch
        {
            "-name" => rows.OrderByDescending(row => row.person.Name),
            "email" => rows.OrderBy(row => row.account.Email),
            "-email" => rows.OrderByDescending(row => row.account.Email),
            _ => rows.OrderBy(row => row.person.Name),
        };
        var found = await sorted.Skip(Paging.Skip).Take(Paging.Size).ToListAsync(cancellationToken);
        Erased = await db.Erasures.AsNoTracking().OrderByDescending(erasure => erasure.At).Take(100)
            .Join(db.People, erasure => erasure.By, person => person.Id, (erasure, person) => new ErasureRow(erasure, person.Name)).ToListAsync(cancellationToken);
        People = [.. found.Select(row => new AccountRow(row.person, row.account.Email ?? "", row.account.PasswordHash is not null))];
    }

    public sealed record ErasureRow(Erasure Erasure, string By);

    public sealed record AccountRow(Person Person, string Email, bool HasPassword);
}
