using System.Globalization;
using GreenLedger.Documents.Offers;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Offers.Reading;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;

namespace GreenLedger.SeedDemo.Offers;

/// <summary>A coffee as it stands in the ledger.</summary>
internal sealed record Shelved(Coffee Coffee, Lot Lot, Offer Offer)
{
    public DateOnly Since => Offer.FirstOfferedOn;

    /// <summary>The day from which it could no longer be had; null while it is on offer.</summary>
    public DateOnly? Until => Offer.State == OfferState.OnOffer ? null : Offer.RevisedOn;
}

/// <summary>
/// Takes the sellers' lists into the ledger, oldest first, on the way that every list takes: the file is written, read,
/// mapped, compared with what is known, and kept.
/// </summary>
internal sealed class Shelf
{
    private readonly Dictionary<Coffee, Shelved> _byCoffee = [];
    private readonly Dictionary<Seller, List<KnownOffer>> _known;
    private readonly Dictionary<Seller, Supplier> _suppliers;
    private readonly Dictionary<Seller, ListPaper> _papers;
    private readonly Dictionary<(Seller, string), SupplierMapping> _mappings = [];
    private readonly List<OfferList> _lists = [];
    private readonly List<StoredFile> _files = [];
    private readonly ListReference _reference;
    private readonly IReadOnlyList<Producer> _producers;
    private readonly Id<Person> _buyer;
    private readonly Draw _draw;

    public Shelf(IReadOnlyDictionary<string, Country> countries, ListReference reference, IEnumerable<Producer> producers, Id<Person> buyer, Draw draw)
    {
        _suppliers = Seller.All.ToDictionary(seller => seller, Supplier);
        _papers = Seller.All.ToDictionary(seller => seller, seller => new ListPaper(seller, countries));
        _known = Seller.All.ToDictionary(seller => seller, _ => new List<KnownOffer>());
        (_reference, _producers, _buyer, _draw) = (reference, [.. producers], buyer, draw);
    }

    public IReadOnlyCollection<Supplier> Suppliers => _suppliers.Values;

    public IReadOnlyCollection<Shelved> Coffees => _byCoffee.Values;

    public IReadOnlyList<OfferList> Lists => _lists;

    public IReadOnlyList<StoredFile> Files => _files;

    public IReadOnlyCollection<SupplierMapping> Mappings => _mappings.Values;

    public async Task TakeAsync(SellersList list)
    {
        var at = new DateTimeOffset(list.On.ToDateTime(new TimeOnly(8, 20)), TimeSpan.Zero).AddMinutes(_draw.Between(0, 400));
        var (name, bytes) = await _papers[list.Seller].WriteAsync(list, Slip.In(list, _draw));
        var file = new StoredFile(name, TypeOf(name), bytes, _buyer, at);
        file.Keep();
        var mapping = MappingOf(list.Seller, ListLook.Of(OfferWorkbook.Read(bytes), name), at);
        var theCase = new ListCase(_suppliers[list.Seller], file, mapping, list.On, _known[list.Seller], _producers, _buyer, at);
        var outcome = OfferList.From(ListReading.Of(OfferWorkbook.Read(bytes), mapping, _reference), theCase);
        _lists.Add(outcome.List);
        _files.Add(file);
        var byRef = list.Rows.DistinctBy(row => row.Coffee).ToDictionary(row => row.Coffee.Ref);
        foreach (var row in outcome.Accepted)
        {
            Put(byRef[row.Row.Ref].Coffee, row);
        }

        foreach (var row in outcome.List.SetAside.Where(_ => _draw.Chance(0.55)).ToList())
        {
            Mend(outcome.List, row, byRef, theCase with { At = at.AddHours(2) });
        }

        foreach (var coffee in list.LeftOut.Where(_byCoffee.ContainsKey))
        {
            _byCoffee[coffee].Offer.Withdraw(list.On);
        }
    }

    private void Put(Coffee coffee, RowOutcome row)
    {
        _byCoffee.Add(coffee, new Shelved(coffee, row.Lot, row.Offer));
        _known[coffee.Seller].Add(new KnownOffer(row.Offer, row.Lot));
    }

    /// <summary>The buyer asks the seller and puts the right figures in; a row that only stands twice is left.</summary>
    private void Mend(OfferList list, SetAsideRow aside, Dictionary<string, Listed> byRef, ListCase theCase)
    {
        var cells = aside.Line.Cells.ToArray();
        var columns = theCase.Mapping.Columns;
        var listed = byRef[cells[At(columns, ColumnMeaning.Ref)].Text];
        Set(cells, columns, ColumnMeaning.Price, listed.Asking.Price?.Amount);
        Set(cells, columns, ColumnMeaning.Differential, listed.Asking.Differential?.Quoted);
        Set(cells, columns, ColumnMeaning.StatedScore, listed.StatedScore?.Points);
        Set(cells, columns, ColumnMeaning.Bags, listed.Bags);
        Set(cells, columns, ColumnMeaning.BagWeight, listed.Coffee.BagKg);
        var (row, _) = ListReading.Mend(aside.Line with { Cells = cells }, theCase.Mapping, _reference);
        if (row is null || aside.Reason.Contains("twice", StringComparison.Ordinal))
        {
            return;
        }

        var outcome = list.TakeIn(aside, cells, row, theCase).Outcome;
        if (!_byCoffee.ContainsKey(listed.Coffee))
        {
            Put(listed.Coffee, outcome);
        }
    }

    private static void Set(Cell[] cells, IReadOnlyList<MappedColumn> columns, ColumnMeaning meaning, decimal? value)
    {
        if (value is { } number && At(columns, meaning) is >= 0 and var at)
        {
            cells[at] = Cell.Of(number);
        }
    }

    private static int At(IReadOnlyList<MappedColumn> columns, ColumnMeaning meaning) =>
        columns.ToList().FindIndex(column => column.Meaning == meaning);

    /// <summary>As the columns were confirmed for the last list with these headings.</summary>
    private OfferMapping MappingOf(Seller seller, ListLook look, DateTimeOffset at)
    {
        var mapping = MappingProposal.Of(look, _reference, _suppliers[seller].CountryCode);
        if (_mappings.TryGetValue((seller, mapping.Headings), out var remembered))
        {
            mapping = mapping.Remembering(OfferMapping.FromJson(remembered.Mapping));
            remembered.Remember(mapping.ToJson(), at);
        }
        else
        {
            _mappings.Add((seller, mapping.Headings), new SupplierMapping(_suppliers[seller].Id, mapping.Headings, mapping.ToJson(), at));
        }

        return mapping;
    }

    private static string TypeOf(string name) => Path.GetExtension(name) switch
    {
        ".csv" => "text/csv",
        ".tsv" => "text/tab-separated-values",
        _ => "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
    };

    private static Supplier Supplier(Seller seller)
    {
        var supplier = new Supplier(seller.Name, seller.Kind, seller.Country, seller.Language);
        var domain = new string([.. SearchText.Of(seller.Name).Where(sign => sign != ' ')]);
        supplier.Describe(seller.Name, seller.Kind, IsOrigin(seller) ? seller.Country : null, seller.Language, string.Create(CultureInfo.InvariantCulture, $"offers@{domain}.example"));
        return supplier;
    }

    /// <summary>The ledger's countries are those that grow coffee.</summary>
    private static bool IsOrigin(Seller seller) => seller.Kind != SupplierKind.Importer;
}
