using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Contracts;

/// <summary>A part of a contract fixed at a level of the market. Taken back, it stays on record and no longer counts.</summary>
public sealed class PriceFixing
{
    private PriceFixing()
    {
    }

    internal PriceFixing(int number, FixingOrder order, FuturesMonth month, Weight weight, decimal differential, Id<Person> by, DateTimeOffset at)
    {
        Id = Id<PriceFixing>.New();
        Number = number;
        On = order.On;
        Month = month;
        Lots = order.Lots;
        Weight = weight;
        LevelTenThousandths = decimal.ToInt64(order.Level * 10_000m);
        DifferentialTenThousandths = decimal.ToInt64(differential * 10_000m);
        Method = Rule.OptionalText(order.Method, "How it was executed", 200, nameof(Method));
        By = by;
        At = at;
    }

    public Id<PriceFixing> Id { get; private set; }

    /// <summary>Counted within the contract.</summary>
    public int Number { get; private set; }

    /// <summary>The day of the market.</summary>
    public DateOnly On { get; private set; }

    public FuturesMonth Month { get; private set; }

    /// <summary>Whole lots of the market; null when fixed by weight.</summary>
    public int? Lots { get; private set; }

    /// <summary>What the lots weigh in the market, or the weight fixed.</summary>
    public Weight Weight { get; private set; }

    public long LevelTenThousandths { get; private set; }

    public long DifferentialTenThousandths { get; private set; }

    /// <summary>How it was executed (order, against actuals, give-up), as text: the arithmetic does not ask.</summary>
    public string? Method { get; private set; }

    public Id<Person> By { get; private set; }

    public DateTimeOffset At { get; private set; }

    public string? TakenBackBecause { get; private set; }

    public Id<Person>? TakenBackBy { get; private set; }

    public DateTimeOffset? TakenBackAt { get; private set; }

    public bool Counts => TakenBackAt is null;

    /// <summary>US cents/lb or USD/t.</summary>
    public decimal Level => LevelTenThousandths / 10_000m;

    /// <summary>The differential that held on the day, in the same unit.</summary>
    public decimal Differential => DifferentialTenThousandths / 10_000m;

    internal FixedPart Part => new(Month, Weight, Level, Differential);

    internal void TakeBack(string reason, Id<Person> by, DateTimeOffset at)
    {
        TakenBackBecause = Rule.Text(reason, "The reason for taking the fixing back", 500, "Reason");
        (TakenBackBy, TakenBackAt) = (by, at);
    }
}

/// <summary>What is to be fixed: whole lots, or a weight where the contract is fixed by weight.</summary>
/// <param name="Level">As the market quotes: US cents/lb or USD/t.</param>
public sealed record FixingOrder(DateOnly On, int? Lots, Weight? Weight, decimal Level, string? Method);
