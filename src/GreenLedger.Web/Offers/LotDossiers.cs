using GreenLedger.Data;
using GreenLedger.Data.Costs;
using GreenLedger.Data.Offers;
using GreenLedger.Data.Papers;
using GreenLedger.Data.Stock;
using GreenLedger.Data.Trace;
using GreenLedger.Documents.Trace;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.Stock;
using GreenLedger.Web.Display;
using GreenLedger.Web.Pages.Samples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Offers;

/// <summary>Gathers what the rooms hold of one lot, for its dossier.</summary>
public sealed class LotDossiers(
    LedgerContext db, LotQuery lots, LotWayQuery ways, LotFindingsQuery findings, WholeWayQuery wholeWays, StockQuery stock, LotCostQuery costs, DiligenceQuery diligences, HouseZone zone, TimeProvider clock)
{
    /// <summary>Null where there is no such lot.</summary>
    public async Task<LotDossier?> FindAsync(Id<Lot> id, string madeBy, CancellationToken cancellationToken)
    {
        if (await lots.FindAsync(id, cancellationToken) is not { } view)
        {
            return null;
        }

        var found = await findings.FindAsync(id, zone.Today, cancellationToken);
        var diligence = (await diligences.FindAsync(id, cancellationToken))!;
        return new LotDossier(
            await db.Houses.AsNoTracking().Select(house => house.Name).SingleOrDefaultAsync(cancellationToken) ?? "",
            madeBy,
            clock.GetUtcNow(),
            zone.Zone,
            view.Lot,
            [.. PlaceOf(view)],
            await ways.FindAsync(id, cancellationToken),
            [
                .. view.Offers.SelectMany(one => one.Prices.Select(price => new DossierPrice(
                    $"{one.Supplier.Name}, {one.Offer.Ref}", price.On, price.Price, price.Differential, price.Quantity, one.Offer.StatedScore, price.State))).OrderBy(price => price.On),
            ],
            [.. found.Samples.Select(one => (one.Sample, SampleKinds.Word(one.Sample.Kind), one.Grade))],
            [.. found.Results.Select(row => new DossierResult(row.Title, row.FormName, row.LabelCode, row.Result))],
            await wholeWays.FindAsync(id, zone.Day, cancellationToken),
            [.. (await stock.MovementsAsync(id, cancellationToken)).OrderBy(row => row.On).ThenBy(row => row.At).Select(row => new DossierMovement(row.On, row.Kind.Word(), row.Warehouse, row.Bags, row.Weighed, row.Who, row.Reason ?? row.Document))],
            await costs.FindAsync(id, cancellationToken),
            diligence.Held,
            diligence.Open,
            [.. diligence.Grown.Select(plot => plot.Name)],
            await db.Attachments.AsNoTracking().On(PapersOf.Lot, id.Value).ToListAsync(cancellationToken));
    }

    private static IEnumerable<(string Word, string Text)> PlaceOf(LotView view)
    {
        var lot = view.Lot;
        return new (string Word, string? Text)[]
        {
            ("Origin", string.Join(", ", new[] { view.Country?.Name ?? lot.CountryCode, lot.Region }.Where(part => part is not null)) is { Length: > 0 } place ? place : null),
            ("Producer", view.Producer?.Name), ("Varieties", lot.Varieties), ("Process", view.Method?.Name ?? lot.ProcessAsWritten), ("Crop year", lot.CropYear), ("Grade", lot.Grade), ("Screen", lot.Screen),
            ("Certificates", lot.Certificates.Count == 0 ? null : string.Join(", ", lot.Certificates)), ("Programme", lot.Programme), ("ICO mark", lot.IcoMark),
            ("Packed", lot.NetWeight is { } net ? Figures.Weight(net, false) + " net" : null),
        }.Where(one => one.Text is not null).Select(one => (one.Word, one.Text!));
    }
}
