using GreenLedger.Data;
using GreenLedger.Data.Summaries;
using GreenLedger.Domain;
using GreenLedger.Domain.Summaries;
using GreenLedger.Web.Display;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Offers;

/// <summary>Every supplier, producer or origin, ranked by one figure of its record.</summary>
public sealed class RecordsModel(LedgerContext db, SupplierRecordQuery query) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public RecordOf Of { get; set; }

    [BindProperty(SupportsGet = true)]
    public RankedBy By { get; set; }

    [BindProperty(SupportsGet = true)]
    public int PageNumber { get; set; } = 1;

    public Paging Paging { get; private set; } = Paging.Of(1, 0);

    public int Least { get; private set; }

    public IReadOnlyList<RankedRecord<Whose>> Rows { get; private set; } = [];

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        var facts = await query.FactsAsync(cancellationToken);
        Least = (await query.HabitsAsync(cancellationToken)).LeastNumber;
        var records = (await WhoseAsync(facts, cancellationToken)).Select(one => (one.Whose, SupplierRecord.Of(facts.Where(one.Belongs))));
        var ranked = RecordRanking.Of(records, By, Least);
        Paging = Paging.Of(PageNumber, ranked.Count, "record", "records");
        Rows = [.. ranked.Skip(Paging.Skip).Take(Paging.Size)];
    }

    private async Task<IEnumerable<(Whose Whose, Func<Source, bool> Belongs)>> WhoseAsync(RecordFacts facts, CancellationToken cancellationToken)
    {
        var sources = facts.Sources().ToList();
        switch (Of)
        {
            case RecordOf.Producer:
                var producers = sources.Select(source => source.Producer).OfType<Id<Domain.Origins.Producer>>().ToHashSet();
                return (await db.Producers.AsNoTracking().Where(producer => producers.Contains(producer.Id)).Select(producer => new { producer.Id, producer.Name }).ToListAsync(cancellationToken))
                    .Select(one => (new Whose(one.Name, Url.Page("ProducerRecord", new { one.Id })), (Func<Source, bool>)(source => source.Producer == one.Id)));
            case RecordOf.Origin:
                var origins = sources.Select(source => source.Origin).OfType<string>().ToHashSet();
                return (await db.Countries.AsNoTracking().Where(country => origins.Contains(country.Code)).Select(country => new { country.Code, country.Name }).ToListAsync(cancellationToken))
                    .Select(one => (new Whose(one.Name, Url.Page("OriginRecord", new { country = one.Code })), (Func<Source, bool>)(source => source.Origin == one.Code)));
            default:
                var suppliers = sources.Select(source => source.Supplier).ToHashSet();
                return (await db.Suppliers.AsNoTracking().Where(supplier => suppliers.Contains(supplier.Id)).Select(supplier => new { supplier.Id, supplier.Name }).ToListAsync(cancellationToken))
                    .Select(one => (new Whose(one.Name, Url.Page("SupplierRecord", new { one.Id })), (Func<Source, bool>)(source => source.Supplier == one.Id)));
        }
    }

    /// <summary>Whose records are ranked.</summary>
    public enum RecordOf
    {
        Supplier = 0,
        Producer = 1,
        Origin = 2,
    }

    /// <summary>Whose record a row is, and its page.</summary>
    public sealed record Whose(string Name, string? Address);
}
