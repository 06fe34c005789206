using GreenLedger.Domain.Contracts;

namespace GreenLedger.Domain.Tests.Contracts;

/// <summary>A contract against KCK27 whose price is to be fixed by a day of its own, rolled to KCN27 on 25 November 2026.</summary>
public sealed class FixingTaskTests
{
    private static readonly ExchangeCalendar Calendar = new([], new FixingHabits());

    [Fact]
    public void A_roll_before_the_contracts_own_day_leaves_that_day_standing()
    {
        var fixBy = new DateOnly(2027, 5, 28);

        var task = Rolled(fixBy);

        Assert.Equal(fixBy, task.Last);
        Assert.Null(task.PassedFixBy);
        Assert.Equal(Calendar.LastSensible(ContractDemo.July, null), Rolled(new DateOnly(2027, 8, 2)).Last);
    }

    [Fact]
    public void A_day_that_had_come_when_it_was_rolled_is_said_to_have_passed()
    {
        var task = Rolled(ContractDemo.Today);

        Assert.Equal(Calendar.LastSensible(ContractDemo.July, null), task.Last);
        Assert.Equal(ContractDemo.Today, task.PassedFixBy);
        Assert.False(task.IsPast);
    }

    private static FixingTask Rolled(DateOnly fixBy)
    {
        var contract = ContractDemo.Signed(ContractDemo.ToBeFixed() with { FixBy = fixBy });
        contract.Roll(new RollOrder(ContractDemo.Today, ContractDemo.July, 3.20m), ContractDemo.Buyer, ContractDemo.Now);
        return FixingTask.Of(contract, Calendar, ContractDemo.Today)!;
    }
}
