using GreenLedger.Data;
using GreenLedger.Data.Cupping;
using GreenLedger.Documents.Samples;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Samples;

/// <summary>A letter that asks for samples, and the supplier's address where one is known.</summary>
internal sealed record AskedLetter(SampleRequest Request, string? Email);

/// <summary>
/// The letter that asks for a sample and for all others asked of the same sender on the same day. It names coffees, so
/// that it is not there for somebody from whom an open session keeps one of them.
/// </summary>
internal static class RequestLetters
{
    /// <param name="reader">Signs where nobody is on record as having asked.</param>
    /// <returns>Null for a sample that came unasked or is sealed.</returns>
    public static async Task<AskedLetter?> FindAsync(LedgerContext db, Sample asked, Seal seal, string reader, CancellationToken cancellationToken)
    {
        if (asked.AskedOn is not { } on || seal.Covers(asked.Id.Value))
        {
            return null;
        }

        var rows = await db.Samples.AsNoTracking()
            .Where(sample => sample.Id == asked.Id || (sample.AskedOf == asked.AskedOf && sample.AskedOn == on && sample.ReceivedOn == null))
            .Where(sample => !seal.Samples.Contains(sample.Id) && !seal.Lots.Contains(sample.LotId))
            .Join(db.Lots, sample => sample.LotId, lot => lot.Id, (sample, lot) => new { Sample = sample, lot.Ref, lot.Name })
            .OrderBy(row => row.Name).ThenBy(row => row.Sample.LabelCode).ToListAsync(cancellationToken);
        var supplier = await db.Suppliers.AsNoTracking().SingleOrDefaultAsync(one => one.Id == asked.AskedOf, cancellationToken);
        var request = new SampleRequest(
            await db.Houses.Select(house => house.Name).SingleAsync(cancellationToken),
            supplier?.Name,
            supplier?.Language,
            on,
            await db.People.Where(person => person.Id == asked.AskedBy).Select(person => person.Name).SingleOrDefaultAsync(cancellationToken) ?? reader,
            [.. rows.Select(row => new RequestedSample(row.Ref, row.Name, row.Sample.Kind, row.Sample.AskedWeight ?? default, row.Sample.LabelCode))]);
        return new AskedLetter(request, supplier?.Email);
    }
}
