using System.Globalization;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Shipments;

namespace GreenLedger.Domain.Stock.Reading;

/// <summary>Concludes one earlier contract: finds or makes its supplier and lots, and takes the contract as far as the file says it has come.</summary>
internal sealed class EarlierDrafting(EarlierEntry entry, EarlierCase facts, IReadOnlyDictionary<string, Supplier> newSuppliers, IReadOnlyDictionary<string, Lot> newLots)
{
    /// <summary>Stands where a list of contracts does not say what the contract itself does.</summary>
    private const string AsSigned = "As in the signed contract";

    /// <summary>How the rules of other rooms call what stands in a column of the file.</summary>
    private static readonly Dictionary<string, EarlierColumn> Fields = new()
    {
        [nameof(Contract.Ref)] = EarlierColumn.Contract,
        [nameof(ContractTerms.Seller)] = EarlierColumn.Supplier,
        [nameof(Lot.CropYear)] = EarlierColumn.Crop,
        [nameof(Lot.ProcessAsWritten)] = EarlierColumn.Process,
        [nameof(PriceTerms.Outright)] = EarlierColumn.Price,
        ["Lots"] = EarlierColumn.FixedLots,
        ["Weight"] = EarlierColumn.FixedLots,
        [nameof(PriceFixing.Level)] = EarlierColumn.FixedAt,
        ["On"] = EarlierColumn.FixedOn,
        ["Lots[0].BagWeightKg"] = EarlierColumn.BagWeight,
        [nameof(ShipmentLot.Bags)] = EarlierColumn.ShippedBags,
        [nameof(ShipmentLot.Net)] = EarlierColumn.Shipped,
    };

    private EarlierTerms Read => entry.Terms;

    /// <summary>The row that is being taken; null while it is the contract as a whole.</summary>
    public EarlierRow? At { get; private set; }

    /// <exception cref="RuleBrokenException">Something cannot be; <see cref="At"/> says at which row.</exception>
    public EarlierContract Conclude()
    {
        Rule.Require(!facts.Numbers.Contains(Read.Number.ToUpperInvariant()), $"The ledger has a contract {Read.Number} already: it is left as it stands.", nameof(EarlierColumn.Contract));
        var (supplier, isNewSupplier) = SupplierOf();
        var lines = Each(row => LineOf(row, supplier));
        var contract = Contract.Draft(Read.Number, supplier.Id, TermsOf(supplier, lines), new Dictionary<Id<Lot>, Id<Decision>>(), facts.By, facts.At);
        contract.Sign(Read.SignedOn, null, facts.By, facts.At);
        Fix(contract);
        if (entry.IsPast)
        {
            Complete(contract, lines);
        }

        return new EarlierContract(contract, supplier, isNewSupplier, lines, entry.IsPast ? [] : Ship(contract, lines));
    }

    /// <summary>The rule under the name of the column that it is about.</summary>
    public static RuleBrokenException Named(RuleBrokenException broken) =>
        broken.Field is { } field && Fields.TryGetValue(field, out var column) ? new RuleBrokenException(broken.Message, column.ToString()) : broken;

    private (Supplier Supplier, bool IsNew) SupplierOf()
    {
        var folded = SearchText.Of(Read.Supplier);
        return facts.Suppliers.FirstOrDefault(one => SearchText.Of(one.Name) == folded) is { } known ? (known, false)
            : newSuppliers.TryGetValue(folded, out var added) ? (added, false)
            : (new Supplier(Read.Supplier, SupplierKind.Exporter), true);
    }

    private EarlierLine LineOf(EarlierRow row, Supplier supplier)
    {
        var (lot, isNew) = LotOf(row, supplier);
        return new EarlierLine(row, lot, isNew, row.Arrival is { Left: { } left } arrival ? LeftOf(arrival, left, lot) : null);
    }

