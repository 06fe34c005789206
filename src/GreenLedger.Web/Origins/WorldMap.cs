using GreenLedger.Documents.Origins;
using GreenLedger.Domain.Origins;

namespace GreenLedger.Web.Origins;

/// <summary>The outlines of countries that come inside the program, read once when they are first asked for: no plot leaves the house to be drawn.</summary>
public sealed class WorldMap
{
    /// <summary>From the npm package world-atlas; see BrowserFiles.targets and docs/dependencies.md.</summary>
    private const string Resource = "countries-10m.json";

    private readonly Lazy<CountryOutlines> _outlines = new(Read);

    public CountryOutlines Outlines => _outlines.Value;

    private static CountryOutlines Read()
    {
        using var stream = typeof(WorldMap).Assembly.GetManifestResourceStream(Resource)
            ?? throw new InvalidOperationException($"The program was built without {Resource}.");
        return new CountryOutlines(TopoJsonCountries.Read(stream));
    }
}
