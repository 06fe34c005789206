namespace GreenLedger.Domain.Cupping;

/// <summary>A flight that was poured: a part of a session that is tasted together. The moment of the pour is the table's one clock.</summary>
public sealed class PouredFlight
{
    private PouredFlight()
    {
    }

    internal PouredFlight(int number, DateTimeOffset pouredAt)
    {
        Number = number;
        PouredAt = pouredAt;
    }

    /// <summary>From 1, in the order of tasting.</summary>
    public int Number { get; private set; }

    /// <summary>When water first met coffee; every phone counts from here.</summary>
    public DateTimeOffset PouredAt { get; private set; }

    /// <summary>Minutes that whoever leads has added to the time for tasting.</summary>
    public int ExtendedMinutes { get; private set; }

    internal void PourAgain(DateTimeOffset at) => PouredAt = at;

    internal void Extend(int minutes)
    {
        Rule.Require(minutes is >= 1 and <= 120, "Extend by 1 to 120 minutes.", nameof(ExtendedMinutes));
        ExtendedMinutes += minutes;
    }
}
