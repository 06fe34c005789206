using System.Security.Claims;
using System.Security.Cryptography;
using System.Text.Encodings.Web;
using GreenLedger.Data;
using GreenLedger.Domain.People;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.WebUtilities;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Options;
using Microsoft.Net.Http.Headers;

namespace GreenLedger.Web.People;

/// <summary>Signs a script in by the token of its <c>Authorization: Bearer</c> header.</summary>
internal sealed class BearerTokens(
    IOptionsMonitor<AuthenticationSchemeOptions> options,
    ILoggerFactory loggers,
    UrlEncoder encoder,
    LedgerContext db,
    TimeProvider clock)
    : AuthenticationHandler<AuthenticationSchemeOptions>(options, loggers, encoder)
{
    public const string SchemeName = "Bearer";
    private const string Prefix = "Bearer ";

    public static string New() => "gl_" + WebEncoders.Base64UrlEncode(RandomNumberGenerator.GetBytes(32));

    public static string Hash(string token) => ApiToken.HashOf(token);

    public static bool IsShown(HttpRequest request) =>
        request.Headers.Authorization.ToString().StartsWith(Prefix, StringComparison.OrdinalIgnoreCase);

    protected override async Task<AuthenticateResult> HandleAuthenticateAsync()
    {
        if (!IsShown(Request))
        {
            return AuthenticateResult.NoResult();
        }

        var hash = Hash(Request.Headers.Authorization.ToString()[Prefix.Length..].Trim());
        var found = await db.ApiTokens
            .Where(token => token.Hash == hash && token.RevokedAt == null)
            .Join(db.People, token => token.OwnerId, person => person.Id, (token, person) => new { token, person })
            .AsNoTracking()
            .SingleOrDefaultAsync(Context.RequestAborted);
        if (found is null || !found.person.IsActive)
        {
            return AuthenticateResult.Fail("The token is unknown or revoked.");
        }

        await NoteUseAsync(found.token);
        var identity = new ClaimsIdentity(AccountClaims.Of(found.person, showsPounds: false), SchemeName);
        identity.AddClaim(new Claim(ClaimTypes.Name, found.person.Name));
        return AuthenticateResult.Success(new AuthenticationTicket(new ClaimsPrincipal(identity), SchemeName));
    }

    protected override Task HandleChallengeAsync(AuthenticationProperties properties)
    {
        Response.StatusCode = StatusCodes.Status401Unauthorized;
        Response.Headers[HeaderNames.WWWAuthenticate] = SchemeName;
        return Task.CompletedTask;
    }

    /// <summary>Written at most once a minute, so that a busy script does not make every request a write.</summary>
    private async Task NoteUseAsync(ApiToken token)
    {
        var now = clock.GetUtcNow();
        if (token.LastUsedAt is not { } last || now - last > TimeSpan.FromMinutes(1))
        {
            await db.ApiTokens.Where(one => one.Id == token.Id)
                .ExecuteUpdateAsync(set => set.SetProperty(one => one.LastUsedAt, now), Context.RequestAborted);
        }
    }
}
