using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Origins;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Origins;

/// <summary>What pages and API do alike with producers, countries, methods and plots. Whoever calls saves.</summary>
public sealed class OriginActs(LedgerContext db)
{
    /// <exception cref="RuleBrokenException">The country is in the list already.</exception>
    public async Task<Country> AddAsync(Country country, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(country);
        Rule.Require(!await db.Countries.AnyAsync(one => one.Code == country.Code, cancellationToken), $"{country.Code} is in the list already: open it there.", nameof(country.Code));
        db.Add(country);
        return country;
    }

    /// <summary>No word may mean two methods; lots that wait for one of these words get this method.</summary>
    public async Task DescribeAsync(ProcessMethod method, string? name, ProcessFamily family, IEnumerable<string> synonyms, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(method);
        method.Describe(name ?? "", family, synonyms);
        var words = method.Synonyms.Append(method.Name).Select(word => SearchText.Of(word)).ToHashSet(StringComparer.Ordinal);
        var others = await db.ProcessMethods.AsNoTracking().Where(other => other.Id != method.Id).ToListAsync(cancellationToken);
        var taken = others.SelectMany(other => other.Synonyms.Append(other.Name).Select(word => (Word: word, other.Name)))
            .FirstOrDefault(pair => words.Contains(SearchText.Of(pair.Word)));
        Rule.Require(taken.Word is null, $"\"{taken.Word}\" belongs to {taken.Name} already: one word names one method.", nameof(ProcessMethod.Synonyms));
        var waiting = await db.Lots.Where(lot => lot.ProcessMethodId == null && lot.ProcessAsWritten != null).ToListAsync(cancellationToken);
        foreach (var lot in waiting.Where(lot => words.Contains(SearchText.Of(lot.ProcessAsWritten))))
        {
            lot.Process(method.Id, lot.ProcessAsWritten);
        }
    }

    /// <summary>Takes a plot out; null where the producer, if one is named, has none such.</summary>
    /// <exception cref="RuleBrokenException">A lot is said to have grown on it.</exception>
    public async Task<Plot?> RemoveAsync(Id<Plot> id, Id<Producer>? producer, CancellationToken cancellationToken)
    {
        if (await db.Plots.SingleOrDefaultAsync(one => one.Id == id && (producer == null || one.ProducerId == producer), cancellationToken) is not { } plot)
        {
            return null;
        }

        Rule.Require(!await db.DueDiligences.AnyAsync(held => held.Plots.Any(one => one.PlotId == id), cancellationToken), $"A lot is said to have grown on {plot.Name}: take the plot off the lot first.", "");
        db.Remove(plot);
        return plot;
    }
}
