using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Certificates;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Samples;
using GreenLedger.Domain.Shipments;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.InBrowser;

/// <summary>
/// Fills a page's parameters from what the ledger holds, newest first; a bare UUID is that of what papers are put on, of the
/// kind that the address names before it. A parameter it does not know is an error.
/// </summary>
internal sealed class RealIds(HouseFixture house)
{
    private const int Most = 30;

    private static readonly List<Type> TakePapers = [typeof(Lot), typeof(Offer), typeof(Sample), typeof(Arrival), typeof(Contract), typeof(Shipment), typeof(Certificate)];

    private static readonly Dictionary<string, string[]> Words = new(StringComparer.OrdinalIgnoreCase)
    {
        ["code"] = ["404"], // the page Error, by its status
        ["number"] = ["1"], // a fixing of a contract
        ["country"] = ["CO"],
        ["label"] = ["NOSUCH"], // a real label leads on to its sample, which is a page of its own
    };

    /// <summary>A real lot leads on to its stock or its line of a count, which are pages of their own.</summary>
    private const string LeadsOn = "/Stock/Scan";

    private readonly Dictionary<Type, IReadOnlyList<string>> _known = [];

    /// <summary>Addresses to try, until one is there for whoever asks; none if the ledger holds no such record.</summary>
    public async Task<IReadOnlyList<string>> AddressesAsync(PageRoute route)
    {
        var choices = new List<Dictionary<string, string>> { new(StringComparer.OrdinalIgnoreCase) };
        foreach (var parameter in route.Endpoint.RoutePattern.Parameters)
        {
            var longer = new List<Dictionary<string, string>>();
            foreach (var choice in choices)
            {
                longer.AddRange((await ValuesAsync(route, parameter.Name, choice.Values)).Select(value =>
                    new Dictionary<string, string>(choice, StringComparer.OrdinalIgnoreCase) { [parameter.Name] = value }));
            }

            choices = longer;
        }

        return [.. choices.Take(Most * Most).Select(route.Address)];
    }

    private async Task<IReadOnlyList<string>> ValuesAsync(PageRoute route, string name, ICollection<string> before)
    {
        if (route.Page == LeadsOn)
        {
            return [$"{Guid.Empty}"];
        }

        if (route.Parameters.TryGetValue(name, out var type))
        {
            type = Nullable.GetUnderlyingType(type) ?? type;
            if (type.IsGenericType && type.GetGenericTypeDefinition() == typeof(Id<>))
            {
                return await IdsAsync(type.GetGenericArguments()[0]);
            }

            if (type == typeof(Guid))
            {
                var named = TakePapers.Where(kind => before.Contains(kind.Name)).ToList();
                var ids = new List<string>();
                foreach (var kind in named.Count > 0 ? named : TakePapers)
                {
                    ids.AddRange(await IdsAsync(kind));
                }

                return ids;
            }

            if (type.IsEnum)
            {
                return Enum.GetNames(type);
            }
        }

        if (name == "blindCode")
        {
            return await house.FromLedgerAsync(async db => (IReadOnlyList<string>)await db.CuppingSessions.AsNoTracking()
                .Where(session => session.ClosedAt == null).SelectMany(session => session.Samples).Select(sample => sample.Code).OrderBy(code => code).Take(Most).ToListAsync());
        }

        return Words.TryGetValue(name, out var words)
            ? words
            : throw new InvalidOperationException($"The page {route.Page} has a parameter {name}: say in RealIds what it may be.");
    }

    private async Task<IReadOnlyList<string>> IdsAsync(Type entity)
    {
        if (!_known.TryGetValue(entity, out var ids))
        {
            var read = typeof(RealIds).GetMethod(nameof(ReadAsync), System.Reflection.BindingFlags.Static | System.Reflection.BindingFlags.NonPublic)!
                .MakeGenericMethod(entity);
            ids = await house.FromLedgerAsync(db => (Task<IReadOnlyList<string>>)read.Invoke(null, [db])!);
            _known[entity] = ids;
        }

        return ids;
    }

    private static async Task<IReadOnlyList<string>> ReadAsync<T>(LedgerContext db)
        where T : class
    {
        var ids = await db.Set<T>().AsNoTracking().Select(one => EF.Property<Id<T>>(one, "Id")).ToListAsync();
        return [.. ids.Select(id => $"{id}").OrderDescending(StringComparer.Ordinal).Take(Most)];
    }
}
