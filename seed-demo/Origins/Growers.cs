using GreenLedger.Domain.Origins;

namespace GreenLedger.SeedDemo.Origins;

/// <summary>A producer with what only the scenario knows: how good its coffee truly is beside its origin's.</summary>
internal sealed record Grower(Producer Producer, Origin Origin, double Better);

/// <summary>The invented producers of every origin.</summary>
internal sealed class Growers
{
    public Growers(Draw draw) =>
        ByOrigin = Origin.All.Values.ToDictionary(
            origin => origin.Code,
            origin => (IReadOnlyList<Grower>)[.. origin.Producers.Select(name => Settle(name, origin, draw))]);

    public IReadOnlyDictionary<string, IReadOnlyList<Grower>> ByOrigin { get; }

    public IEnumerable<Producer> Producers => ByOrigin.Values.SelectMany(growers => growers).Select(grower => grower.Producer);

    private static Grower Settle(string name, Origin origin, Draw draw)
    {
        var producer = new Producer(name, KindOf(name, origin), origin.Code, draw.Of(origin.Regions));
        var lowest = origin.AltitudeFrom + (draw.Between(0, (origin.AltitudeTo - origin.AltitudeFrom) / 50) * 50);
        producer.StateAltitude(lowest, draw.Chance(0.5) ? Math.Min(lowest + 150, origin.AltitudeTo + 100) : null);
        return new Grower(producer, origin, draw.Normal(0, 0.55));
    }

    private static ProducerKind KindOf(string name, Origin origin) =>
        name.StartsWith("Finca", StringComparison.Ordinal) ? ProducerKind.Farm
        : name.StartsWith("Comité", StringComparison.Ordinal) ? ProducerKind.Group
        : origin.Kind;
}
