using GreenLedger.Domain.Origins;
using GreenLedger.Domain.Stock;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Stock;

/// <summary>Origins that could serve a purpose: those of lots that serve it, and of lots of its process that our panel scored high enough.</summary>
public sealed class FillingOriginsQuery(LedgerContext db)
{
    /// <summary>By name.</summary>
    public async Task<IReadOnlyList<Country>> ListAsync(Purpose purpose, CancellationToken cancellationToken)
    {
        var serving = purpose.Lots.Select(lot => lot.LotId).ToList();
        var methods = await db.ProcessMethods.AsNoTracking().Where(method => method.Family == purpose.Process).Select(method => method.Id).ToListAsync(cancellationToken);
        var (anyProcess, least) = (purpose.Process is null, purpose.LeastScore?.Millionths ?? 0);
        return await db.Countries.AsNoTracking()
            .Where(country => db.Lots.Any(lot => lot.CountryCode == country.Code && (serving.Contains(lot.Id)
                || ((anyProcess || (lot.ProcessMethodId != null && methods.Contains(lot.ProcessMethodId.Value)))
                    && db.SampleResults.Any(result => result.LotId == lot.Id && result.Fitted.Millionths >= least)))))
            .OrderBy(country => country.Name).ToListAsync(cancellationToken);
    }
}
