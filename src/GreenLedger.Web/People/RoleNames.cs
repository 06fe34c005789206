using GreenLedger.Domain.People;

namespace GreenLedger.Web.People;

/// <summary>The roles in words, as the screens and docs/roles.md say them.</summary>
internal static class RoleNames
{
    public static IReadOnlyList<Role> All { get; } =
        [Role.Viewer, Role.Cupper, Role.LeadCupper, Role.Buyer, Role.Administrator];

    public static string Of(Role roles) =>
        roles == Role.None ? "no role" : string.Join(", ", All.Where(role => roles.HasFlag(role)).Select(Word));

    public static Role Together(IEnumerable<Role> roles) => roles.Aggregate(Role.None, (all, role) => all | role);

    public static string Word(Role role) => role == Role.LeadCupper ? "lead cupper" : role.ToString().ToLowerInvariant();
}
