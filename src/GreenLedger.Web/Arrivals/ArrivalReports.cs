using GreenLedger.Data;
using GreenLedger.Data.Arrivals;
using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Samples;
using GreenLedger.Domain.Summaries;
using GreenLedger.Web.Display;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Arrivals;

/// <summary>Gathers what a supplier hears of an arrival; a page, a script and a mail tell the same.</summary>
internal sealed class ArrivalReports(LedgerContext db, ArrivalCaseQuery arrivals, HouseZone house)
{
    /// <summary>Null where there is no such arrival.</summary>
    /// <param name="id">The arrival.</param>
    /// <param name="language">ISO 639-1; that of the supplier when left out.</param>
    /// <param name="message">What the buyer adds.</param>
    /// <param name="by">Who tells it.</param>
    /// <param name="cancellationToken">Stops the reading.</param>
    public async Task<(ArrivalReport Report, Id<Supplier> Supplier)?> FindAsync(Id<Arrival> id, string? language, string? message, string by, CancellationToken cancellationToken)
    {
        if (await arrivals.FindAsync(id, cancellationToken) is not { } found)
        {
            return null;
        }

        Rule.Require(language is null || SupplierContact.Languages.Contains(language), "Choose the language: English, Spanish, Portuguese or French.", "Language");
        var supplier = await db.Suppliers.AsNoTracking().SingleAsync(one => one.Id == found.Contract.SupplierId, cancellationToken);
        var buyer = await db.Houses.AsNoTracking().Select(one => one.Name).SingleAsync(cancellationToken);
        var quality = found.Quality();
        var limits = ArrivalLimits.Of(found.Contract.Terms.Quality.Limits, found.Habits).Limits;
        return (new ArrivalReport(
            buyer, supplier.Name, language ?? supplier.Language, house.Today, by, Rule.OptionalText(message, "The message", 2000, "Message"), Goods(found), found.Weight(), quality, Pair(found),
            ReportedLimit.Of(quality.Limits, limits, found.ApprovedGrade, found.ArrivalGrade)), supplier.Id);
    }

    /// <summary>What was taken or sent tells the language of the next time; whoever calls saves.</summary>
    public async Task KeepLanguageAsync(Id<Supplier> id, string? language, CancellationToken cancellationToken)
    {
        if (language is not null)
        {
            var supplier = await db.Suppliers.SingleAsync(one => one.Id == id, cancellationToken);
            supplier.Describe(supplier.Name, supplier.Kind, supplier.CountryCode, language, supplier.Email);
        }
    }

    private static ArrivedGoods Goods(ArrivalCase found)
    {
        var (arrival, shipment) = (found.Arrival, found.Shipment);
        var vessel = string.Join(' ', new[] { shipment.Vessel, shipment.Voyage }.OfType<string>());
        return new ArrivedGoods(
            found.Lot.Ref, found.Lot.Name, found.Contract.Terms.Lots.FirstOrDefault(lot => lot.LotId == found.Lot.Id)?.CropYear, found.Contract.Ref, shipment.Ref, shipment.BillOfLading,
            vessel.Length == 0 ? null : vessel, shipment.ShippedOn, shipment.DischargedOn, arrival.ReceivedOn, arrival.ShippedBags, arrival.Bags, arrival.Condition);
    }

    private static CuppedPair? Pair(ArrivalCase found) => found.Evidence is { Difference: not null, Approved: { } before, Arrival: { } after }
        ? new CuppedPair(Code(found, found.Arrival.ApprovedSampleId), Code(found, found.Arrival.ArrivalSampleId), before.HeldOn, after.HeldOn)
        : null;

    private static string Code(ArrivalCase found, Id<Sample>? id) => found.Samples.FirstOrDefault(sample => sample.Id == id)?.LabelCode ?? "";
}
