namespace GreenLedger.Domain.Cupping;

/// <summary>How much the cuppers of a session could know of what was in the cups.</summary>
public enum Blindness
{
    /// <summary>Others poured, and nobody on the panel opened the key while the session was open.</summary>
    Blind = 0,

    /// <summary>One cupper shuffled bowls with codes underneath and read them after the sheets were in.</summary>
    ShuffledAlone = 1,

    /// <summary>Somebody who scored had opened the key.</summary>
    SomeNotBlind = 2,

    /// <summary>The cuppers knew what they cupped.</summary>
    Open = 3,
}

/// <summary>How a result says what its cuppers could know. Whoever was not blind is marked and counts all the same.</summary>
public static class BlindRule
{
    /// <summary>What a result says of its blindness.</summary>
    public static string Says(Blindness blindness) => blindness switch
    {
        Blindness.Blind => "Blind: nobody on the panel could know what was in the cups.",
        Blindness.ShuffledAlone => "Blind as far as one person can be: the cupper shuffled bowls with codes underneath and read the codes after the sheets were in. Whoever poured may still recognise a bowl.",
        Blindness.SomeNotBlind => "Not blind throughout: somebody who scored had opened the key.",
        Blindness.Open => "Open: the cupper knew the coffee. Take the score as a note, not as a blind result.",
        _ => throw new ArgumentOutOfRangeException(nameof(blindness)),
    };
}
