using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Contracts;

/// <summary>
/// The forms that a new ledger starts with, after the handbook (trade 4.1), which had only parts of their texts at hand: the
/// house holds them against its own copies.
/// </summary>
public static class StandardForms
{
    public static IReadOnlyList<StandardForm> All()
    {
        var european = new StandardForm("European Standard Contract for Coffee (ESCC)", "2018, amended January 2021");
        european.Allow(Percent.Of(0.5m), Percent.Of(3m));
        european.Give(21, 28, 45, "London");
        var american = new StandardForm("Green Coffee Association (GCA) contract", "");
        american.Allow(Percent.Of(0m), Percent.Of(3m));
        american.Give(15, 15, 365, "New York", qualityFromClearance: true, WeighingStart.Availability); // handbook, trade 4.1: weighed within 15 days of availability; quality 15 days after discharge or all clearances, whichever is later
        return [european, american];
    }
}
