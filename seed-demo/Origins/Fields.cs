using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.Papers;
using GreenLedger.SeedDemo.Arrivals;
using GreenLedger.SeedDemo.Papers;
using GreenLedger.SeedDemo.People;

namespace GreenLedger.SeedDemo.Origins;

/// <summary>Plots of the invented producers whose coffee was bought: real parts of the world, invented fields.</summary>
internal sealed class Fields(Cast cast, DateTimeOffset now, Draw draw)
{
    /// <summary>A coffee-growing place of each country: longitude and latitude, rounded; the fields lie about it.</summary>
    private static readonly Dictionary<string, (decimal Longitude, decimal Latitude)> Places = new()
    {
        ["BR"] = (-46.5m, -20.1m),
        ["CO"] = (-75.9m, 2.0m),
        ["ET"] = (38.5m, 6.7m),
        ["KE"] = (37.1m, -0.5m),
        ["GT"] = (-90.7m, 14.6m),
        ["HN"] = (-88.6m, 14.6m),
        ["CR"] = (-84.0m, 9.7m),
        ["PE"] = (-78.8m, -5.6m),
        ["ID"] = (98.8m, 2.6m),
        ["RW"] = (29.4m, -2.3m),
        ["BI"] = (29.8m, -2.9m),
        ["UG"] = (34.3m, 1.1m),
        ["NI"] = (-86.0m, 13.6m),
        ["SV"] = (-89.6m, 13.8m),
        ["PG"] = (144.2m, -5.9m),
        ["TZ"] = (37.4m, -3.2m),
        ["PA"] = (-82.6m, 8.8m),
        ["IN"] = (75.7m, 12.4m),
        ["VN"] = (108.0m, 12.6m),
    };

    private readonly Dictionary<Domain.Id<Producer>, List<Plot>> _plots = [];

    /// <summary>Plots of the producers of what was bought, and what is held about those lots; some of it is still missing.</summary>
    public IReadOnlyList<object> Chart(IReadOnlyDictionary<Domain.Id<Lot>, Lot> lots, IEnumerable<Producer> producers, IReadOnlyList<Landing> landings)
    {
        var (known, held) = (producers.ToDictionary(producer => producer.Id), new List<DueDiligence>());
        foreach (var lot in landings.Select(landing => lots[landing.Arrival.LotId]).DistinctBy(lot => lot.Id).Where(lot => lot.ProducerId is not null))
        {
            if (known.TryGetValue(lot.ProducerId!.Value, out var producer) && producer.CountryCode is { } country && Places.ContainsKey(country))
            {
                held.Add(Hold(lot, PlotsOf(producer, country), held.Count + 1));
            }
        }

        return [.. _plots.Values.SelectMany(plots => plots), .. held, .. held.Find(one => one.Deforestation is not null) is { } complete ? Shown(complete, lots[complete.LotId], landings) : []];
    }

    /// <summary>One lot has evidence that came as a file; it was attached the day after the coffee came.</summary>
    private IEnumerable<object> Shown(DueDiligence held, Lot lot, IReadOnlyList<Landing> landings)
    {
        var day = new DateTimeOffset(landings.Where(landing => landing.Arrival.LotId == lot.Id).Max(landing => landing.Arrival.ReceivedOn).AddDays(1).ToDateTime(new TimeOnly(10, 20)), TimeSpan.Zero);
        var at = day < now ? day : now.AddHours(-1);
        var file = new StoredFile(
            $"pictures-{lot.Ref}.pdf", "application/pdf",
            PaperPdf.Of(["Specimen of a comparison of satellite pictures", "Made up for a demonstration: it shows nothing.", "", $"Lot {lot.Ref}, {lot.Name}", "December 2020 against this year: no loss of forest on the fields named."]), cast.Buyer.Id, at);
        var attachment = new Attachment(PapersOf.Lot, lot.Id.Value, file, cast.Buyer.Id, at);
        held.Take(EvidenceKind.Deforestation, attachment);
        return [file, attachment];
    }

    private List<Plot> PlotsOf(Producer producer, string country)
    {
        if (!_plots.TryGetValue(producer.Id, out var plots))
        {
            _plots[producer.Id] = plots = [.. Enumerable.Range(1, draw.Between(1, 3)).Select(number => Plot(producer, country, number))];
        }

        return plots;
    }

    private Plot Plot(Producer producer, string country, int number)
    {
        var place = Places[country];
        var (longitude, latitude) = (SixDecimals(place.Longitude + (decimal)draw.Between(-0.2, 0.2) + (number * 0.02m)), SixDecimals(place.Latitude + (decimal)draw.Between(-0.2, 0.2)));
        if (draw.Chance(0.4))
        {
            return new Plot(producer.Id, $"Field {number}", country, PlotShape.Point(longitude, latitude), Math.Round((decimal)draw.Between(0.6, 3.8), 2));
        }

        var (wide, high) = (SixDecimals((decimal)draw.Between(0.0012, 0.0041)), SixDecimals((decimal)draw.Between(0.0012, 0.0036)));
        (decimal, decimal)[] ring = [(longitude, latitude), (longitude + wide, latitude + 0.0002m), (longitude + wide - 0.0003m, latitude + high), (longitude + 0.0002m, latitude + high - 0.0003m), (longitude, latitude)];
        return new Plot(producer.Id, $"Field {number}", country, PlotShape.Polygons([ring]), null);
    }

    /// <summary>As the rules ask for, and as a good receiver in the field tells them.</summary>
    private static decimal SixDecimals(decimal degrees) => Math.Round(degrees, 6) + 0.000000m;

    /// <summary>Of every third that is complete a statement was made, with invented numbers.</summary>
    private DueDiligence Hold(Lot lot, List<Plot> plots, int number)
    {
        var held = new DueDiligence(lot.Id);
        held.GrewOn([.. plots.Select(plot => plot.Id)]);
        var isComplete = draw.Chance(0.6);
        var isStated = isComplete && number % 3 == 0;
        held.State(new DiligenceFacts(
            DiligenceRole.Operator, null, null, "Land register extract, on file.", isComplete ? "Satellite pictures of 2020 and of this year compared; no loss of forest." : null,
            isComplete ? "Judged negligible after the visit of the exporter's agronomist." : null,
            isStated ? FormattableString.Invariant($"26DEMO{number:00000000}") : null, isStated ? FormattableString.Invariant($"DEMO-{number:0000}") : null));
        return held;
    }
}
