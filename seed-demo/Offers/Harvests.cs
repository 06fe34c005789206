using System.Globalization;
using GreenLedger.Domain.Origins;
using GreenLedger.SeedDemo.Origins;

namespace GreenLedger.SeedDemo.Offers;

/// <summary>Makes the lots that sellers put on their lists.</summary>
internal sealed class Harvests(Growers growers, IReadOnlyDictionary<string, Country> countries, IReadOnlyDictionary<string, ProcessMethod> methods, Draw draw)
{
    private readonly Dictionary<Seller, int> _numbers = [];
    private readonly HashSet<string> _names = [];

    /// <summary>How much a seller has that is new at this time of year: most from three to six months after harvest begins.</summary>
    public double SeasonOf(Seller seller, DateOnly on) => seller.Origins.Average(code =>
    {
        var sinceHarvest = (on.Month - (countries[code].HarvestFrom ?? 10) + 12) % 12;
        return sinceHarvest switch { 0 or 1 => 0.15, 2 => 0.6, 3 or 4 or 5 => 1.5, 6 or 7 => 1.2, 8 or 9 => 0.8, _ => 0.5 };
    });

    public Coffee New(Seller seller, DateOnly on)
    {
        var grower = draw.Of(growers.ByOrigin[draw.Of(seller.Origins)]);
        var origin = grower.Origin;
        var process = draw.Weighted(origin.Processes);
        var variety = draw.Chance(0.75) ? draw.Of(origin.Varieties) : string.Join(", ", draw.Some(origin.Varieties, 2));
        var bagKg = BagKg(origin, process);
        var bags = Bags(origin, process, bagKg);
        var crop = countries[origin.Code].CropYearOf(on.AddMonths(-4));
        return new Coffee(
            seller, grower, Ref(seller, crop), variety, process, methods[process].Family, draw.Of(origin.Grades), crop, bags, bagKg,
            QualityOf(grower, process, variety, bags * (double)bagKg), Certificates(origin), draw.Normal(0, 0.055))
        {
            Name = NameOf(grower, variety, process, crop),
        };
    }

    private string NameOf(Grower grower, string variety, string process, string crop)
    {
        var name = $"{grower.Producer.Name}, {variety} {process}";
        var number = 1;
        while (!_names.Add($"{crop} {name} {number}"))
        {
            number++;
        }

        return number == 1 ? name : $"{name}, lot {number}";
    }

    private double QualityOf(Grower grower, string process, string variety, double kilograms)
    {
        var sized = kilograms < 900 ? 1.0 : kilograms > 12_000 ? -0.6 : 0;
        var made = process.StartsWith("anaerobic", StringComparison.Ordinal) ? 0.7 : process == "natural" ? 0.2 : 0;
        var grown = variety.Contains("Gesha", StringComparison.Ordinal) ? 1.2 : variety.Contains("Pink", StringComparison.Ordinal) ? 0.9 : 0;
        var quality = grower.Origin.Quality + grower.Better + sized + made + grown + draw.Normal(0, grower.Origin.Spread * 0.75);
        return Math.Min(quality, 92.5);
    }

    private decimal BagKg(Origin origin, string process) =>
        process.StartsWith("anaerobic", StringComparison.Ordinal) && origin.Code is "BR" or "PA" ? 30m
        : countries[origin.Code].UsualBag is { } bag ? Math.Round(bag.Kilograms, 2) : 60m;

    private int Bags(Origin origin, string process, decimal bagKg)
    {
        var largest = origin.Code switch { "PA" => 20, "BR" or "VN" => 640, _ => 275 };
        var bags = draw.Weighted<(int From, int To)>([((6, 18), 0.24), ((20, 75), 0.42), ((80, 200), 0.2), ((240, 320), 0.11), ((480, 640), 0.03)]);
        var most = process.StartsWith("anaerobic", StringComparison.Ordinal) ? 40 : largest;
        var count = Math.Min(draw.Between(bags.From, bags.To), most);
        return bagKg < 50m ? count : Math.Min(count, (int)(38_400 / bagKg));
    }

    private IReadOnlyList<string> Certificates(Origin origin)
    {
        var organic = origin.Code switch { "PE" => 0.55, "HN" or "NI" or "ID" => 0.28, "ET" or "UG" => 0.2, _ => 0.06 };
        var fair = origin.Code switch { "PE" => 0.4, "HN" or "UG" => 0.2, _ => 0.05 };
        var alliance = origin.Code switch { "BR" or "CO" or "GT" => 0.18, _ => 0.05 };
        return
        [
            .. draw.Chance(organic) ? ["organic"] : Array.Empty<string>(),
            .. draw.Chance(fair) ? ["fairtrade"] : Array.Empty<string>(),
            .. draw.Chance(alliance) ? ["rainforest alliance"] : Array.Empty<string>(),
        ];
    }

    /// <summary>A running number; Kenya counts by outturn, spot importers by stock number.</summary>
    private string Ref(Seller seller, string crop)
    {
        var number = _numbers[seller] = _numbers.GetValueOrDefault(seller) + draw.Between(1, 4);
        var year = crop[2..4];
        return seller.Kind == Domain.Offers.SupplierKind.Importer
            ? string.Create(CultureInfo.InvariantCulture, $"{seller.Prefix}-{21000 + number}")
            : string.Create(CultureInfo.InvariantCulture, $"{seller.Prefix}{year}-{number:000}");
    }
}
