using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.Samples;

namespace GreenLedger.Data.Cupping;

/// <summary>
/// What somebody must not be told yet: what open sessions say of their codes and, for those who cup, the samples, lots
/// and offers under them.
/// </summary>
public sealed class Seal
{
    private readonly HashSet<Guid> _ids;

    internal Seal(IEnumerable<Id<CuppingSession>> sessions, List<Id<Sample>> samples, List<Id<Lot>> lots, IEnumerable<Id<Offer>> offers, bool isOfEveryCoffee)
    {
        Lots = lots;
        Samples = samples;
        IsOfEveryCoffee = isOfEveryCoffee;
        _ids = [.. sessions.Select(id => id.Value), .. samples.Select(id => id.Value), .. lots.Select(id => id.Value), .. offers.Select(id => id.Value)];
    }

    /// <summary>Keeps nothing back.</summary>
    public static Seal None { get; } = new([], [], [], [], false);

    /// <summary>What stands on the table.</summary>
    public IReadOnlyList<Id<Lot>> Lots { get; }

    /// <summary>What stands on the table.</summary>
    public IReadOnlyList<Id<Sample>> Samples { get; }

    /// <summary>
    /// So few coffees stand on the table that whatever were left out for them would name them: then nothing is told of any
    /// coffee of the house.
    /// </summary>
    public bool IsOfEveryCoffee { get; }

    public bool IsEmpty => _ids.Count == 0;

    public bool Covers(Guid id) => IsOfEveryCoffee || _ids.Contains(id);

    public bool Covers(string id) => IsOfEveryCoffee || (Guid.TryParse(id, out var value) && Covers(value));

    /// <summary>A line of the history is covered if it is about something sealed or names it.</summary>
    public bool Covers(Change line) => !IsEmpty && (Covers(line.RecordId) || Names(line.Before) || Names(line.After));

    private bool Names(string? json) =>
        json is not null && _ids.Any(id => json.Contains(id.ToString(), StringComparison.OrdinalIgnoreCase));
}
