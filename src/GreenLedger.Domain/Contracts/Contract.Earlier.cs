using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Papers;

namespace GreenLedger.Domain.Contracts;

/// <summary>What came of a lot before this ledger began, as the house wrote it down then.</summary>
/// <param name="On">The day that it was received.</param>
/// <param name="Weight">As weighed on arrival.</param>
/// <param name="LandedCost">For a received kilogram, in the house currency at the rate of that day; null where it is not known.</param>
/// <param name="Score">Null where it is not known.</param>
public sealed record ReceivedBefore(DateOnly On, Weight Weight, PricePerWeight? LandedCost, Score? Score);

/// <summary>A contract that was agreed before this ledger began, taken in from a file of the house's own.</summary>
public sealed partial class Contract
{
    /// <summary>The file that it was taken in from; null for a contract that this ledger has seen from its draft on.</summary>
    public Id<StoredFile>? SourceId { get; private set; }

    public bool IsEarlier => SourceId is not null;

    /// <summary>Says which file it came from.</summary>
    public void ComeFrom(StoredFile file)
    {
        ArgumentNullException.ThrowIfNull(file);
        SourceId = file.Id;
    }

    /// <summary>Enters what came of a lot that has arrived: history, by which nothing is decided.</summary>
    /// <exception cref="RuleBrokenException">The contract has no such lot, or has not arrived.</exception>
    public void Recall(Id<Lot> lot, ReceivedBefore received)
    {
        ArgumentNullException.ThrowIfNull(received);
        Rule.Require(ArrivedOn is not null, $"Contract {Ref} has not arrived: nothing was received of it.");
        var line = _lots.Find(one => one.LotId == lot);
        Rule.Require(line is not null, $"Contract {Ref} has no such lot.");
        line.Recall(received);
    }
}
