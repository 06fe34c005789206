using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.People;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Myself;

public sealed class TokensModel(LedgerContext db, TimeProvider clock) : FormPage
{
    [BindProperty]
    public TokenForm Input { get; set; } = new();

    public IReadOnlyList<ApiToken> Tokens { get; private set; } = [];

    /// <summary>The token just made, shown once.</summary>
    [TempData]
    public string? Fresh { get; set; }

    public Task OnGetAsync(CancellationToken cancellationToken) => LoadAsync(cancellationToken);

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var token = BearerTokens.New();
        db.ApiTokens.Add(new ApiToken(User.Person(), Input.Name, BearerTokens.Hash(token), clock.GetUtcNow()));
        await db.SaveChangesAsync(cancellationToken);
        Fresh = token;
        return RedirectToPage();
    }

    public async Task<IActionResult> OnPostRevokeAsync(Id<ApiToken> token, CancellationToken cancellationToken)
    {
        var person = User.Person();
        var found = await db.ApiTokens.SingleOrDefaultAsync(one => one.Id == token && one.OwnerId == person, cancellationToken);
        if (found is null)
        {
            return NotFound();
        }

        found.Revoke(clock.GetUtcNow());
        await db.SaveChangesAsync(cancellationToken);
        Say($"The token “{found.Name}” is revoked.");
        return RedirectToPage();
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        var person = User.Person();
        Tokens = await db.ApiTokens.AsNoTracking().Where(token => token.OwnerId == person)
            .OrderByDescending(token => token.MadeAt).ToListAsync(cancellationToken);
    }

    public sealed class TokenForm
    {
        [Required(ErrorMessage = "Please say what the token is for.")]
        [Display(Name = "What it is for")]
        public string Name { get; set; } = "";
    }
}
