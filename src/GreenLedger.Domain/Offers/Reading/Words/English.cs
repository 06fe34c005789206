namespace GreenLedger.Domain.Offers.Reading.Words;

/// <summary>English trade words of offer lists, from common use.</summary>
internal static class English
{
    public static ListWords Words { get; } = ListWords.Of("en", """
        Ref: ref, ref no, reference, lot, lot no, lot nr, lot number, lot id, lot code, lot ref, id, code, no, nr, offer no, outturn, outturn no, position, pos, item, sku, batch, warehouse no, warehouse ref, stock no, stock number
        Name: name, lot name, coffee, coffee name, description, quality, product
        Producer: producer, producer name, farm, farm name, estate, grower, factory, washing station, station, wet mill, mill, cooperative, coop, co operative, society, region station, farm producer
        Country: country, origin, country of origin, origin country
        Region: region, area, district, municipality, department, state, zone, county, province, location, sub region
        Varieties: variety, varieties, varietal, varietals, cultivar, cultivars, botanical variety
        Process: process, processing, processing method, process method, method
        CropYear: crop, crop year, harvest, harvest year, season
        Grade: grade, class, preparation, prep
        Screen: screen, screen size, size, bean size
        Altitude: altitude, elevation, masl, alt, height
        StatedScore: score, cup, cup score, cupping score, sca score, cupping, points, sca points, sca, pts
        Bags: bags, no of bags, nr of bags, number of bags, bags available, available bags, qty bags, quantity bags, bag count
        BagWeight: kg bag, kgs bag, kg per bag, kilos per bag, bag weight, bag size, weight per bag, weight bag, bag kg, bag wt, lb bag, lbs bag, lbs per bag, unit weight, net per bag
        Packaging: packaging, packing, package, bag type, pack
        Quantity: quantity, qty, volume, amount
        NetWeight: net kg, kg net, net weight, net, kg, kgs, kilos, weight, weight kg, total kg, total weight, total net, lb, lbs, total lbs, net lbs, weight lbs, available kg, kg available, mt, tonnes
        Price: price, fob price, offer price, unit price, ask, asking, asking price, outright
        Differential: differential, diff, dif, differentials
        FuturesMonth: futures month, futures, terminal month, terminal, contract month, position month
        Currency: currency, ccy, curr
        PriceUnit: price unit, price basis, uom
        Incoterm: incoterm, incoterms, terms, delivery terms, delivery rule
        Place: port, place, port of loading, loading port, pol, delivery place, warehouse
        ValidUntil: valid until, validity, valid, valid till, expires, expiry
        Availability: availability, available, status, shipment, ready, eta, available from, shipment period
        Certificates: certificates, certification, certifications, certificate, certified, cert, certs
        IcoMark: ico mark, ico, ico no, ico number
        Moisture: moisture, moisture content, mc, h2o
        Notes: notes, note, remarks, remark, comments, comment, cup notes, cup profile, cupping notes, tasting notes, flavour, flavor, profile, descriptors
        LeastBags: moq, minimum lot, min lot, minimum bags, min bags, minimum order, min order, minimum order quantity, minimum quantity, min qty, min quantity, least lot, minimum purchase, minimum
        outturn: outturn, out turn
        warehouse: warehouse no, warehouse ref, stock no, stock number, spot
        spot: spot, ex warehouse, ex store, ex wh, in store
        sold: sold, sold out, not available
        withdrawn: withdrawn, cancelled, no
        available: yes, y, available, spot, ready, on offer, open
        valid: valid until, valid till, valid to, valid through, validity, expires, expires on
        crop: crop, harvest, crop year
        total: total, totals, sum, subtotal, sub total, grand total
        bigbag: big bag, big bags, bigbag, bigbags, fibc, jumbo bag, jumbo, super sack, supersack, bulk, container bag
        bag: bag, bags, box, boxes, sack, sacks, carton, cartons
        cooperative: coop, cooperative, co operative, co op, society, association, asoc, assoc
        station: washing station, station, factory, wet mill
        farm: farm, estate
        outright: price, outright
        January: january, jan
        February: february, feb
        March: march, mar
        April: april, apr
        May: may
        June: june, jun
        July: july, jul
        August: august, aug
        September: september, sept, sep
        October: october, oct
        November: november, nov
        December: december, dec
        """);
}
