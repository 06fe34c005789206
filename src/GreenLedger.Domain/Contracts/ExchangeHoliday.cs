using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Contracts;

/// <summary>A weekday on which a market is closed. The table is the house's own: exchanges publish theirs for each year.</summary>
public sealed class ExchangeHoliday
{
    private ExchangeHoliday() => Name = "";

    public ExchangeHoliday(FuturesMarket market, DateOnly on, string name)
    {
        Rule.Require(Enum.IsDefined(market), "Choose the market.", nameof(Market));
        Rule.Require(on.DayOfWeek is not (DayOfWeek.Saturday or DayOfWeek.Sunday), "The market is closed on Saturdays and Sundays anyway.", nameof(On));
        Id = Id<ExchangeHoliday>.New();
        Market = market;
        On = on;
        Name = Rule.Text(name, "The name of the day", 80, nameof(Name));
    }

    public Id<ExchangeHoliday> Id { get; private set; }

    public FuturesMarket Market { get; private set; }

    public DateOnly On { get; private set; }

    public string Name { get; private set; }
}
