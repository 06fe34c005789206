using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Stock;

/// <summary>How the house keeps its stock. One row; every figure is a habit (handbook, trade 9.3 and example F), which the buyer sets.</summary>
public sealed class StockHabits
{
    private readonly List<ValuationChoice> _valuations = [];

    public Id<StockHabits> Id { get; private set; } = Id<StockHabits>.New();

    public int Version { get; private set; }

    /// <summary>Whether somebody other than those who counted approves a count.</summary>
    public bool CountNeedsSecondPerson { get; private set; } = true;

    /// <summary>Weeks of releases that the use of a week is averaged over.</summary>
    public int UseWeeks { get; private set; } = 12;

    /// <summary>Days from ordering to the warehouse.</summary>
    public int LeadDays { get; private set; } = 98;

    /// <summary>One standard deviation of the days from ordering to the warehouse.</summary>
    public int LeadSpreadDays { get; private set; } = 14;

    public int SafetyThousandths { get; private set; } = 1645;

    /// <summary>Weight that roasting takes, of the green weight.</summary>
    public Percent RoastLoss { get; private set; } = Percent.Of(15m);

    /// <summary>Whether somebody stated the roast loss: as long as nobody did, 15 % is a guess that no event tells.</summary>
    public bool IsRoastLossStated { get; private set; }

    /// <summary>Roasted coffee in a cup.</summary>
    public Weight Dose { get; private set; } = Weight.FromGrams(18m);

    /// <summary>Days from shipment to the warehouse, where no arrival is planned yet. From memory, no source.</summary>
    public int WayDays { get; private set; } = 45;

    /// <summary>Months from the first month of a harvest to the first of its shipments. From memory, no source.</summary>
    public int ShipsAfterMonths { get; private set; } = 3;

    /// <summary>Months from the last month of a harvest to the last of its shipments. From memory, no source.</summary>
    public int ShipsUntilMonths { get; private set; } = 4;

    /// <summary>Months after the end of its harvest from which a crop counts as past. A working rule of the trade (handbook, trade 9.3).</summary>
    public int PastCropMonths { get; private set; } = 12;

    /// <summary>By how many percentage points moisture may move in stock before it is pointed out. Common practice, no source.</summary>
    public Percent MoistureDrift { get; private set; } = Percent.Of(1m);

    /// <summary>How many standard deviations the safety stock guards against: 1.645 for 95 %.</summary>
    public decimal SafetyFactor => SafetyThousandths / 1000m;

    /// <summary>What stock was valued by, from which day on; before the first, each lot at its own cost.</summary>
    public IReadOnlyList<ValuationChoice> Valuations => _valuations;

    public ValuationMethod MethodOn(DateOnly on) => _valuations.Where(choice => choice.From <= on).MaxBy(choice => choice.From)?.Method ?? ValuationMethod.EachLot;

    /// <exception cref="RuleBrokenException">A figure is out of range.</exception>
    public void Keep(bool countNeedsSecondPerson, int useWeeks, int leadDays, int leadSpreadDays, decimal safetyFactor, Percent roastLoss, Weight dose)
    {
        Rule.Require(useWeeks is >= 1 and <= 104, "The use of a week is averaged over 1 to 104 weeks.", nameof(UseWeeks));
        Rule.Require(leadDays is >= 0 and <= 730, "The lead time lies between 0 and 730 days.", nameof(LeadDays));
        Rule.Require(leadSpreadDays is >= 0 and <= 365, "The spread of the lead time lies between 0 and 365 days.", nameof(LeadSpreadDays));
        Rule.Require(safetyFactor is >= 0m and <= 6m, "The safety factor lies between 0 and 6.", nameof(SafetyFactor));
        Rule.Require(roastLoss.Points is >= 0m and <= 50m, "The roast loss lies between 0 and 50 %.", nameof(RoastLoss));
        Rule.Require(dose.Grams is > 0m and <= 1000m, "A cup takes more than 0 and at most 1,000 grams.", nameof(Dose));
        (CountNeedsSecondPerson, UseWeeks, LeadDays, LeadSpreadDays) = (countNeedsSecondPerson, useWeeks, leadDays, leadSpreadDays);
        (SafetyThousandths, RoastLoss, Dose) = (decimal.ToInt32(Math.Round(safetyFactor * 1000m)), roastLoss, dose);
        IsRoastLossStated = true;
    }

