using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;

namespace GreenLedger.SeedDemo.Offers;

/// <summary>A coffee as it stands in the ledger.</summary>
internal sealed record Shelved(Coffee Coffee, Lot Lot, Offer Offer)
{
    public DateOnly Since => Offer.FirstOfferedOn;

    /// <summary>The day from which it could no longer be had; null while it is on offer.</summary>
    public DateOnly? Until => Offer.State == OfferState.OnOffer ? null : Offer.RevisedOn;
}

/// <summary>Takes the sellers' lists into the ledger, oldest first.</summary>
internal sealed class Shelf
{
    private readonly Dictionary<Coffee, Shelved> _byCoffee = [];
    private readonly Dictionary<Seller, Supplier> _suppliers;
    private readonly IReadOnlyDictionary<string, ProcessMethod> _methods;
    private readonly HashSet<string> _names = [];

    public Shelf(IReadOnlyList<Seller> sellers, IReadOnlyDictionary<string, ProcessMethod> methods)
    {
        _methods = methods;
        _suppliers = sellers.ToDictionary(seller => seller, Supplier);
    }

    public IReadOnlyCollection<Supplier> Suppliers => _suppliers.Values;

    public IReadOnlyCollection<Shelved> Coffees => _byCoffee.Values;

    public void Take(SellersList list)
    {
        foreach (var row in list.Rows)
        {
            if (_byCoffee.TryGetValue(row.Coffee, out var shelved))
            {
                shelved.Offer.Revise(row.Packing, row.Asking, list.Terms, row.State, row.StatedScore, list.On);
            }
            else
            {
                _byCoffee.Add(row.Coffee, Put(row, list));
            }
        }

        foreach (var coffee in list.LeftOut)
        {
            _byCoffee[coffee].Offer.Withdraw(list.On);
        }
    }

    private Shelved Put(Listed row, SellersList list)
    {
        var coffee = row.Coffee;
        var supplier = _suppliers[coffee.Seller];
        var lot = new Lot(coffee.Ref, NameOf(coffee), supplier.Id);
        var producer = coffee.Grower.Producer;
        lot.Grow(coffee.Origin.Code, producer.Region, producer.Id, coffee.Variety, producer.AltitudeFrom, producer.AltitudeTo);
        lot.Process(_methods[coffee.Process].Id, coffee.Process);
        lot.Prepare(coffee.CropYear, coffee.IsScreen ? null : coffee.Grade, coffee.IsScreen ? coffee.Grade : null, null);
        lot.Pack(row.Packing);
        lot.Certify(coffee.Certificates);
        var offer = new Offer(supplier.Id, lot, row.Packing, row.Asking, list.Terms, row.State, list.On);
        offer.StateScore(row.StatedScore);
        return new Shelved(coffee, lot, offer);
    }

    private string NameOf(Coffee coffee)
    {
        var name = $"{coffee.Grower.Producer.Name}, {coffee.Variety} {coffee.Process}";
        var number = 1;
        while (!_names.Add($"{coffee.CropYear} {name} {number}"))
        {
            number++;
        }

        return number == 1 ? name : $"{name}, lot {number}";
    }

    private static Supplier Supplier(Seller seller)
    {
        var supplier = new Supplier(seller.Name, seller.Kind, seller.Country, seller.Language);
        var domain = new string([.. Domain.Measures.SearchText.Of(seller.Name).Where(sign => sign != ' ')]);
        supplier.Describe(seller.Name, seller.Kind, IsOrigin(seller) ? seller.Country : null, seller.Language, $"offers@{domain}.example");
        return supplier;
    }

    /// <summary>The ledger's countries are those that grow coffee.</summary>
    private static bool IsOrigin(Seller seller) => seller.Kind != SupplierKind.Importer;
}
