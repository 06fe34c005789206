using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Arrivals;

/// <summary>How a claim ended.</summary>
public enum ClaimOutcome
{
    /// <summary>The seller pays or credits an amount and the goods stay.</summary>
    Allowance = 0,

    /// <summary>Other goods in their place.</summary>
    Replacement = 1,

    /// <summary>The goods are refused and go back to the seller.</summary>
    Rejection = 2,

    /// <summary>Arbitrators decided.</summary>
    Arbitration = 3,

    /// <summary>The house let it go.</summary>
    Withdrawn = 4,
}

public static class ClaimOutcomes
{
    public static string Word(this ClaimOutcome outcome) => outcome switch
    {
        ClaimOutcome.Allowance => "allowance",
        ClaimOutcome.Replacement => "replacement",
        ClaimOutcome.Rejection => "goods refused",
        ClaimOutcome.Arbitration => "arbitration",
        ClaimOutcome.Withdrawn => "withdrawn",
        _ => throw new ArgumentOutOfRangeException(nameof(outcome)),
    };
}

/// <summary>An outcome of a claim as it was entered; one that was taken back stays with the reason.</summary>
public sealed class ClaimSettlement
{
    private ClaimSettlement()
    {
    }

    internal ClaimSettlement(int number, ClaimOutcome outcome, Money? amount, DateOnly on, string? words, Id<Person> by, DateTimeOffset at)
    {
        Id = Id<ClaimSettlement>.New();
        (Number, Outcome, Amount, On, Words, By, At) = (number, outcome, amount, on, words, by, at);
    }

    public Id<ClaimSettlement> Id { get; private set; }

    public int Number { get; private set; }

    public ClaimOutcome Outcome { get; private set; }

    /// <summary>What the seller pays or credits; null where nothing.</summary>
    public Money? Amount { get; private set; }

    public DateOnly On { get; private set; }

    public string? Words { get; private set; }

    public Id<Person> By { get; private set; }

    public DateTimeOffset At { get; private set; }

    public string? TakenBackBecause { get; private set; }

    public Id<Person>? TakenBackBy { get; private set; }

    public DateTimeOffset? TakenBackAt { get; private set; }

    public bool Counts => TakenBackAt is null;

    internal void TakeBack(string reason, Id<Person> by, DateTimeOffset at)
    {
        TakenBackBecause = Rule.Text(reason, "The reason", 1000, "Reason");
        (TakenBackBy, TakenBackAt) = (by, at);
    }
}
