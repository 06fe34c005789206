namespace GreenLedger.Domain.Origins;

/// <summary>Who grows or first processes the coffee.</summary>
public enum ProducerKind
{
    Farm = 0,
    Cooperative = 1,
    WashingStation = 2,
    Mill = 3,
    Group = 4,
}

public static class ProducerKinds
{
    /// <summary>As a person reads it: <c>washing station</c>.</summary>
    public static string Word(this ProducerKind kind) => kind switch
    {
        ProducerKind.Farm => "farm",
        ProducerKind.Cooperative => "co-operative",
        ProducerKind.WashingStation => "washing station",
        ProducerKind.Mill => "mill",
        ProducerKind.Group => "group of growers",
        _ => throw new ArgumentOutOfRangeException(nameof(kind)),
    };
}
