namespace GreenLedger.Domain.Offers.Reading;

/// <summary>
/// What a figure of one kind can be, so that "1.720" is read as 1720 m of altitude but "1.720" as a price of 1.72:
/// with three digits after a single mark either reading is possible, and the one that lies in the range is taken;
/// where both do, weights and counts are grouped in thousands and prices and scores have decimals.
/// </summary>
internal readonly record struct NumberRange(decimal From, decimal To, bool PrefersThousands)
{
    public static NumberRange Altitude { get; } = new(100, 4000, true);

    public static NumberRange Bags { get; } = new(1, 1_000_000, true);

    public static NumberRange BagWeight { get; } = new(5, 1500, false);

    public static NumberRange Quantity { get; } = new(1, 100_000_000, true);

    public static NumberRange Score { get; } = new(0, 100, false);

    public static NumberRange Moisture { get; } = new(1, 30, false);

    public static NumberRange Any { get; } = new(decimal.MinValue, decimal.MaxValue, false);

    public bool Holds(decimal number)
    {
        var size = Math.Abs(number);
        return size >= From && size <= To;
    }
}
