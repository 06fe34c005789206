namespace GreenLedger.Domain.Cupping;

/// <summary>How it is kept from the cuppers of a session what is in the cups.</summary>
public enum Blinding
{
    /// <summary>Somebody else pours: codes on the table, and a key that is sealed from whoever cups.</summary>
    ByKey = 0,

    /// <summary>One cupper alone: codes under the bowls, bowls shuffled, codes read after the sheets are in.</summary>
    Undersides = 1,

    /// <summary>Not at all: the cupper knows the coffee.</summary>
    Open = 2,
}
