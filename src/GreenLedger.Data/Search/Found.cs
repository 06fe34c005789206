namespace GreenLedger.Data.Search;

/// <summary>What can be found, in the order in which groups are shown.</summary>
public enum FoundKind
{
    Lot = 0,
    Offer = 1,
    Mark = 2,
    Supplier = 3,
    Producer = 4,
    Sample = 5,
    Contract = 6,
}

/// <summary>Something that was found.</summary>
/// <param name="Id">Of the lot, offer, supplier, producer, sample or contract; for a mark, of its lot.</param>
/// <param name="Name">What it is called; for a sample and a mark the code itself.</param>
/// <param name="Code">The reference, where it has one besides its name.</param>
/// <param name="Detail">What tells it from others of that name: country, crop year, supplier, day.</param>
public sealed record Found(Guid Id, string Name, string? Code, string? Detail);

/// <summary>Some of what was found of one kind, and how many there are.</summary>
public sealed record FoundGroup(FoundKind Kind, IReadOnlyList<Found> Rows, int Total);
