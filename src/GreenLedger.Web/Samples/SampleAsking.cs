using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Samples;

/// <summary>What is asked of one sender, or of whoever offers each lot.</summary>
internal sealed record SampleAsking(string? Supplier, SampleKind Kind, Weight Weight, DateOnly On, string? Note)
{
    private const int MostAtOnce = 100;

    /// <summary>Adds one asked-for sample for each named lot; saving is left to the caller.</summary>
    /// <exception cref="RuleBrokenException">No lot is named, or one of them or the supplier is not known here.</exception>
    public async Task<IReadOnlyList<Sample>> AskAsync(LedgerContext db, IReadOnlyCollection<string> lots, Id<Person> by, CancellationToken cancellationToken)
    {
        Rule.Require(lots.Count > 0, "Say of which lots you want samples.", "Lots");
        Rule.Require(lots.Count <= MostAtOnce, $"Ask for at most {MostAtOnce} samples at once.", "Lots");
        var supplier = await SupplierAsync(db, cancellationToken);
        var labels = await db.NewLabelsAsync(cancellationToken);
        var samples = new List<Sample>();
        foreach (var named in lots.Distinct(StringComparer.OrdinalIgnoreCase))
        {
            var lot = await SampleLots.FindAsync(db, named, "Lots", cancellationToken);
            samples.Add(Sample.Ask(lot, Kind, labels.Next(), supplier ?? await OffererAsync(db, lot, cancellationToken), Weight, On, by, Note));
        }

        db.AddRange(samples);
        return samples;
    }

    private async Task<Id<Supplier>?> SupplierAsync(LedgerContext db, CancellationToken cancellationToken)
    {
        if (string.IsNullOrWhiteSpace(Supplier))
        {
            return null;
        }

        var name = Supplier.Trim();
        var found = await db.Suppliers.Where(supplier => supplier.Name == name).Select(supplier => (Id<Supplier>?)supplier.Id).FirstOrDefaultAsync(cancellationToken);
        Rule.Require(found is not null, $"No supplier here is called '{name}': check the spelling, or enter the supplier under Offers first.", nameof(Supplier));
        return found;
    }

    /// <summary>Who offered the lot last; null where nobody has.</summary>
    private static async Task<Id<Supplier>?> OffererAsync(LedgerContext db, Id<Lot> lot, CancellationToken cancellationToken) =>
        await db.Offers.Where(offer => offer.LotId == lot).OrderByDescending(offer => offer.RevisedOn).Select(offer => (Id<Supplier>?)offer.SupplierId).FirstOrDefaultAsync(cancellationToken);
}
