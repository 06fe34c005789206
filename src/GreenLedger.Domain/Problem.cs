namespace GreenLedger.Domain;

/// <summary>
/// Something in a list or file that could not be taken, in a sentence a person can act on.
/// Row and column are counted from 1 as the sender's program shows them; null where the problem is not at one place.
/// </summary>
public sealed record Problem(int? Row, string? Column, string Message);
