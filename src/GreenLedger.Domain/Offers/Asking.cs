using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Offers;

/// <summary>
/// What the seller asks: an outright price, or a differential against a futures month; never both, and neither while the
/// price is to be named.
/// </summary>
public sealed record Asking(PricePerWeight? Price, Differential? Differential)
{
    public static Asking Nothing { get; } = new(null, null);

    public static Asking Outright(PricePerWeight price) => new(price, null);

    public static Asking Against(Differential differential) => new(null, differential);
}