    private (Lot Lot, bool IsNew) LotOf(EarlierRow row, Supplier supplier)
    {
        Rule.Require(
            row.Lot is null || entry.Rows.TakeWhile(one => one != row).All(one => !row.Lot.Equals(one.Lot, StringComparison.OrdinalIgnoreCase)),
            "This lot stands on this contract already: put its bags together in one row.", nameof(EarlierColumn.Lot));
        Rule.Require(row.Lot is null || !facts.Names.Unclear.TryGetValue(row.Lot, out var several), row.Lot is null ? "" : facts.Names.Unclear.GetValueOrDefault(row.Lot) ?? "", nameof(EarlierColumn.Lot));
        if (row.Lot is { } named && facts.Names.Known.TryGetValue(named, out var known))
        {
            return (Alike(facts.Lots[known.LotId], row, supplier), false);
        }

        var reference = row.Lot ?? $"{Read.Number}-{entry.Rows.ToList().IndexOf(row) + 1}";
        if (newLots.TryGetValue(reference, out var added))
        {
            return (added, false);
        }

        var country = facts.Reference.CountryOf(row.Country);
        Rule.Require(row.Country is null || country is not null, $"'{row.Country}' is no country of the ledger: write its name or its two letters.", nameof(EarlierColumn.Country));
        var lot = new Lot(reference, row.Name ?? reference, supplier.Id);
        lot.Grow(country, null, null, null, null, null);
        lot.Process(facts.Reference.ProcessOf(row.Process)?.Id, row.Process);
        lot.Prepare(row.Crop, null, null, null);
        return (lot, true);
    }

    /// <summary>A lot that the ledger knows by this reference is taken only where it can be the same coffee.</summary>
    private Lot Alike(Lot lot, EarlierRow row, Supplier supplier)
    {
        var country = facts.Reference.CountryOf(row.Country);
        Rule.Require(
            lot.SupplierId is null || lot.SupplierId == supplier.Id,
            $"Lot {lot.Ref} {lot.Name} stands in the ledger and is another supplier's: write another reference, or correct the supplier.", nameof(EarlierColumn.Lot));
        Rule.Require(
            lot.CountryCode is null || country is null || lot.CountryCode == country,
            $"Lot {lot.Ref} {lot.Name} stands in the ledger and is of {lot.CountryCode}, not of {country}: write another reference, or correct the country.", nameof(EarlierColumn.Lot));
        return lot;
    }

    private LeftStock LeftOf(EarlierArrival arrival, Weight left, Lot lot)
    {
        var warehouse = arrival.Warehouse is { } name
            ? facts.Warehouses.FirstOrDefault(one => SearchText.Of(one.Name) == SearchText.Of(name))
            : facts.Warehouses.FirstOrDefault(one => one.Id == facts.Defaults.WarehouseId);
        Rule.Require(
            warehouse is not null,
            arrival.Warehouse is { } named ? $"There is no warehouse '{named}': name it under Stock, Warehouses, or correct the row." : "What is left lies in no warehouse: choose one above, or name it in the row.",
            nameof(EarlierColumn.Warehouse));
        Rule.Require(!facts.Opened.Contains(lot.Id), "This lot has opening stock already: leave empty what is left of it.", nameof(EarlierColumn.Left));
        Rule.Require(arrival.Received is null || left <= arrival.Received, "More is left than was received: put one of them right.", nameof(EarlierColumn.Left));
        Rule.Require(facts.Defaults.On <= facts.Today, $"{Day(facts.Defaults.On)} lies ahead: opening stock is what was there on a day gone by.", nameof(EarlierColumn.Left));
        Rule.Require(facts.Defaults.On >= arrival.On, $"It arrived on {Day(arrival.On)}, after the day that the stock is of: choose a later day above.", nameof(EarlierColumn.Left));
        return new LeftStock(warehouse, new StockAmount(arrival.LeftBags, left, left), facts.Defaults.On, InHouse(arrival) is { } cost ? cost * left : null);
    }

