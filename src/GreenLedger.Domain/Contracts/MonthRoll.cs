using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Contracts;

/// <summary>
/// What was open went from one futures month to a later one. The spread is taken from the differential, so that the buyer's
/// whole price stays what it was that day; a fee, where the seller asks one, is added (handbook, trade 2.3, example B).
/// </summary>
public sealed class MonthRoll
{
    private MonthRoll()
    {
    }

    internal MonthRoll(int number, FixingPosition position, RollOrder order, Id<Person> by, DateTimeOffset at)
    {
        Rule.Require(order.To.Market == position.Market, $"{order.To} is a month of another market than {position.Month}.", nameof(To));
        Rule.Require(order.To > position.Month, $"A roll goes to a later month than {position.Month}.", nameof(To));
        Rule.Require(Math.Abs(order.Spread) <= 10_000m && order.Spread % position.Market.Tick() == 0m, $"The spread moves in the steps of the market: {position.Market.Tick()} {position.Market.QuoteUnit()}.", nameof(Spread));
        Rule.Require(order.Fee is >= 0m and <= 10_000m, "The fee is 0 or more.", nameof(Fee));
        Id = Id<MonthRoll>.New();
        Number = number;
        On = order.On;
        From = position.Month;
        To = order.To;
        Weight = position.Open;
        SpreadTenThousandths = decimal.ToInt64(order.Spread * 10_000m);
        FeeTenThousandths = decimal.ToInt64(Math.Round(order.Fee * 10_000m, 0, MidpointRounding.AwayFromZero));
        DifferentialTenThousandths = decimal.ToInt64(After(position.Differential, order.Spread, Fee) * 10_000m);
        By = by;
        At = at;
    }

    public Id<MonthRoll> Id { get; private set; }

    /// <summary>Counted within the contract.</summary>
    public int Number { get; private set; }

    public DateOnly On { get; private set; }

    public FuturesMonth From { get; private set; }

    public FuturesMonth To { get; private set; }

    /// <summary>What was open and rolled.</summary>
    public Weight Weight { get; private set; }

    public long SpreadTenThousandths { get; private set; }

    public long FeeTenThousandths { get; private set; }

    public long DifferentialTenThousandths { get; private set; }

    public Id<Person> By { get; private set; }

    public DateTimeOffset At { get; private set; }

    /// <summary>The later month less the earlier one, US cents/lb or USD/t.</summary>
    public decimal Spread => SpreadTenThousandths / 10_000m;

    public decimal Fee => FeeTenThousandths / 10_000m;

    /// <summary>Of what is open, against the later month.</summary>
    public decimal Differential => DifferentialTenThousandths / 10_000m;

    /// <summary>The differential against the later month.</summary>
    public static decimal After(decimal differential, decimal spread, decimal fee) => differential - spread + fee;
}

/// <param name="Spread">The later month less the earlier one, as the market quotes.</param>
/// <param name="Fee">What the seller asks for the roll, in the same unit; common practice, some contracts have one.</param>
public sealed record RollOrder(DateOnly On, FuturesMonth To, decimal Spread, decimal Fee = 0m);
