using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Samples;

/// <summary>Finds the lot that a received sample stands for, by what somebody types or a script sends.</summary>
internal static class SampleLots
{
    private const int MostNamed = 5;

    /// <summary>The lot with this reference or name.</summary>
    /// <exception cref="RuleBrokenException">There is none, or several.</exception>
    public static async Task<Id<Lot>> FindAsync(LedgerContext db, string named, string field, CancellationToken cancellationToken)
    {
        var lots = await db.Lots.Where(lot => lot.Ref == named || lot.Name == named).Select(lot => new { lot.Id, lot.Ref }).Take(MostNamed).ToListAsync(cancellationToken);
        Rule.Require(lots.Count > 0, $"No lot here is called '{named}': load its offer list first, or check the spelling.", field);
        Rule.Require(lots.Count == 1, $"Several lots are called '{named}': write one of the references {string.Join(", ", lots.Select(lot => lot.Ref).Distinct())}.", field);
        return lots[0].Id;
    }
}