    /// <summary>Says when to expect what is bought: days on the way, and the months after a harvest in which it is shipped.</summary>
    /// <exception cref="RuleBrokenException">A figure is out of range.</exception>
    public void Expect(int wayDays, int shipsAfterMonths, int shipsUntilMonths)
    {
        Rule.Require(wayDays is >= 0 and <= 365, "The way takes between 0 and 365 days.", nameof(WayDays));
        Rule.Require(shipsAfterMonths is >= 0 and <= 11, "Shipments begin 0 to 11 months after the harvest does.", nameof(ShipsAfterMonths));
        Rule.Require(shipsUntilMonths is >= 0 and <= 11, "Shipments end 0 to 11 months after the harvest does.", nameof(ShipsUntilMonths));
        (WayDays, ShipsAfterMonths, ShipsUntilMonths) = (wayDays, shipsAfterMonths, shipsUntilMonths);
    }

    /// <summary>Says from when coffee in stock is pointed out as old or as having changed.</summary>
    /// <exception cref="RuleBrokenException">A figure is out of range.</exception>
    public void Watch(int pastCropMonths, Percent moistureDrift)
    {
        Rule.Require(pastCropMonths is >= 1 and <= 60, "A crop is past after 1 to 60 months.", nameof(PastCropMonths));
        Rule.Require(moistureDrift.Points is > 0m and <= 10m, "Moisture may move by more than 0 and at most 10 percentage points.", nameof(MoistureDrift));
        (PastCropMonths, MoistureDrift) = (pastCropMonths, moistureDrift);
    }

    /// <summary>Values stock in another way from a day on; what was valued before stays as it was.</summary>
    /// <exception cref="RuleBrokenException">The day lies behind, or before an earlier choice.</exception>
    public void Value(ValuationMethod method, DateOnly from, DateOnly today)
    {
        Rule.Require(Enum.IsDefined(method), "Choose each lot, first in first out, or the weighted average.", nameof(ValuationChoice.Method));
        Rule.Require(from >= today, "The way of valuing is never changed backwards: choose today or a later day.", nameof(ValuationChoice.From));
        Rule.Require(_valuations.TrueForAll(choice => choice.From < from), "Another way of valuing begins on that day or later already: choose a day after it.", nameof(ValuationChoice.From));
        Rule.Require(MethodOn(from) != method, $"Stock is valued so already: {method.Word()}.", nameof(ValuationChoice.Method));
        _valuations.Add(new ValuationChoice(method, from));
    }

    /// <summary>Cost of a kilogram roasted, before labour, energy and packing: green / (1 − loss) (handbook, trade 3.3 example F).</summary>
    public decimal Roasted(decimal greenPerKilogram) => greenPerKilogram / (1m - RoastLoss.Fraction);

    /// <summary>Cost of the coffee in a cup.</summary>
    public decimal Cup(decimal greenPerKilogram) => Roasted(greenPerKilogram) * Dose.Kilograms;
}

/// <summary>A way of valuing stock, from a day on.</summary>
public sealed class ValuationChoice
{
    private ValuationChoice()
    {
    }

    internal ValuationChoice(ValuationMethod method, DateOnly from)
    {
        Id = Id<ValuationChoice>.New();
        (Method, From) = (method, from);
    }

    public Id<ValuationChoice> Id { get; private set; }

    public ValuationMethod Method { get; private set; }

    public DateOnly From { get; private set; }
}
