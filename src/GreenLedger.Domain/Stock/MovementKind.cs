namespace GreenLedger.Domain.Stock;

/// <summary>Why coffee came into a warehouse or left it.</summary>
public enum MovementKind
{
    /// <summary>What was in stock when the ledger began.</summary>
    Opening = 0,

    /// <summary>From an arrival.</summary>
    Receipt = 1,

    TransferOut = 2,

    TransferIn = 3,

    /// <summary>Released to roasting.</summary>
    Release = 4,

    /// <summary>Drawn as a sample.</summary>
    SampleDrawn = 5,

    /// <summary>Less was there than the ledger says.</summary>
    Loss = 6,

    /// <summary>More was there than the ledger says.</summary>
    Gain = 7,

    Sale = 8,

    /// <summary>Came back from a customer or from roasting.</summary>
    Return = 9,

    /// <summary>Takes back an earlier movement, which stays in the ledger.</summary>
    Reversal = 10,
}

public static class MovementKinds
{
    /// <summary>Those that a person chooses for coffee that leaves.</summary>
    public static IReadOnlyList<MovementKind> Outward { get; } = [MovementKind.Release, MovementKind.SampleDrawn, MovementKind.Sale, MovementKind.Loss];

    /// <summary>Those that a person chooses for coffee that comes without an arrival.</summary>
    public static IReadOnlyList<MovementKind> Inward { get; } = [MovementKind.Opening, MovementKind.Return, MovementKind.Gain];

    public static bool IsOutward(this MovementKind kind) => kind == MovementKind.TransferOut || Outward.Contains(kind);

    /// <summary>Whether a reason must be given: what the scales or a mistake explain is never silent.</summary>
    public static bool NeedsReason(this MovementKind kind) => kind is MovementKind.Loss or MovementKind.Gain or MovementKind.Return or MovementKind.Reversal;

    /// <summary>As the screens write it.</summary>
    public static string Word(this MovementKind kind) => kind switch
    {
        MovementKind.Opening => "opening stock",
        MovementKind.Receipt => "receipt",
        MovementKind.TransferOut => "transfer out",
        MovementKind.TransferIn => "transfer in",
        MovementKind.Release => "release to roasting",
        MovementKind.SampleDrawn => "sample drawn",
        MovementKind.Loss => "loss",
        MovementKind.Gain => "gain",
        MovementKind.Sale => "sale",
        MovementKind.Return => "return",
        MovementKind.Reversal => "reversal",
        _ => throw new ArgumentOutOfRangeException(nameof(kind)),
    };
}
