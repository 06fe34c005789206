namespace GreenLedger.Domain.Origins;

/// <summary>A farm, co-operative or washing station where a lot comes from.</summary>
public sealed class Producer
{
    private Producer()
    {
        Name = "";
        SearchText = "";
    }

    public Producer(string name, ProducerKind kind, string? countryCode, string? region = null, string? place = null)
    {
        Id = Id<Producer>.New();
        Name = "";
        SearchText = "";
        Describe(name, kind, countryCode, region, place);
    }

    public Id<Producer> Id { get; private set; }

    public int Version { get; private set; }

    public string Name { get; private set; }

    public ProducerKind Kind { get; private set; }

    /// <summary>ISO 3166-1 alpha-2; null while a list did not say where the coffee grows.</summary>
    public string? CountryCode { get; private set; }

    public string? Region { get; private set; }

    /// <summary>Municipality, village or hill within the region.</summary>
    public string? Place { get; private set; }

    /// <summary>Lowest altitude in metres above the sea.</summary>
    public int? AltitudeFrom { get; private set; }

    /// <summary>Highest altitude in metres above the sea; equal to the lowest where one figure was given.</summary>
    public int? AltitudeTo { get; private set; }

    public string SearchText { get; private set; }

    public void Describe(string name, ProducerKind kind, string? countryCode, string? region, string? place)
    {
        Rule.Require(Enum.IsDefined(kind), "Choose what kind of producer this is.", nameof(Kind));
        Name = Rule.Text(name, "The name of the producer", field: nameof(Name));
        Kind = kind;
        CountryCode = Rule.OptionalText(countryCode, "The country", 2, nameof(CountryCode))?.ToUpperInvariant();
        Region = Rule.OptionalText(region, "The region", field: nameof(Region));
        Place = Rule.OptionalText(place, "The place", field: nameof(Place));
        SearchText = Measures.SearchText.Of(Name, Region, Place, CountryCode);
    }

    /// <summary>States the altitude in metres; both null when it is not known.</summary>
    public void StateAltitude(int? from, int? to)
    {
        var lowest = from ?? to;
        var highest = to ?? from;
        Rule.Require(lowest is null or (>= 0 and <= 4000), "Coffee grows between 0 and 4000 m: please check the altitude.", nameof(AltitudeFrom));
        Rule.Require(highest is null or (>= 0 and <= 4000), "Coffee grows between 0 and 4000 m: please check the altitude.", nameof(AltitudeTo));
        Rule.Require(lowest is null || lowest <= highest, "The lowest altitude cannot lie above the highest.", nameof(AltitudeTo));
        AltitudeFrom = lowest;
        AltitudeTo = highest;
    }
}
