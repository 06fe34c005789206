using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;

namespace GreenLedger.Data.Tests.Cupping;

/// <summary>A session that is open, with one coffee under a code and another that is not on the table.</summary>
internal sealed class OpenTable
{
    private static readonly DateOnly Today = new(2026, 11, 25);

    private readonly List<object> _more = [];

    public Person Lead { get; } = new("Noor Haddad", Role.LeadCupper);

    public Person Cupper { get; } = new("Tomas Vik", Role.Cupper);

    public Person Buyer { get; } = new("Ilse Brandt", Role.Buyer);

    public Supplier Supplier { get; } = new("Porto Alto", SupplierKind.Exporter, null);

    public Lot Covered { get; }

    public Lot Free { get; }

    public Offer Offer { get; }

    public Sample CoveredSample { get; }

    public Sample FreeSample { get; }

    public CuppingSession Session { get; }

    public OpenTable()
    {
        Covered = new Lot("VF-1", "Vale Fundo", Supplier.Id);
        Free = new Lot("VC-2", "Vale Claro", Supplier.Id);
        Offer = new Offer(
            Supplier.Id, Covered, new Packing(20, Weight.FromKilograms(60), null), Asking.Nothing, new Terms(Incoterm.Fob, "Santos", null), OfferState.OnOffer, Today);
        CoveredSample = new Sample(Covered.Id, SampleKind.Offer, "ACDEF", Today, Weight.FromGrams(350));
        FreeSample = new Sample(Free.Id, SampleKind.Offer, "GHJKM", Today, Weight.FromGrams(350));
        Session = new CuppingSession("Wednesday table", Today, CuppingForm.Published()[0], 5, Lead.Id);
        Session.Pour(CoveredSample, new Random(7));
    }

    /// <summary>Beside the covered one, so that to know which coffees stand there is not to know what is in a cup.</summary>
    public void PourTwoMore()
    {
        foreach (var name in new[] { "Vale Alto", "Vale Baixo" })
        {
            var lot = new Lot(name, name, Supplier.Id);
            var sample = new Sample(lot.Id, SampleKind.Offer, name[5..].ToUpperInvariant(), Today, Weight.FromGrams(350));
            Session.Pour(sample, new Random(8));
            _more.AddRange([lot, sample]);
        }
    }

    public async Task StoreAsync(Ledger ledger)
    {
        await using var db = ledger.Open();
        db.AddRange(Lead, Cupper, Buyer, Supplier, Covered, Free, Offer, CoveredSample, FreeSample, Session);
        db.AddRange(_more);
        await db.SaveChangesAsync(TestContext.Current.CancellationToken);
    }
}
