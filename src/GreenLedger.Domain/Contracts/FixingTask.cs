using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Contracts;

/// <summary>A contract that is to be fixed or rolled, with the days that its month brings.</summary>
/// <param name="Last">The last sensible day.</param>
/// <param name="DaysLeft">From today; negative once the day is past.</param>
public sealed record FixingTask(
    Id<Contract> ContractId, string Ref, string Seller, FuturesMonth Month, Weight Open, Caller Call, DateOnly FirstNotice, DateOnly Last, int DaysLeft)
{
    public bool IsPast => DaysLeft < 0;

    /// <summary>The day that the contract sets, where it had come when what is open was rolled: the roll let it pass.</summary>
    public DateOnly? PassedFixBy { get; private init; }

    /// <summary>Null where nothing is open, or nothing is signed yet.</summary>
    public static FixingTask? Of(Contract contract, ExchangeCalendar calendar, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(contract);
        ArgumentNullException.ThrowIfNull(calendar);
        if (!contract.IsSigned || contract.OpenMonth is not { } month)
        {
            return null;
        }

        var agreed = contract.Terms.Price.FixBy;
        var passed = contract.Rolls.Count > 0 && agreed <= contract.Rolls[^1].On ? agreed : null;
        var last = calendar.LastSensible(month, passed is null ? agreed : null);
        return new FixingTask(
            contract.Id, contract.Ref, contract.Terms.Seller, month, contract.OpenWeight, contract.Terms.Price.Call ?? Caller.Buyer,
            calendar.FirstNotice(month), last, last.DayNumber - today.DayNumber)
        {
            PassedFixBy = passed,
        };
    }
}

/// <summary>What is open against one futures month, over all contracts.</summary>
/// <param name="PerStep">What the open part costs more when the market rises by 1 US cent/lb or 1 USD/t.</param>
/// <param name="Tasks">The contracts, the most urgent first.</param>
public sealed record OpenMonth(FuturesMonth Month, Weight Open, Money PerStep, DateOnly FirstNotice, DateOnly LastTrading, IReadOnlyList<FixingTask> Tasks)
{
    /// <summary>In lots of the market, unrounded.</summary>
    public decimal Lots => PriceTerms.LotsOf(Month.Market, Open);

    /// <summary>The months with something open, the nearest first.</summary>
    public static IReadOnlyList<OpenMonth> Of(IEnumerable<Contract> contracts, ExchangeCalendar calendar, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(calendar);
        return
        [
            .. contracts.Select(contract => FixingTask.Of(contract, calendar, today)).OfType<FixingTask>()
                .GroupBy(task => task.Month)
                .Select(month => (Month: month.Key, Open: month.Aggregate(Weight.Zero, (sum, task) => sum + task.Open), Tasks: month.OrderBy(task => task.Last).ThenBy(task => task.Ref, StringComparer.Ordinal)))
                .Select(month => new OpenMonth(
                    month.Month, month.Open, month.Month.Market.Price(1m) * month.Open,
                    calendar.FirstNotice(month.Month), calendar.LastTrading(month.Month), [.. month.Tasks]))
                .OrderBy(month => month.Month),
        ];
    }
}
