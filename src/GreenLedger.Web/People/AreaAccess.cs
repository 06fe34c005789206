using System.Collections.Frozen;
using GreenLedger.Domain.People;

namespace GreenLedger.Web.People;

/// <summary>
/// Who may do what: area by role. The same table stands in docs/roles.md, and the tests hold every route of the
/// running application against that page. An area that is not listed is closed to everybody.
/// </summary>
internal static class AreaAccess
{
    private static readonly Role[] Columns = [Role.Viewer, Role.Cupper, Role.LeadCupper, Role.Buyer, Role.Administrator];

    private static readonly FrozenDictionary<string, Access[]> Rows = new Dictionary<string, string>
    {
        // Area                   viewer, cupper, lead cupper, buyer, administrator: n(one) r(ead) w(rite)
        ["Home"] = "r r r r r",
        ["Search"] = "r r r r r",
        ["Myself"] = "w w w w w",
        ["Origins"] = "r r w w r",
        ["Offers"] = "r n n w r",
        ["Samples"] = "r r w w r",
        ["Grading"] = "r w w w r",
        ["Roasting"] = "r w w w r",
        ["Cupping"] = "r w w w r",
        ["Cupping, leading"] = "n n w w n",
        ["Cuppers' records"] = "n n r n n",
        ["Pricing"] = "r n n w r",
        ["Choosing"] = "r n n w r",
        ["Certificates"] = "r n n w r",
        ["Contracts"] = "r n n w r",
        ["Shipments"] = "r n n w r",
        ["Arrivals"] = "r n n w r",
        ["Due"] = "r r r w r",
        ["Summaries"] = "r n n w r",
        ["Costs"] = "r n n w r",
        ["Stock"] = "r n n w r",
        ["Trace"] = "r n n w r",
        ["Papers"] = "r r w w r",
        ["All changes"] = "n n n n r",
        ["Settings"] = "n n n r w",
        ["People"] = "n n n n w",
        ["Archive"] = "n n n n w",
    }.ToFrozenDictionary(row => row.Key, row => row.Value.Split(' ').Select(Read).ToArray());

    public static IEnumerable<string> Areas => Rows.Keys;

    /// <summary>The most that any of the roles allows.</summary>
    public static Access Of(string area, Role roles)
    {
        if (!Rows.TryGetValue(area, out var row))
        {
            return Access.None;
        }

        var most = Access.None;
        for (var column = 0; column < Columns.Length; column++)
        {
            if (roles.HasFlag(Columns[column]) && row[column] > most)
            {
                most = row[column];
            }
        }

        return most;
    }

    /// <summary>In words, for somebody who may not: "your house’s administrator or buyer".</summary>
    public static string WhoWrites(string area) =>
        "your house’s " + string.Join(" or ", Columns.Where(role => Of(area, role) == Access.Write).Reverse().Select(RoleNames.Word));

    private static Access Read(string letter) => letter switch
    {
        "r" => Access.Read,
        "w" => Access.Write,
        _ => Access.None,
    };
}