    /// <summary>What a received kilogram had cost, in the house currency at the rate of the day of arrival; it never follows later rates.</summary>
    private PricePerWeight? InHouse(EarlierArrival arrival)
    {
        if (arrival.LandedCost is not { } cost)
        {
            return null;
        }

        var conversion = facts.Rates.Find(cost.Currency, facts.House, arrival.On);
        Rule.Require(
            conversion is not null,
            $"There is no exchange rate of {facts.Rates.Missing(cost.Currency, facts.House, arrival.On)} on {Day(arrival.On)} or before: enter it under Pricing, Exchange rates, or write the cost in {facts.House}.", nameof(EarlierColumn.LandedCurrency));
        return PricePerWeight.Of(conversion.Of(cost.Amount), facts.House, PriceUnit.Kilogram);
    }

    private ContractTerms TermsOf(Supplier supplier, List<EarlierLine> lines)
    {
        var net = lines.Aggregate(Weight.Zero, (sum, line) => sum + line.Net);
        var delivery = DeliveryOf();
        var form = DraftTerms.FormOf(facts.Form);
        return new ContractTerms(
            facts.Buyer, supplier.Name,
            [.. lines.Select(line => new ContractedLot(line.Lot.Id, line.Lot.Ref, line.Lot.Name, line.Lot.CropYear, line.Row.Bags, line.Row.BagWeight))],
            new QualityTerms(DraftTerms.Description(lines[0].Lot), null),
            Read.Month is { } month
                ? new PriceTerms(null, month, Read.Differential, Read.MarketLots ?? PriceTerms.UsualLots(month.Market, net), Read.Call, null, null)
                : Outright(),
            delivery,
            new WeightTerms(WeightBasis.Shipped, facts.Form?.Franchise ?? default, facts.Form?.Tolerance ?? default),
            Read.AsksApproval && !entry.IsPast ? new ApprovalTerms(ApprovalRule.Replace, 3, delivery.ShipFrom) : new ApprovalTerms(ApprovalRule.None, null, null),
            AsSigned,
            lines[0].Lot.Certificates,
            form with { Name = form.Name.Length == 0 ? AsSigned : form.Name, Arbitration = form.Arbitration.Length == 0 ? AsSigned : form.Arbitration },
            null);
    }

    /// <summary>Of a past purchase the price may have been forgotten.</summary>
    private PriceTerms Outright()
    {
        Rule.Require(Read.Outright is not null || entry.IsPast, "The price is missing: write an outright price, or a futures month with its differential. Only of what has arrived whole it may be left empty.", nameof(EarlierColumn.Price));
        return Read.Outright is { } price ? PriceTerms.AtPrice(price) : PriceTerms.NotKnown();
    }

    private DeliveryTerms DeliveryOf()
    {
        Rule.Require((Read.Delivery?.Rule ?? facts.Defaults.Rule) is not null, "The delivery rule is missing: write FOB, CIF or another, or choose above what stands for it.", nameof(EarlierColumn.Incoterm));
        var until = Read.ShipUntil ?? (entry.IsPast ? entry.Rows.Max(row => row.Arrival!.ShippedOn ?? row.Arrival.On) : null);
        Rule.Require(until is not null, "Until when is it to be shipped? Write the last day or the month.", nameof(EarlierColumn.ShipUntil));
        var from = Read.ShipFrom ?? (Read.SignedOn < until ? Read.SignedOn : until.Value);
        return new DeliveryTerms((Read.Delivery?.Rule ?? facts.Defaults.Rule)!.Value, Read.Delivery?.Place ?? AsSigned, from, until.Value);
    }

    private void Fix(Contract contract)
    {
        foreach (var fixing in Read.Fixings)
        {
            var isByLots = contract.Terms.Price.MarketLots is not null;
            Rule.Require(fixing.Lots is null || isByLots, "This contract weighs less than half a lot of the market, so it is fixed by weight: write all where it is fixed.", nameof(EarlierColumn.FixedLots));
            var open = contract.Position!.Open;
            contract.Fix(
                new FixingOrder(fixing.On ?? Read.SignedOn, isByLots ? fixing.Lots ?? (int)contract.Position.OpenLots : null, isByLots ? null : open, fixing.Level, null), facts.By, facts.At);
        }
    }

