using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Arrivals;

/// <summary>Who spoke.</summary>
public enum ClaimSide
{
    ToSeller = 0,
    FromSeller = 1,
    InHouse = 2,
}

public static class ClaimSides
{
    public static string Word(this ClaimSide side) => side switch
    {
        ClaimSide.ToSeller => "to the seller",
        ClaimSide.FromSeller => "from the seller",
        ClaimSide.InHouse => "in the house",
        _ => throw new ArgumentOutOfRangeException(nameof(side)),
    };
}

/// <summary>Something said or written about a claim. It stays as it is; what was wrong is put right in the next.</summary>
public sealed class ClaimNote
{
    private ClaimNote() => Text = "";

    internal ClaimNote(int number, ClaimSide side, DateOnly on, string text, Id<Person> by, DateTimeOffset at)
    {
        Id = Id<ClaimNote>.New();
        Text = Rule.Text(text, "What was said", 4000, nameof(Text));
        (Number, Side, On, By, At) = (number, side, on, by, at);
    }

    public Id<ClaimNote> Id { get; private set; }

    public int Number { get; private set; }

    public ClaimSide Side { get; private set; }

    public DateOnly On { get; private set; }

    public string Text { get; private set; }

    public Id<Person> By { get; private set; }

    public DateTimeOffset At { get; private set; }
}
