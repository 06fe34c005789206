using System.Security.Claims;
using GreenLedger.Domain;
using GreenLedger.Domain.People;

namespace GreenLedger.Web.People;

/// <summary>Who is signed in, as the pages ask it.</summary>
internal static class SignedIn
{
    public const string PersonClaim = "person";
    public const string RolesClaim = "roles";
    public const string PoundsClaim = "pounds";

    /// <exception cref="InvalidOperationException">Nobody is signed in.</exception>
    public static Id<Person> Person(this ClaimsPrincipal user) =>
        user.FindPerson() ?? throw new InvalidOperationException("Nobody is signed in.");

    public static Id<Person>? FindPerson(this ClaimsPrincipal user) =>
        Id<Person>.TryParse(user.FindFirstValue(PersonClaim), null, out var person) ? person : null;

    public static string PersonName(this ClaimsPrincipal user) => user.FindFirstValue(ClaimTypes.Name) ?? "";

    public static Role Roles(this ClaimsPrincipal user) =>
        Enum.TryParse<Role>(user.FindFirstValue(RolesClaim), out var roles) ? roles : Role.None;

    public static bool ShowsPounds(this ClaimsPrincipal user) => user.HasClaim(PoundsClaim, "true");

    /// <summary>May look at the area of docs/roles.md.</summary>
    public static bool MayRead(this ClaimsPrincipal user, string area) =>
        AreaAccess.Of(area, user.Roles()) >= Access.Read;

    /// <summary>May change things in the area of docs/roles.md.</summary>
    public static bool MayWrite(this ClaimsPrincipal user, string area) =>
        AreaAccess.Of(area, user.Roles()) >= Access.Write;
}