    /// <summary>All of it came: what the file does not know of the way stands on the day that is known.</summary>
    private void Complete(Contract contract, List<EarlierLine> lines)
    {
        Rule.Require(contract.Price.IsKnown() || contract.Price == PriceState.NotKnown, "It has arrived, and its price is not fixed in full: write all its fixings, or the final price as an outright one.", nameof(EarlierColumn.FixedLots));
        Each(row =>
        {
            Rule.Require(row.Arrival!.On <= facts.Today, $"{Day(row.Arrival.On)} lies ahead: write the day that it arrived.", nameof(EarlierColumn.ArrivedOn));
            Rule.Require(row.Arrival.On >= Read.SignedOn, $"It arrived before the contract was agreed on {Day(Read.SignedOn)}: put one of the days right.", nameof(EarlierColumn.ArrivedOn));
            Rule.Require(row.Arrival.ShippedOn is null || row.Arrival.ShippedOn <= row.Arrival.On, "It arrived before it was shipped: put one of the days right.", nameof(EarlierColumn.ShippedOn));
            return row;
        });
        var arrived = entry.Rows.Max(row => row.Arrival!.On);
        var shipped = entry.Rows.Max(row => row.Arrival!.ShippedOn);
        contract.Ship(shipped ?? (arrived < contract.ShipUntil ? arrived : contract.ShipUntil), shipped is null ? "The day on board is not known." : null, facts.By, facts.At);
        contract.Arrive(arrived, null, facts.By, facts.At);
        contract.Close(arrived, null, facts.By, facts.At);
        foreach (var line in lines)
        {
            At = line.Row;
            var arrival = line.Row.Arrival!;
            contract.Recall(line.Lot.Id, new ReceivedBefore(arrival.On, arrival.Received ?? line.Net, InHouse(arrival), arrival.Score));
        }

        At = null;
    }

    /// <summary>A shipment for each day on board and bill of lading.</summary>
    private List<Shipment> Ship(Contract contract, List<EarlierLine> lines)
    {
        var shipments = new List<Shipment>();
        foreach (var part in lines.Where(line => line.Row.Lading is not null).GroupBy(line => (line.Row.Lading!.On, line.Row.Lading.BillOfLading)).OrderBy(part => part.Key.On))
        {
            At = part.First().Row;
            var lading = At.Lading!;
            Rule.Require(!contract.Terms.Approval.IsAsked(), "Bags are on board: leave the approval empty, it is past.", nameof(EarlierColumn.Approval));
            Rule.Require(lading.On <= facts.Today, $"{Day(lading.On)} lies ahead: write the day of the bill of lading.", nameof(EarlierColumn.ShippedOn));
            var shipment = new Shipment(
                facts.NextShipment(), new Passage(lading.BillOfLading, null, null, lading.PortOfLoading, lading.PortOfDestination, null, lading.PlannedArrival, lading.On, null, null));
            foreach (var line in part)
            {
                At = line.Row;
                Rule.Require(line.Row.Lading!.Bags <= line.Row.Bags, string.Create(CultureInfo.InvariantCulture, $"More bags are on board than the {line.Row.Bags:#,0} contracted: put one of them right."), nameof(EarlierColumn.ShippedBags));
                shipment.Carry(contract, contract.Lots.First(lot => lot.LotId == line.Lot.Id).Id, line.Row.Lading.Bags, line.Row.Lading.Net);
            }

            shipment.Board(contract, shipments, null, facts.By, facts.At);
            shipments.Add(shipment);
            At = null;
        }

        return shipments;
    }

    private List<T> Each<T>(Func<EarlierRow, T> read)
    {
        var all = new List<T>();
        foreach (var row in entry.Rows)
        {
            At = row;
            all.Add(read(row));
        }

        At = null;
        return all;
    }

    private static string Day(DateOnly day) => day.ToString("d MMM yyyy", CultureInfo.InvariantCulture);
}
