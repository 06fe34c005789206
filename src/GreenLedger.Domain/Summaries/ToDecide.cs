using System.Globalization;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Summaries;

/// <summary>What of a contract departs from the plan and asks a person to decide.</summary>
/// <param name="What">In one sentence.</param>
/// <param name="Since">The day that it turns on: past or soon.</param>
public sealed record ToDecide(Id<Contract> ContractId, string ContractRef, string What, DateOnly Since)
{
    /// <summary>Everything of one signed contract, the oldest day first.</summary>
    /// <param name="contract">Signed.</param>
    /// <param name="calendar">Of the exchanges.</param>
    /// <param name="today">The day from which is looked ahead.</param>
    /// <param name="zone">Of the house.</param>
    /// <param name="approvalDays">An approval shows so many days before its day, as the house says.</param>
    public static IReadOnlyList<ToDecide> Of(Contract contract, ExchangeCalendar calendar, DateOnly today, ClockZone zone, int approvalDays)
    {
        ArgumentNullException.ThrowIfNull(contract);
        ArgumentNullException.ThrowIfNull(calendar);
        ArgumentNullException.ThrowIfNull(zone);
        return !contract.IsOpen ? [] : [.. Found(contract, calendar, today, zone, approvalDays).Select(one => new ToDecide(contract.Id, contract.Ref, one.What, one.Since)).OrderBy(one => one.Since)];
    }

    private static IEnumerable<(string What, DateOnly Since)> Found(Contract contract, ExchangeCalendar calendar, DateOnly today, ClockZone zone, int approvalDays)
    {
        if (FixingTask.Of(contract, calendar, today) is { } task && task.DaysLeft <= calendar.Habits.WarningDays)
        {
            yield return ($"{FixingPosition.Said(task.Month.Market, task.Open)} against {task.Month} {(task.IsPast ? "should have been" : "are to be")} fixed or rolled by {Day(task.Last)}.", task.Last);
        }

        if (contract is { Goods: GoodsState.AwaitingApproval, Terms.Approval.By: { } by } && by <= today.AddDays(approvalDays))
        {
            yield return ($"The pre-shipment sample is to be approved or refused by {Day(by)}.", by);
        }

        if (contract.Goods is GoodsState.AwaitingApproval or GoodsState.ReadyToShip && contract.ShipUntil < today)
        {
            yield return ($"Nothing has shipped; the shipment period ended on {Day(contract.ShipUntil)}.", contract.ShipUntil);
        }

        if (contract.Moves.FirstOrDefault(move => move.IsBreach) is { } breach)
        {
            yield return ("It shipped before its sample was approved.", breach.On);
        }

        if (contract.Newest is { IsSigned: false, WrittenAt: var written })
        {
            yield return ("An amendment waits for its signatures.", zone.Day(written));
        }
    }

    private static string Day(DateOnly day) => day.ToString("d MMM yyyy", CultureInfo.InvariantCulture);
}
