using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Origins;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Origins;

/// <summary>A producer with the number of its lots.</summary>
public sealed record ProducerRow(
    Id<Producer> Id,
    string Name,
    ProducerKind Kind,
    string? CountryCode,
    string? Country,
    string? Region,
    string? Place,
    int? AltitudeFrom,
    int? AltitudeTo,
    int Lots);

/// <summary>Producers, as lists show them.</summary>
public sealed class ProducerQuery(LedgerContext db)
{
    public Task<int> CountAsync(string? search, string? origin, CancellationToken cancellationToken) =>
        Filtered(search, origin).CountAsync(cancellationToken);

    public async Task<IReadOnlyList<ProducerRow>> ListAsync(
        string? search, string? origin, string? sort, int skip, int? take, CancellationToken cancellationToken)
    {
        var rows =
            from producer in Filtered(search, origin)
            join country in db.Countries on producer.CountryCode equals country.Code into countries
            from country in countries.DefaultIfEmpty()
            select new
            {
                Producer = producer,
                Country = (string?)country.Name,
                Lots = db.Lots.Count(lot => lot.ProducerId == producer.Id),
            };
        var sorted = sort switch
        {
            "-name" => rows.OrderByDescending(row => row.Producer.Name),
            "origin" => rows.OrderBy(row => row.Country).ThenBy(row => row.Producer.Name),
            "-origin" => rows.OrderByDescending(row => row.Country).ThenBy(row => row.Producer.Name),
            "lots" => rows.OrderBy(row => row.Lots).ThenBy(row => row.Producer.Name),
            "-lots" => rows.OrderByDescending(row => row.Lots).ThenBy(row => row.Producer.Name),
            _ => rows.OrderBy(row => row.Producer.Name),
        };
        var page = sorted.Skip(skip);
        return await (take is { } most ? page.Take(most) : page).Select(row => new ProducerRow(
            row.Producer.Id,
            row.Producer.Name,
            row.Producer.Kind,
            row.Producer.CountryCode,
            row.Country,
            row.Producer.Region,
            row.Producer.Place,
            row.Producer.AltitudeFrom,
            row.Producer.AltitudeTo,
            row.Lots)).ToListAsync(cancellationToken);
    }

    private IQueryable<Producer> Filtered(string? search, string? origin)
    {
        var producers = db.Producers.AsNoTracking();
        if (SearchText.Of(search) is { Length: > 0 } words)
        {
            producers = producers.Where(producer => producer.SearchText.Contains(words));
        }

        return origin is { Length: > 0 } ? producers.Where(producer => producer.CountryCode == origin) : producers;
    }
}
