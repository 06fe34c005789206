using GreenLedger.Data.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Summaries;

/// <summary>
/// Reads whole tables of the ledger one row after the other, so that a hundred thousand need no memory. What an open
/// session seals from the reader is not among them.
/// </summary>
public sealed class ExtractQuery(LedgerContext db)
{
    /// <summary>By reference; days do not apply to lots.</summary>
    public IAsyncEnumerable<LotExtract> Lots(ExtractFilter filter, Seal seal) =>
        (from lot in Found(filter, seal)
         join supplier in db.Suppliers on lot.SupplierId equals supplier.Id into suppliers
         from supplier in suppliers.DefaultIfEmpty()
         join producer in db.Producers on lot.ProducerId equals producer.Id into producers
         from producer in producers.DefaultIfEmpty()
         join process in db.ProcessMethods on lot.ProcessMethodId equals process.Id into processes
         from process in processes.DefaultIfEmpty()
         orderby lot.Ref, lot.Id
         select new LotExtract(lot, supplier.Name, producer.Name, process.Name)).AsAsyncEnumerable();

    /// <summary>By the day received; samples on the way stand first.</summary>
    public IAsyncEnumerable<SampleExtract> Samples(ExtractFilter filter, Seal seal) =>
        (from sample in db.Samples.AsNoTracking()
         where (filter.From == null || sample.ReceivedOn >= filter.From) && (filter.Until == null || sample.ReceivedOn <= filter.Until)
         join lot in Found(filter, seal) on sample.LotId equals lot.Id
         join supplier in db.Suppliers on lot.SupplierId equals supplier.Id into suppliers
         from supplier in suppliers.DefaultIfEmpty()
         orderby sample.ReceivedOn != null, sample.ReceivedOn, sample.Id
         select new SampleExtract(sample, lot, supplier.Name)).AsAsyncEnumerable();

    /// <summary>By the day of the session.</summary>
    public IAsyncEnumerable<CuppingExtract> Cuppings(ExtractFilter filter, Seal seal) =>
        (from result in db.SampleResults.AsNoTracking()
         where (filter.From == null || result.HeldOn >= filter.From) && (filter.Until == null || result.HeldOn <= filter.Until)
         join lot in Found(filter, seal) on result.LotId equals lot.Id
         join session in db.CuppingSessions on result.SessionId equals session.Id
         join sample in db.Samples on result.SampleId equals sample.Id
         join form in db.CuppingForms on result.FormId equals form.Id
         join supplier in db.Suppliers on lot.SupplierId equals supplier.Id into suppliers
         from supplier in suppliers.DefaultIfEmpty()
         orderby result.HeldOn, result.Id
         select new CuppingExtract(result, session.Title, form.Name, sample.LabelCode, lot, supplier.Name)).AsAsyncEnumerable();

    /// <summary>By number, a row for each lot; the days are those of the shipment period's end.</summary>
    public IAsyncEnumerable<ContractExtract> Contracts(ExtractFilter filter, Seal seal) =>
        (from contract in db.Contracts.AsNoTracking()
         where (filter.From == null || contract.ShipUntil >= filter.From) && (filter.Until == null || contract.ShipUntil <= filter.Until)
         from line in contract.Lots
         join lot in Found(filter, seal) on line.LotId equals lot.Id
         join supplier in db.Suppliers on contract.SupplierId equals supplier.Id
         orderby contract.Ref, line.Id
         select new ContractExtract(contract, line, lot, supplier.Name)).AsAsyncEnumerable();

    /// <summary>By number, a row for each lot; the days are those on board.</summary>
    public IAsyncEnumerable<ShipmentExtract> Shipments(ExtractFilter filter, Seal seal) =>
        (from shipment in db.Shipments.AsNoTracking()
         where (filter.From == null || shipment.ShippedOn >= filter.From) && (filter.Until == null || shipment.ShippedOn <= filter.Until)
         from line in shipment.Lots
         join lot in Found(filter, seal) on line.LotId equals lot.Id
         join contract in db.Contracts on line.ContractId equals contract.Id
         orderby shipment.Ref, line.Id
         select new ShipmentExtract(shipment, line, lot, contract.Ref)).AsAsyncEnumerable();

    /// <summary>By the day received.</summary>
    public IAsyncEnumerable<ArrivalExtract> Arrivals(ExtractFilter filter, Seal seal) =>
        (from arrival in db.Arrivals.AsNoTracking()
         where (filter.From == null || arrival.ReceivedOn >= filter.From) && (filter.Until == null || arrival.ReceivedOn <= filter.Until)
         join lot in Found(filter, seal) on arrival.LotId equals lot.Id
         join shipment in db.Shipments on arrival.ShipmentId equals shipment.Id
         join supplier in db.Suppliers on lot.SupplierId equals supplier.Id into suppliers
         from supplier in suppliers.DefaultIfEmpty()
         orderby arrival.ReceivedOn, arrival.Id
         select new ArrivalExtract(arrival, lot, shipment.Ref, supplier.Name)).AsAsyncEnumerable();

    /// <summary>The oldest first, the withdrawn too.</summary>
    public IAsyncEnumerable<DecisionExtract> Decisions(ExtractFilter filter, Seal seal)
    {
        var decisions = db.Decisions.AsNoTracking();
        if (filter.From is { } from)
        {
            var start = filter.Zone.Begins(from);
            decisions = decisions.Where(decision => decision.At >= start);
        }

        if (filter.Until is { } until && until < DateOnly.MaxValue)
        {
            var end = filter.Zone.Begins(until.AddDays(1));
            decisions = decisions.Where(decision => decision.At < end);
        }

        var zone = filter.Zone;
        return (from decision in decisions
                join lot in Found(filter, seal) on decision.LotId equals lot.Id
                join person in db.People on decision.By equals person.Id
                orderby decision.At, decision.Id
                select new DecisionExtract(decision, lot, person.Name)).AsAsyncEnumerable()
            .Select(row => row with { On = zone.Day(row.Decision.At), WithdrawnOn = row.Decision.WithdrawnAt is { } at ? zone.Day(at) : null });
    }

    private IQueryable<Lot> Found(ExtractFilter filter, Seal seal)
    {
        var (lots, hidden) = (db.Lots.AsNoTracking(), seal.Lots);
        lots = seal.IsOfEveryCoffee ? lots.Where(_ => false) : hidden.Count == 0 ? lots : lots.Where(lot => !hidden.Contains(lot.Id));
        return SearchText.Of(filter.Text) is { Length: > 0 } words ? lots.Where(lot => lot.SearchText.Contains(words)) : lots;
    }
}
