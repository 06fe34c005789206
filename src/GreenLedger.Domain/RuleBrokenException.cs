namespace GreenLedger.Domain;

/// <summary>
/// A rule of the trade or of the house refuses what was asked. The message is for the person who asked and says what
/// to do; the field names the domain member that the rule is about, so that a form can show the message beside it.
/// </summary>
public sealed class RuleBrokenException : Exception
{
    public RuleBrokenException()
    {
    }

    public RuleBrokenException(string message)
        : base(message)
    {
    }

    public RuleBrokenException(string message, Exception innerException)
        : base(message, innerException)
    {
    }

    public RuleBrokenException(string message, string? field)
        : base(message)
    {
        Field = field;
    }

    public string? Field { get; }
}
