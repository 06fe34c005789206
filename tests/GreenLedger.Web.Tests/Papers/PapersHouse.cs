using System.Text;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Samples;

namespace GreenLedger.Web.Tests.Papers;

/// <summary>A supplier's lot with an offer and a sample, on which papers can be put.</summary>
internal static class PapersHouse
{
    public static readonly byte[] Pdf = Encoding.ASCII.GetBytes("%PDF-1.7\n1 0 obj\n<<>>\nendobj\n");

    private static readonly DateOnly Today = new(2026, 11, 25);

    public static async Task<(Lot Lot, Offer Offer, Sample Sample)> AddAsync(HouseFixture house)
    {
        await house.OpenHouseAsync();
        var label = Guid.NewGuid().ToString("N")[..8].ToUpperInvariant();
        var supplier = new Supplier("Porto Alto " + label, SupplierKind.Exporter, null);
        var lot = new Lot("VF-" + label, "Vale Fundo", supplier.Id);
        var offer = new Offer(
            supplier.Id, lot, new Packing(20, Weight.FromKilograms(60), null), Asking.Nothing, new Terms(Incoterm.Fob, "Santos", null), OfferState.OnOffer, Today);
        var sample = new Sample(lot.Id, SampleKind.Offer, label, Today, Weight.FromGrams(350));
        await house.InLedgerAsync(async db =>
        {
            db.AddRange(supplier, lot, offer, sample);
            await db.SaveChangesAsync();
        });
        return (lot, offer, sample);
    }

    public static string AttachTo<T>(string about, Id<T> id) => $"/Papers/Attach/{about}/{id}?ReturnUrl=%2F";
}
