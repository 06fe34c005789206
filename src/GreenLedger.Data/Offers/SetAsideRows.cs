using GreenLedger.Domain;
using GreenLedger.Domain.Offers;

namespace GreenLedger.Data.Offers;

/// <summary>Scopes over the rows that lists had set aside.</summary>
public static class SetAsideRows
{
    public static IQueryable<SetAsideRow> OfList(this IQueryable<SetAsideRow> rows, Id<OfferList> list) => rows.Where(row => row.ListId == list);

    /// <summary>Those that nobody has mended yet.</summary>
    public static IQueryable<SetAsideRow> Waiting(this IQueryable<SetAsideRow> rows) => rows.Where(row => row.MendedAt == null);
}
