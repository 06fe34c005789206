using GreenLedger.Domain.Offers;

namespace GreenLedger.Domain.Samples;

/// <summary>A name of a file that the ledger knows: a lot, and its sample where one is meant or already there.</summary>
public sealed record KnownSample(Id<Lot> LotId, Sample? Sample);

/// <summary>What the names of a file stand for.</summary>
/// <param name="Known">By name, without regard to case; a name that the ledger does not know is missing.</param>
/// <param name="Unclear">Names that several lots answer to, each with the sentence that says so.</param>
public sealed record KnownNames(IReadOnlyDictionary<string, KnownSample> Known, IReadOnlyDictionary<string, string> Unclear);
